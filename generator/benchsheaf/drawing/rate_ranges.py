"""The rates of a picture against those that a display locks to: one scale for lines, one for frames."""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from decimal import Decimal

from benchsheaf.drawing.axis import even_step
from benchsheaf.drawing.lettering import shortened, spread, text_width
from benchsheaf.drawing.picture import Both, Box, Line, Picture, Run, Shape, Words, words
from benchsheaf.model.signals import Hertz
from benchsheaf.quantities import printed, printed_range

CAPTION = (
    "The box is what the display locks to. A thin line is a rate that fits, a thick bar one that does not. Rates that "
    "fit are not yet a picture: the levels are not known."
)


@dataclass(frozen=True, kw_only=True, slots=True)
class Tick:
    """One mode's rate on a scale: its name, the rate in print, and whether the display locks to it."""

    name: str
    rate_hz: Decimal
    printed: str
    fits: bool


@dataclass(frozen=True, kw_only=True, slots=True)
class Scale:
    """One kind of rate: what it is called, what the display locks to, and each mode's own."""

    name: str
    locks: Hertz
    ticks: Sequence[Tick]


@dataclass(frozen=True, kw_only=True, slots=True)
class Layout:
    """Where things stand in one of the two drawings, in pixels of its column."""

    css_class: str
    width: float
    left: float
    right: float
    text: float


WIDE = Layout(css_class="wide", width=930, left=110, right=914, text=13)
PHONE = Layout(css_class="phone", width=344, left=8, right=334, text=12.5)
ROW = 18.0  # from one line of words to the next


def rate_ranges(scales: Sequence[Scale], ident: str) -> Both:
    """Each scale from below the lowest rate to above the highest.

    Units: hertz. Source of the ranges: the display's own.
    """
    label = f"{'. '.join(_spoken(scale) for scale in scales)}. The table of picture modes has the same figures."
    wide, phone = (_picture(layout, scales, ident, label) for layout in (WIDE, PHONE))
    return Both(wide=wide, phone=phone, caption=CAPTION)


def _spoken(scale: Scale) -> str:
    told = "; ".join(f"{tick.name} {tick.printed}, {'fits' if tick.fits else 'cannot lock'}" for tick in scale.ticks)
    return f"{scale.name}: locks at {printed_range(scale.locks.low_hz, scale.locks.high_hz, 'Hz')}; {told}"


def _picture(layout: Layout, scales: Sequence[Scale], ident: str, label: str) -> Picture:
    shapes: list[Shape] = []
    top = 0.0
    for scale in scales:
        own, high = _lane(layout, scale, top)
        shapes += own
        top += high
    return Picture(
        view_box=(0, 0, layout.width, top),
        label=label,
        shapes=tuple(shapes),
        css_class=layout.css_class,
        ident=f"{ident}-{layout.css_class}",
    )


def _lane(layout: Layout, scale: Scale, top: float) -> tuple[list[Shape], float]:
    """Words of the modes above, the axis with box and lines, figures of the axis below."""
    rates = sorted(scale.ticks, key=lambda tick: tick.rate_hz)
    known = [scale.locks.low_hz, scale.locks.high_hz, *(tick.rate_hz for tick in rates)]
    margin = (max(known) - min(known)) / 10
    low, high = float(min(known) - margin), float(max(known) + margin)

    def at(rate_hz: Decimal) -> float:
        return round(layout.left + (float(rate_hz) - low) / (high - low) * (layout.right - layout.left), 6)

    head = 0.0 if layout is WIDE else ROW
    y = top + head + ROW * len(rates) + 24
    shapes: list[Shape] = [words(0, y + 5 if layout is WIDE else top + 14, Run(scale.name, "bold"), size=14)]
    shapes.append(Line(layout.left, y, layout.right, y, "axis", 1.4))
    left, right = at(scale.locks.low_hz), at(scale.locks.high_hz)
    shapes.append(Box(left, y - 11, max(right - left, 3), 22, "usual-box"))
    shapes += _figures(layout, scale, at, low, high, y)
    for row, tick in enumerate(rates):
        shapes += _tick(layout, tick, at(tick.rate_hz), y, top + head + ROW * row + 14)
    return shapes, y + 72 - top


def _tick(layout: Layout, tick: Tick, x: float, y: float, text_y: float) -> Iterator[Shape]:
    """A mode at its rate, its words on a row of their own above, a thin lead from one to the other."""
    yield Line(x, text_y + 4, x, y - 18, "axis", 1)
    yield Line(x, y - 18, x, y + 18, "limit") if tick.fits else Box(x - 2.5, y - 20, 5, 40, "stop-bar")
    text = f"{tick.name}: {tick.printed}" + ("" if tick.fits else ", cannot lock")
    text = shortened(text, layout.text, layout.width)
    (start,) = spread([x], [text_width(text, layout.text)], 0, layout.width, 0)
    yield Words(start, text_y, (Run(text),), layout.text, "label" if tick.fits else "label bold stop-text")


def _figures(
    layout: Layout, scale: Scale, at: Callable[[Decimal], float], low: float, high: float, y: float
) -> Iterator[Shape]:
    """Ends of the box in figures below it, and even figures of the axis on the row beneath where they have room."""
    text = f"locks at {printed_range(scale.locks.low_hz, scale.locks.high_hz, 'Hz')}"
    middle = (at(scale.locks.low_hz) + at(scale.locks.high_hz)) / 2
    (start,) = spread([middle], [text_width(text, layout.text)], 0, layout.width, 0)
    yield Words(start, y + 36, (Run(text),), layout.text, "label good-text")
    step = even_step(high - low, 8 if layout is WIDE else 4)
    number = int(low // step) + 1
    while number * step <= high:
        rate = Decimal(str(number * step)).normalize()
        x = at(rate)
        yield Line(x, y - 4, x, y + 4, "axis", 1)
        yield Words(x, y + 54, (Run(printed(rate, "Hz")),), layout.text - 1, "label2", "middle")
        number += 1
