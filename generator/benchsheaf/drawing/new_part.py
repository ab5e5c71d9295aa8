"""A new capacitor with its print and the holes that its legs go into, and a new resistor with its rings."""

from collections.abc import Iterator, Mapping, Sequence

from benchsheaf.drawing.connector import WIRES
from benchsheaf.drawing.picture import Box, Circle, Line, Picture, Run, Shape, words

RING_FILLS: Mapping[str, str] = {**WIRES, "gold": "#C9A227", "silver": "#B4BCC2"}
"""What the rings look like: content, not decoration, so they are the same on paper and on a dark screen."""

TEXT = 12.5
ROUND, CAN = "tantalum", "electrolytic"
WIDE = 150.0
MIDDLE, TOP, FLOOR = 75.0, 4.0, 94.0
BODY = 58.0
SPREAD = 48.0  # from the middle to an outer hole, so that a word fits below each


def new_capacitor(
    kind: str, printed: Sequence[str], ends: tuple[str, str] | None, ident: str, *, three_holes: bool = False
) -> Picture:
    """The part from the side, its print in lines, and each hole with what it is connected to.

    `ends` are the words of plus and of minus, empty where what they are connected to is not described; None for a part
    that fits either way. Of three holes the middle one is that of plus; a part of two legs leaves an outer one empty.
    """
    told = [f"{sign} to {end}" if end else sign for sign, end in zip(("plus", "minus"), ends or (), strict=False)]
    said = f"; {' and '.join(told)} marked below its legs" if ends else "; it fits either way round"
    holes = ", the middle one of three holes for plus" if three_holes else ""
    shapes = [*_legs(ends, three_holes), *_body(kind, printed, ends is not None, three_holes)]
    return Picture(
        view_box=(0, 0, WIDE, FLOOR + (44 if ends and any(ends) else 28 if ends else 8)),
        label=f"New part, printed {' '.join(printed)}{said}{holes}. The words beside it say the same.",
        shapes=tuple(shapes),
        css_class="wide",
        ident=ident,
        most_px=WIDE,
    )


def _body(kind: str, printed: Sequence[str], polar: bool, three_holes: bool) -> Iterator[Shape]:
    """A drop, a can with its stripe at minus, or a box."""
    left = MIDDLE - BODY / 2
    if kind == ROUND:
        yield Circle(MIDDLE, TOP + BODY / 2, BODY / 2, "body")
    else:
        yield Box(left - (4 if kind == CAN else 12), TOP, BODY + (8 if kind == CAN else 24), BODY, "body", 3)
    if kind == CAN and polar:
        yield Box(left + BODY - 8, TOP, 12, BODY, "tone")
    lines = list(printed)
    first = TOP + BODY / 2 + 5 - (len(lines) - 1) * 7.5
    for number, line in enumerate(lines):
        yield words(
            MIDDLE - (6 if kind == CAN and polar else 0),
            first + number * 15,
            line,
            size=TEXT,
            anchor="middle",
        )
    if kind == ROUND and polar and not three_holes:
        yield words(MIDDLE - BODY / 2 - 4, TOP + BODY - 2, Run("+", "bold"), size=16, anchor="end")


def _legs(ends: tuple[str, str] | None, three_holes: bool) -> Iterator[Shape]:
    """The wires from the body to the holes, and the words below."""
    feet = (0.0, SPREAD) if three_holes else (-SPREAD, SPREAD)
    for off in feet:
        yield Line(MIDDLE + off / 5, TOP + BODY - 4, MIDDLE + off, FLOOR, "outline", 1.6)
        yield Circle(MIDDLE + off, FLOOR, 4.5, "body")
    if three_holes and ends:
        yield Circle(MIDDLE - SPREAD, FLOOR, 4.5, "body")
        yield words(MIDDLE - SPREAD, FLOOR + 20, "empty", size=TEXT, anchor="middle", css_class="label label2")
        yield words(MIDDLE - SPREAD, FLOOR + 36, ends[1], size=TEXT, anchor="middle")
    for off, sign, word in zip(feet, ("plus", "minus"), ends or (), strict=False):
        yield words(MIDDLE + off, FLOOR + 20, Run(sign, "bold"), size=TEXT, anchor="middle")
        yield words(MIDDLE + off, FLOOR + 36, word, size=TEXT, anchor="middle")


RING, GAP, LAST_GAP = 18.0, 18.0, 32.0
LEAD = 14.0
RESISTOR_TOP, RESISTOR_HIGH = 26.0, 40.0


def new_resistor(rings: Sequence[str], ident: str) -> Picture:
    """The rings from the end where they begin, each with its word; the last of the usual ones stands apart.

    Words stand above and below in turn, so that each has room.
    """
    lefts = [LEAD + 12.0]
    apart = 3 if len(rings) == 4 else 4
    for place in range(1, len(rings)):
        lefts.append(lefts[-1] + RING + (LAST_GAP if place == apart else GAP))
    wide = lefts[-1] + RING + 12 + LEAD
    middle, below = RESISTOR_TOP + RESISTOR_HIGH / 2, RESISTOR_TOP + RESISTOR_HIGH
    shapes: list[Shape] = [
        Line(0, middle, wide, middle, "outline", 2),
        Box(LEAD, RESISTOR_TOP, wide - 2 * LEAD, RESISTOR_HIGH, "body", 8),
    ]
    for place, (left, ring) in enumerate(zip(lefts, rings, strict=True)):
        x, up = left + RING / 2, place % 2
        shapes.append(Box(left, RESISTOR_TOP + 1, RING, RESISTOR_HIGH - 2, "lamp", fill=RING_FILLS[ring]))
        shapes.append(Line(x, RESISTOR_TOP if up else below, x, RESISTOR_TOP - 5 if up else below + 5, "outline", 1))
        shapes.append(words(x, RESISTOR_TOP - 9 if up else below + 18, ring, size=TEXT, anchor="middle"))
    return Picture(
        view_box=(0, 0, wide, below + 24),
        label=f"Rings from the left: {', '.join(rings)}. The words beside it say the same.",
        shapes=tuple(shapes),
        css_class="wide",
        ident=ident,
        most_px=wide,
    )
