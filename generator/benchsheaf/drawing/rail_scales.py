"""Resistances to ground of all rails on one scale: where no power goes on, where it is doubtful, what is usual."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from decimal import Decimal

from benchsheaf.drawing.axis import Decades, decades
from benchsheaf.drawing.lettering import spread, text_width
from benchsheaf.drawing.picture import Both, Box, Hatch, Line, Picture, Run, Shape, Words, words
from benchsheaf.drawing.told import as_written, rail_name
from benchsheaf.model.machine import Rail, ToGround
from benchsheaf.quantities import printed, printed_range

CAPTION = (
    "Read from the left: solid to the bar, no power; hatched, doubtful; boxed, usual. Between them nothing is said: "
    "look at the rail again. A usual reading does not clear a part that fails only at voltage."
)


@dataclass(frozen=True, kw_only=True, slots=True)
class Layout:
    """Where things stand in one of the two drawings, in pixels of its column."""

    css_class: str
    width: float
    left: float
    right: float
    head: float
    pitch: float
    line: float  # from a lane's top to the middle of its line
    text: float


WIDE = Layout(css_class="wide", width=930, left=66, right=914, head=30, pitch=75, line=26, text=13)
PHONE = Layout(css_class="phone", width=344, left=2, right=334, head=26, pitch=84, line=38, text=12.5)


def rail_scales(rails: Sequence[Rail], ident: str) -> Both:
    """All rails on one scale of 1 Ω to 10 kΩ, longer by decades where a value lies beyond.

    Units: ohm. Source of the limits: each rail's own `to_ground`.
    """
    label = f"Resistance to ground: {'; '.join(_spoken(rail) for rail in rails) or 'no rail is described'}."
    label += " The table beside it has the same figures."
    wide, phone = (_picture(layout, rails, ident, label) for layout in (WIDE, PHONE))
    return Both(wide=wide, phone=phone, caption=CAPTION)


def _spoken(rail: Rail) -> str:
    known = rail.to_ground
    if known is None:
        return f"{rail_name(rail.name)} not known"
    usual = printed_range(known.usual.low_ohm, known.usual.high_ohm, "ohm")
    doubtful, stop = as_written(known.doubtful_below_ohm, "ohm"), as_written(known.no_power_below_ohm, "ohm")
    return f"{rail_name(rail.name)} usual {usual}, doubtful below {doubtful}, no power below {stop}"


def _picture(layout: Layout, rails: Sequence[Rail], ident: str, label: str) -> Picture:
    ident = f"{ident}-{layout.css_class}"
    hatch = Hatch(ident=f"{ident}-hatch", css_class="weak", every=6, line_width=1.2)
    known = [rail.to_ground for rail in rails if rail.to_ground]
    values = [value for each in known for value in _values(each)]
    scale = decades(values, 0, 4, layout.left, layout.right)
    bottom = layout.head + len(rails) * layout.pitch
    shapes = list(_axis(layout, scale, bottom))
    for number, rail in enumerate(rails):
        shapes += _lane(layout, rail, scale, layout.head + number * layout.pitch, hatch.fill)
    return Picture(
        view_box=(0, 0, layout.width, bottom + 4),
        label=label,
        shapes=tuple(shapes),
        css_class=layout.css_class,
        ident=ident,
        hatches=(hatch,),
    )


def _values(known: ToGround) -> tuple[Decimal, ...]:
    return known.no_power_below_ohm, known.doubtful_below_ohm, known.usual.low_ohm, known.usual.high_ohm


def _axis(layout: Layout, scale: Decades, bottom: float) -> Iterator[Shape]:
    """A line and a figure for each decade; figures that would touch are left out."""
    free = -1.0
    for power in scale.powers():
        value = Decimal(1).scaleb(power)
        x = scale.at(value)
        yield Line(x, 20, x, bottom, "grid")
        text = printed(value, "ohm")
        wide = text_width(text, layout.text)
        (left,) = spread([x], [wide], 0, layout.width, 0)
        if left >= free:
            yield words(left, 14, text, size=layout.text, css_class="label2")
            free = left + wide + 6


def _lane(layout: Layout, rail: Rail, scale: Decades, top: float, hatch: str) -> Iterator[Shape]:
    """One rail from the back to the front: line, doubtful, no power with its bar, usual, the values below."""
    y = top + layout.line
    name_y = y + 5 if layout is WIDE else top + 15
    yield words(0, name_y, Run(rail_name(rail.name), "bold"), size=14)
    if rail.to_ground is None:
        yield Line(scale.left, y, scale.right, y, "axis dash")
        yield words(scale.left + 8, y + 19, "not known for this machine", size=layout.text, css_class="label2")
        return
    known = rail.to_ground
    stop, doubtful, low, high = (scale.at(value) for value in _values(known))
    yield Line(scale.left, y, scale.right, y, "axis", 1.4)
    if doubtful > stop:
        yield Box(stop, y - 11, doubtful - stop, 22, "weak-line", fill=hatch)
        yield from _inside(layout, "doubtful", stop + 3, doubtful, y, "label halo weak-text")
    yield Box(scale.left, y - 11, max(stop - scale.left, 0), 22, "stop-area")
    yield from _inside(layout, "no power", scale.left, stop, y, "label bold on-stop")
    yield Box(stop - 2.5, y - 17, 5, 34, "stop-bar")
    yield Box(low, y - 11, max(high - low, 3), 22, "usual-box")
    yield from _below(layout, known, scale, y + 31)


def _inside(layout: Layout, text: str, left: float, right: float, y: float, css_class: str) -> Iterator[Shape]:
    """A word in an area, where the area is wide enough for it; on hatching it has a ground of its own."""
    size = layout.text
    wide = text_width(text, size)
    if wide + 10 <= right - left:
        if "halo" in css_class:
            yield Box((left + right - wide) / 2 - 3, y - 8, wide + 6, 16, "chip")
        yield Words((left + right) / 2, y + 4.5, (Run(text),), size, css_class, "middle")


def _below(layout: Layout, known: ToGround, scale: Decades, y: float) -> Iterator[Words]:
    """The values at their boundaries; with the word where there is room for all of it."""
    usual = printed_range(known.usual.low_ohm, known.usual.high_ohm, "ohm")
    stop, doubtful = as_written(known.no_power_below_ohm, "ohm"), as_written(known.doubtful_below_ohm, "ohm")
    low, high = scale.at(known.usual.low_ohm), scale.at(known.usual.high_ohm)
    centres = [scale.at(known.no_power_below_ohm), scale.at(known.doubtful_below_ohm), (low + high) / 2]
    named = [(stop, "label bold stop-text"), (doubtful, "label weak-text"), (usual, "label good-text")]
    ranked = sorted(zip(centres, named, strict=True))
    widths = [text_width(text, layout.text) for _, (text, _) in ranked]
    lefts = spread([centre for centre, _ in ranked], widths, 0, layout.width, 8)
    for left, (_, (text, css_class)) in zip(lefts, ranked, strict=True):
        yield Words(left, y, (Run(text),), layout.text, css_class)
