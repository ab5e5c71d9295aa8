"""Clocks as a tree: from the crystal on the left to all that is divided from it."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from benchsheaf.drawing.lettering import wrapped
from benchsheaf.drawing.picture import Both, Box, Path, Picture, Run, Shape, Words


@dataclass(frozen=True, kw_only=True, slots=True)
class Node:
    """A clock: its words, its rate in print, the clock it comes from, and how it is divided."""

    id: str
    name: str
    rate: str
    part: str
    of: str | None
    divided_by: int | None


WIDE_COLUMN, WIDE_BODY, WIDE_ROW = 310.0, 206.0, 74.0
PHONE_STEP, PHONE_ROW = 24.0, 66.0
HIGH = 56.0
TEXT = {"wide": 13.0, "phone": 12.5}


def clock_tree(nodes: Sequence[Node], ident: str) -> Both:
    """The two drawings: columns by depth on a wide page, rows with a step for each depth on a phone."""
    told = "; ".join(
        f"{node.name} {node.rate}" + (f", {_name(nodes, node.of)} divided by {node.divided_by}" if node.of else "")
        for node in nodes
    )
    label = f"Clocks: {told}. The table of clocks has the same."
    placed = list(_placed(nodes, None, 0))
    wide, phone = _wide(nodes, placed, ident, label), _phone(placed, ident, label)
    return Both(wide=wide, phone=phone)


def _name(nodes: Sequence[Node], ident: str | None) -> str:
    return next(node.name for node in nodes if node.id == ident)


def _placed(nodes: Sequence[Node], of: str | None, depth: int) -> Iterator[tuple[Node, int]]:
    """Every clock with its depth, each before those that come from it."""
    for node in nodes:
        if node.of == of:
            yield node, depth
            yield from _placed(nodes, node.id, depth + 1)


def _wide(nodes: Sequence[Node], placed: Sequence[tuple[Node, int]], ident: str, label: str) -> Picture:
    """A clock stands level with the first that comes from it; each that leads nowhere further takes a row."""
    tops: dict[str, float] = {}
    row = 0
    for node, _ in placed:
        tops[node.id] = row * WIDE_ROW
        if not any(other.of == node.id for other in nodes):
            row += 1
    lefts = {node.id: 2 + depth * WIDE_COLUMN for node, depth in placed}
    shapes: list[Shape] = []
    for node, _ in placed:
        if node.of:
            start, y0 = lefts[node.of] + WIDE_BODY, tops[node.of] + HIGH / 2 + 2
            y, middle = tops[node.id] + HIGH / 2 + 2, start + 24
            end = lefts[node.id]
            way = (("M", (start, y0)), ("L", (middle, y0)), ("L", (middle, y)), ("L", (end, y)))
            shapes.append(Path(way, "outline", 1.6))
            shapes.append(
                Words((middle + end) / 2, y - 6, (Run(f"÷ {node.divided_by:,}"),), TEXT["wide"], anchor="middle")
            )
        shapes += _body(node, lefts[node.id], tops[node.id] + 2, WIDE_BODY, TEXT["wide"])
    width = max(lefts.values(), default=0) + WIDE_BODY + 2
    return Picture(
        view_box=(0, 0, width, row * WIDE_ROW - WIDE_ROW + HIGH + 4),
        label=label,
        shapes=tuple(shapes),
        css_class="wide",
        ident=f"{ident}-wide",
        most_px=width,
    )


def _phone(placed: Sequence[tuple[Node, int]], ident: str, label: str) -> Picture:
    shapes: list[Shape] = []
    tops: dict[str, tuple[float, float]] = {}
    for row, (node, depth) in enumerate(placed):
        left, top = 2 + depth * PHONE_STEP, row * PHONE_ROW + 2
        tops[node.id] = left, top
        if node.of:
            x, y = tops[node.of][0] + 10, tops[node.of][1] + HIGH
            shapes.append(
                Path((("M", (x, y)), ("L", (x, top + HIGH / 2)), ("L", (left, top + HIGH / 2))), "outline", 1.6)
            )
        shapes += _body(node, left, top, 342 - left, TEXT["phone"], divided=True)
    return Picture(
        view_box=(0, 0, 344, len(placed) * PHONE_ROW),
        label=label,
        shapes=tuple(shapes),
        css_class="phone",
        ident=f"{ident}-phone",
    )


def _body(node: Node, left: float, top: float, width: float, size: float, *, divided: bool = False) -> Iterator[Shape]:
    """A frame with the name above and the rate below; `divided` says beside the rate what it comes by."""
    yield Box(left, top, width, HIGH, "body", 2)
    (name, *more) = wrapped(node.name, size, width - 14)
    yield Words(left + 8, top + 21, (Run(f"{name}…" if more else name),), size, "label")
    runs = [Run(node.rate, "bold")]
    if divided and node.divided_by:
        runs.insert(0, Run(f"÷ {node.divided_by:,} = "))
    if node.part:
        runs.append(Run(f"  {node.part}", "mono label2"))
    yield Words(left + 8, top + 43, tuple(runs), size, "label")
