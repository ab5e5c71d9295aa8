"""Resistors with their rings, each ring with its colour in words below it and the value above."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from benchsheaf.drawing.connector import WIRES
from benchsheaf.drawing.picture import Both, Box, Line, Picture, Run, Shape, Words

RINGS = {**WIRES, "gold": "#B8923A", "silver": "#B9BEC4"}
Marked = tuple[Sequence[str], str]
"""The rings of a resistor, and what it is."""

CAPTION = "Read from the left. The colour of each ring stands below it; what the resistor is stands above."
ROW, TOP, HIGH, RING = 92.0, 24.0, 30.0, 14.0


@dataclass(frozen=True, kw_only=True, slots=True)
class Layout:
    """Where things stand in one of the two drawings, in pixels of its column."""

    css_class: str
    width: float
    columns: int
    pitch: float  # from the middle of one ring to the next
    text: float


WIDE = Layout(css_class="wide", width=930, columns=3, pitch=44, text=13)
PHONE = Layout(css_class="phone", width=344, columns=1, pitch=52, text=13)


def colour_rings(several: Sequence[Marked], ident: str) -> Both:
    """Each resistor in a place of its own, in the order given."""
    told = "; ".join(f"{', '.join(rings)} is {says}" for rings, says in several)
    label = f"Resistors and their rings: {told}. The table below says the same."
    wide, phone = (_picture(layout, several, ident, label) for layout in (WIDE, PHONE))
    return Both(wide=wide, phone=phone, caption=CAPTION)


def _picture(layout: Layout, several: Sequence[Marked], ident: str, label: str) -> Picture:
    shapes: list[Shape] = []
    for place, marked in enumerate(several):
        row, column = divmod(place, layout.columns)
        shapes += _resistor(layout, marked, column * layout.width / layout.columns, row * ROW)
    rows = -(-len(several) // layout.columns)
    return Picture(
        view_box=(0, 0, layout.width, rows * ROW),
        label=label,
        shapes=tuple(shapes),
        css_class=layout.css_class,
        ident=f"{ident}-{layout.css_class}",
    )


def _resistor(layout: Layout, marked: Marked, left: float, top: float) -> Iterator[Shape]:
    """The value, the legs behind the body, the body, its rings and their words."""
    rings, says = marked
    body = layout.pitch * len(rings) - 6
    middle = top + TOP + HIGH / 2
    yield Words(left + 2, top + 15, (Run(says, "bold"),), layout.text + 1)
    yield Line(left, middle, left + body + 24, middle, "axis", 2)
    yield Box(left + 12, top + TOP, body, HIGH, "body", 8)
    for place, ring in enumerate(rings):
        x = left + 12 + layout.pitch * (place + 0.5) - 3
        yield Box(x - RING / 2, top + TOP, RING, HIGH, "lamp", fill=RINGS[ring])
        yield Words(x, top + TOP + HIGH + 16, (Run(ring),), layout.text - 1, "label2", "middle")
