"""Loads against limits: grey steps for what runs, hatching for what starts, a heavy bar where nothing may cross."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from decimal import Decimal

from benchsheaf.compute.power import PowerFigures
from benchsheaf.drawing.lettering import spread, text_width
from benchsheaf.drawing.load_lanes import Lane, Text, lanes
from benchsheaf.drawing.picture import Both, Box, Hatch, Line, Path, Picture, Run, Shape, Words, words
from benchsheaf.model.machine import Rail
from benchsheaf.model.supply import Supply

CAPTION = (
    "Grey steps: the loads in the order of the table. Hatched: only while starting. Bracket: the least that the supply "
    "needs. Heavy bar: the limit that must not be crossed."
)


GAP = 12
Named = tuple[Text, Decimal, str]
"""Words under a bar: what they say, where on the bar what they name stands, and their class."""


@dataclass(frozen=True, kw_only=True, slots=True)
class Layout:
    """Where things stand in one of the two drawings, in pixels of its column."""

    css_class: str
    width: float
    zero: float  # where every bar begins
    limit: float  # how far off the continuous limits stand at most
    reach: float  # how far anything may reach
    head: float
    above: float  # from a lane's top to its bar, without a line for the start
    bar: float
    below: float  # from a bar to the next lane's top
    text: float

    def bar_top(self, lane: Lane) -> float:
        """From a lane's top to its bar."""
        return self.above + (18 if self is PHONE and lane.start_text else 0)

    def height(self, lane: Lane) -> float:
        """From a lane's top to the next."""
        return self.bar_top(lane) + self.bar + self.below


WIDE = Layout(css_class="wide", width=930, zero=96, limit=506, reach=792, head=36, above=26, bar=26, below=34, text=13)
PHONE = Layout(
    css_class="phone", width=344, zero=1, limit=206, reach=330, head=2, above=24, bar=24, below=38, text=12.5
)


def load_bars(power: PowerFigures, supply: Supply, rails: Sequence[Rail], ident: str) -> Both:
    """A bar for each rail of the machine and one for all together; the continuous limits stand on one line.

    Units: ampere, and watt together.
    """
    shown = lanes(power, supply, rails)
    label = f"Loads against limits of {supply.name}: {'; '.join(lane.spoken for lane in shown)}."
    label += " The table of loads has the same figures."
    return Both(
        wide=_picture(WIDE, shown, ident, label),
        phone=_picture(PHONE, lanes(power, supply, rails, brief=True), ident, label),
        caption=CAPTION,
    )


def _picture(layout: Layout, shown: Sequence[Lane], ident: str, label: str) -> Picture:
    ident = f"{ident}-{layout.css_class}"
    hatch = Hatch(ident=f"{ident}-hatch", css_class="ink", every=6, line_width=1.2)
    furthest = float(max((lane.furthest for lane in shown), default=1))
    unit = min(layout.limit, layout.reach / furthest)
    shapes: list[Shape] = []
    if layout is WIDE and len(shown) > 1:
        x = layout.zero + unit
        shapes.append(
            words(x, 14, "continuous limits stand on one line", size=layout.text, css_class="label2", anchor="middle")
        )
        shapes.append(Line(x, 20, x, 32, "axis"))
    top = layout.head
    for lane in shown:
        shapes += _lane(layout, lane, unit, top, hatch.fill)
        top += layout.height(lane)
    return Picture(
        view_box=(0, 0, layout.width, top),
        label=label,
        shapes=tuple(shapes),
        css_class=layout.css_class,
        ident=ident,
        hatches=(hatch,),
    )


