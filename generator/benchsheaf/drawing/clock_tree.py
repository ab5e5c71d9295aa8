"""Clocks as a tree: from the crystal on the left to all that is divided from it."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from benchsheaf.drawing.lettering import shortened
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


WIDE, PHONE = 930.0, 344.0
WIDE_BODY, WIDE_ROW, WIDE_GAP = 206.0, 74.0, 104.0
LEAST_GAP = 76.0  # between columns, for a divisor in words
MOST_COLUMNS = 5
"""Of more the bodies would be too narrow for their words, and rows stand below each other as on a phone."""

PHONE_STEP, PHONE_ROW = 24.0, 66.0
HIGH = 56.0
TEXT = {"wide": 13.0, "phone": 12.5}


def clock_tree(nodes: Sequence[Node], ident: str) -> Both:
    """The two drawings: columns by depth on a wide page, rows with a step for each depth on a phone."""
    names = {node.id: node.name for node in nodes}
    told = "; ".join(
        f"{node.name} {node.rate}" + (f", {names[node.of]} divided by {node.divided_by}" if node.of else "")
        for node in nodes
    )
    label = f"Clocks: {told}. The table of clocks has the same."
    placed = list(_placed(nodes))
    columns = max((depth for _, depth in placed), default=0) + 1
    wide = (
        _columns(nodes, placed, ident, label, columns)
        if columns <= MOST_COLUMNS
        else _rows(placed, ident, label, "wide", WIDE)
    )
    return Both(wide=wide, phone=_rows(placed, ident, label, "phone", PHONE))


def _placed(nodes: Sequence[Node]) -> Iterator[tuple[Node, int]]:
    """Every clock with its depth, each before those that come from it; no recursion, as a chain may be long."""
    coming: dict[str | None, list[Node]] = {}
    for node in nodes:
        coming.setdefault(node.of, []).append(node)
    waiting = [(node, 0) for node in reversed(coming.get(None, []))]
    while waiting:
        node, depth = waiting.pop()
        yield node, depth
        waiting += [(each, depth + 1) for each in reversed(coming.get(node.id, []))]


def _columns(
    nodes: Sequence[Node], placed: Sequence[tuple[Node, int]], ident: str, label: str, columns: int
) -> Picture:
    """A clock stands level with the first that comes from it; each that leads nowhere further takes a row."""
    gap = WIDE_GAP if columns <= 3 else LEAST_GAP
    body = min(WIDE_BODY, (WIDE - 4 - (columns - 1) * gap) / columns)
    leading = {node.of for node in nodes}
    tops: dict[str, float] = {}
    row = 0
    for node, _ in placed:
        tops[node.id] = row * WIDE_ROW
        if node.id not in leading:
            row += 1
    lefts = {node.id: 2 + depth * (body + gap) for node, depth in placed}
    shapes: list[Shape] = []
    for node, _ in placed:
        if node.of:
            start, y0 = lefts[node.of] + body, tops[node.of] + HIGH / 2 + 2
            y, middle = tops[node.id] + HIGH / 2 + 2, start + 24
            end = lefts[node.id]
            way = (("M", (start, y0)), ("L", (middle, y0)), ("L", (middle, y)), ("L", (end, y)))
            shapes.append(Path(way, "outline", 1.6))
            shapes.append(
                Words((middle + end) / 2, y - 6, (Run(f"÷ {node.divided_by:,}"),), TEXT["wide"], anchor="middle")
            )
        shapes += _body(node, lefts[node.id], tops[node.id] + 2, body, TEXT["wide"])
    width = max(lefts.values(), default=0) + body + 2
    return Picture(
        view_box=(0, 0, width, row * WIDE_ROW - WIDE_ROW + HIGH + 4),
        label=label,
        shapes=tuple(shapes),
        css_class="wide",
        ident=f"{ident}-wide",
        most_px=width,
    )


def _rows(placed: Sequence[tuple[Node, int]], ident: str, label: str, css_class: str, width: float) -> Picture:
    """A clock on each row, further in the more often it is divided; far in they stand no deeper."""
    deepest = (width - 150) // PHONE_STEP
    shapes: list[Shape] = []
    tops: dict[str, tuple[float, float]] = {}
    for row, (node, depth) in enumerate(placed):
        left, top = 2 + min(depth, deepest) * PHONE_STEP, row * PHONE_ROW + 2
        tops[node.id] = left, top
        if node.of:
            x, y = tops[node.of][0] + 10, tops[node.of][1] + HIGH
            shapes.append(
                Path((("M", (x, y)), ("L", (x, top + HIGH / 2)), ("L", (left, top + HIGH / 2))), "outline", 1.6)
            )
        shapes += _body(node, left, top, width - 2 - left, TEXT[css_class], divided=True)
    return Picture(
        view_box=(0, 0, width, len(placed) * PHONE_ROW),
        label=label,
        shapes=tuple(shapes),
        css_class=css_class,
        ident=f"{ident}-{css_class}",
    )


def _body(node: Node, left: float, top: float, width: float, size: float, *, divided: bool = False) -> Iterator[Shape]:
    """A frame with the name above and the rate below; `divided` says beside the rate what it comes by."""
    yield Box(left, top, width, HIGH, "body", 2)
    yield Words(left + 8, top + 21, (Run(shortened(node.name, size, width - 14)),), size, "label")
    runs = [Run(node.rate, "bold")]
    if divided and node.divided_by:
        runs.insert(0, Run(f"÷ {node.divided_by:,} = "))
    if node.part:
        runs.append(Run(f"  {node.part}", "mono label2"))
    yield Words(left + 8, top + 43, tuple(runs), size, "label")
