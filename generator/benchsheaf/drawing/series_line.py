"""One decade of preferred values: a line for each series on which every step of a share is as wide as the next."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from decimal import Decimal

from benchsheaf.drawing.axis import Decades
from benchsheaf.drawing.picture import Both, Line, Picture, Run, Shape, Words

CAPTION = "A decade from 10 to 100. Equal shares are equally far apart, so the steps of a series are nearly even."
LANE = 84.0


@dataclass(frozen=True, kw_only=True, slots=True)
class Layout:
    """Where things stand in one of the two drawings, in pixels of its column."""

    css_class: str
    width: float
    left: float
    right: float
    text: float


WIDE = Layout(css_class="wide", width=930, left=60, right=910, text=14)
PHONE = Layout(css_class="phone", width=344, left=12, right=330, text=12.5)


def series_line(several: Sequence[Sequence[Decimal]], ident: str) -> Both:
    """Each series on a line of its own, named by how many values it has."""
    told = "; ".join(f"E{len(values)}: {', '.join(f'{each:f}' for each in values)}" for values in several)
    label = f"Preferred values of one decade. {told}. The table below has the same."
    wide, phone = (_picture(layout, several, ident, label) for layout in (WIDE, PHONE))
    return Both(wide=wide, phone=phone, caption=CAPTION)


def _picture(layout: Layout, several: Sequence[Sequence[Decimal]], ident: str, label: str) -> Picture:
    shapes: list[Shape] = []
    for place, values in enumerate(several):
        shapes += _lane(layout, values, LANE * place)
    return Picture(
        view_box=(0, 0, layout.width, LANE * len(several)),
        label=label,
        shapes=tuple(shapes),
        css_class=layout.css_class,
        ident=f"{ident}-{layout.css_class}",
    )


def _lane(layout: Layout, values: Sequence[Decimal], top: float) -> Iterator[Shape]:
    """The axis; a stroke for each value, its figure in turn above and below where a phone has no room for all."""
    scale = Decades(1, 2, layout.left, layout.right)
    y = top + 48
    aside = layout is WIDE
    yield Words(0 if aside else 2, y + 5 if aside else top + 16, (Run(f"E{len(values)}", "bold"),), 14)
    yield Line(layout.left, y, layout.right, y, "axis", 1.4)
    for place, value in enumerate(values):
        x = scale.at(value)
        below = not aside and place % 2 == 1
        yield Line(x, y - 8, x, y + 8, "limit", 2)
        at = y + 22 if below else y - 12
        yield Words(x, at, (Run(f"{value:f}"),), layout.text, "label", "middle")