def _lane(layout: Layout, lane: Lane, unit: float, top: float, hatch: str) -> Iterator[Shape]:
    """One bar from the back to the front: its field, the loads, the start, the limits, the words."""
    scale = unit / float(lane.most)
    upper = top + layout.bar_top(lane)
    lower = upper + layout.bar
    limit, run, start = (layout.zero + float(value) * scale for value in (lane.most, lane.run, lane.start))
    peak = layout.zero + float(lane.peak) * scale if lane.peak is not None else None
    if peak is not None:
        yield from (Line(limit, y, peak, y, "axis dash") for y in (upper + 1, lower - 1))
    yield Box(layout.zero, upper, unit, layout.bar, "body")
    yield from _steps(layout, lane, scale, upper)
    if start > run:
        yield Box(run, upper + 4, start - run, layout.bar - 8, "outline", fill=hatch, stroke_width=1.5)
    yield Line(run, upper - 4, run, lower + 4, "running-end")
    if lane.least is not None:
        x = layout.zero + float(lane.least) * scale
        hook = (("M", (x + 6, upper - 6)), ("H", (x,)), ("V", (lower + 6,)), ("H", (x + 6,)))
        yield Path(hook, "good-line")
    if peak is not None:
        yield Line(limit, upper - 7, limit, lower + 7, "limit")
    end = limit if peak is None else peak
    yield Line(end, upper - 7, end, lower + 7, "stop-bar")
    yield from _words(layout, lane, scale, top, upper)


def _steps(layout: Layout, lane: Lane, scale: float, upper: float) -> Iterator[Box]:
    """The running loads one behind the other; the last ends at their sum."""
    edge = Decimal(0)
    for number, step in enumerate(lane.steps):
        left = layout.zero + float(edge) * scale
        edge += step
        width = layout.zero + float(edge) * scale - left
        yield Box(left, upper + 1, width, layout.bar - 2, f"load-{number % 3 + 1}")


def _words(layout: Layout, lane: Lane, scale: float, top: float, upper: float) -> Iterator[Shape]:
    size = layout.text
    if layout is PHONE:
        yield words(0, top + 14, Run(lane.name, "bold"), size=14)
        yield Words(layout.width, top + 14, lane.run_text, size, anchor="end")
        if lane.start_text:
            yield Words(layout.width, top + 31, lane.start_text, size, anchor="end")
        yield from _below(layout, lane, scale, upper + layout.bar + 19, [])
        return
    yield words(0, upper + layout.bar / 2 + 5, Run(lane.name, "bold"), size=14)
    if lane.start_text:
        wide = _width(lane.start_text, size)
        middle = layout.zero + float(lane.start) * scale
        (x,) = spread([middle], [wide], layout.zero, layout.width, 0)
        yield Words(x, upper - 12, lane.start_text, size)
    yield from _below(layout, lane, scale, upper + layout.bar + 20, [(lane.run_text, lane.run, "label")])


def _below(layout: Layout, lane: Lane, scale: float, y: float, own: list[Named]) -> Iterator[Words]:
    """The words under a bar, each as near as may be to what it names; a limit with room beside it has them there.

    Where there is not room for all, the last of the list go; the table has them.
    """
    named: list[Named] = []
    beside = lane.peak is None and max(lane.run, lane.start) <= lane.most
    if lane.peak is not None and lane.peak_text:
        named.append((lane.peak_text, lane.peak, "label stop-text"))
    if lane.least_text and lane.least is not None:
        named.append((lane.least_text, lane.least, "label good-text"))
    named += own
    if not beside:
        named.append((lane.most_text, lane.most, "label" if lane.peak is not None else "label stop-text"))
    while sum(_width(text, layout.text) + GAP for text, _, _ in named) > layout.width - layout.zero + GAP:
        named.pop()
    named.sort(key=lambda each: each[1])
    centres = [layout.zero + float(value) * scale for _, value, _ in named]
    widths = [_width(text, layout.text) for text, _, _ in named]
    lefts = spread(centres, widths, layout.zero, layout.width, GAP)
    for left, (text, _, css_class) in zip(lefts, named, strict=True):
        yield Words(left, y, text, layout.text, css_class)
    if beside:
        x = layout.zero + float(lane.most) * scale + 9
        yield Words(x, y - layout.bar / 2 - 15, lane.most_text, layout.text, "label stop-text")


def _width(text: Text, size: float) -> float:
    return text_width("".join(run.text for run in text), size)
