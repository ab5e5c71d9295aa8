"""What a rail gives as things start: a step for each moment, the limits across, the late start after a gap."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from benchsheaf.compute.power import RailFigures, StartMoment
from benchsheaf.drawing.lettering import text_width
from benchsheaf.drawing.picture import Both, Line, Path, Picture, Polygon, Run, Shape, Words, words
from benchsheaf.drawing.told import as_written, told
from benchsheaf.model.supply import Output

CAPTION = (
    "From switch-on to the right, in seconds; after the gap the late start, once the others run. A start whose end "
    "nobody gives is drawn to the end of its part. Thin line: the continuous limit. Red bar: what must not be crossed."
)
TAIL = 0.4  # by the longest known start: how far the last moment of a phase is drawn
GAP = 26


@dataclass(frozen=True, kw_only=True, slots=True)
class Lane:
    """One rail of one outfit as it starts, with what the supply allows on it."""

    name: str
    figures: RailFigures
    output: Output


@dataclass(frozen=True, kw_only=True, slots=True)
class Layout:
    """Where things stand in one of the two drawings, in pixels of its column."""

    css_class: str
    width: float
    left: float
    right: float
    head: float
    plot: float
    text: float


WIDE = Layout(css_class="wide", width=930, left=130, right=922, head=34, plot=84, text=12.5)
PHONE = Layout(css_class="phone", width=344, left=2, right=340, head=46, plot=84, text=11.5)


@dataclass(frozen=True, slots=True)
class Scale:
    """Where the seconds of a phase stand, and the amperes over a base line."""

    first: float  # where the first phase begins
    late: float  # where the late one begins
    end: float
    second: float
    ampere: float


def start_times(lanes: Sequence[Lane], ident: str) -> Both:
    """A lane for each outfit, all on one scale of seconds and one of amperes; at least one is wanted."""
    label = f"Amperes as things start: {'; '.join(_spoken(lane) for lane in lanes)}. The table has the same figures."
    wide, phone = (_picture(layout, lanes, ident, label) for layout in (WIDE, PHONE))
    return Both(wide=wide, phone=phone, caption=CAPTION)


def _spoken(lane: Lane) -> str:
    parts = [
        f"{told(each, 'sum_a', 'A', 2, 2)} from {as_written(each.from_s, 's')}"
        + (" of the late start" if each.phase == "late" else "")
        for each in lane.figures.moments
    ]
    return f"{lane.name} {', '.join(parts)}"


def _picture(layout: Layout, lanes: Sequence[Lane], ident: str, label: str) -> Picture:
    ident = f"{ident}-{layout.css_class}"
    scale = _scale(layout, lanes)
    shapes: list[Shape] = []
    top = 0.0
    for lane in lanes:
        shapes += _lane(layout, lane, scale, top + layout.head + layout.plot)
        top += layout.head + layout.plot + 22
    return Picture(
        view_box=(0, 0, layout.width, top + 2),
        label=label,
        shapes=tuple(shapes),
        css_class=layout.css_class,
        ident=ident,
    )


def _scale(layout: Layout, lanes: Sequence[Lane]) -> Scale:
    moments = [each for lane in lanes for each in lane.figures.moments]
    known = {
        phase: max((float(each.from_s) for each in moments if each.phase == phase), default=0.0)
        for phase in ("first", "late")
    }
    longest = max(*known.values(), 1.0)
    late = any(each.phase == "late" for each in moments)
    lengths = [known["first"] + TAIL * longest, known["late"] + TAIL * longest if late else 0.0]
    second = (layout.right - layout.left - (GAP if late else 0)) / sum(lengths)
    begins = layout.left + lengths[0] * second + GAP
    highest = max(
        max(float(lane.figures.start_a), float(lane.output.most_a), float(lane.output.peak_a or 0)) for lane in lanes
    )
    return Scale(layout.left, begins, layout.right, second, layout.plot / highest)


def _lane(layout: Layout, lane: Lane, scale: Scale, base: float) -> Iterator[Shape]:
    """One lane from the back to the front: its steps, base lines, limits, the words."""
    for phase in ("first", "late"):
        moments = [each for each in lane.figures.moments if each.phase == phase]
        if not moments:
            continue
        begins = scale.first if phase == "first" else scale.late
        late_there = scale.late < scale.end
        ends = scale.end if phase == "late" or not late_there else scale.late - GAP
        yield from _steps(layout, moments, scale, begins, ends, base)
    most = base - float(lane.output.most_a) * scale.ampere
    peak = lane.output.peak_a
    yield Line(scale.first, most, scale.end, most, "stop-bar" if peak is None else "limit")
    if peak is not None:
        y = base - float(peak) * scale.ampere
        yield Line(scale.first, y, scale.end, y, "stop-bar")
    yield from _limit_words(layout, lane, base, most)


def _steps(
    layout: Layout,
    moments: Sequence[StartMoment],
    scale: Scale,
    begins: float,
    ends: float,
    base: float,
) -> Iterator[Shape]:
    """The moments of one phase as steps down, what each takes over it, the seconds under its beginning."""
    steps: list[tuple[str, tuple[float, ...]]] = []
    corners: list[tuple[float, float]] = [(begins, base)]
    named: list[Words] = []
    for moment in moments:
        left = begins + float(moment.from_s) * scale.second
        right = ends if moment.until_s is None else begins + float(moment.until_s) * scale.second
        y = base - float(moment.sum_a) * scale.ampere
        steps += [("V" if steps else "M", (y,) if steps else (left, y)), ("H", (right,))]
        corners += [(left, y), (right, y)]
        text = told(moment, "sum_a", "A", 2, 2)
        if text_width(text, layout.text) + 8 <= right - left:
            named.append(
                words(
                    (left + right) / 2, base - 6, text, size=layout.text, css_class="label bold halo", anchor="middle"
                )
            )
        yield Line(left, base, left, base + 5, "axis", 1.2)
        named.append(words(left, base + 17, as_written(moment.from_s, "s"), size=layout.text, css_class="label2"))
    yield Polygon((*corners, (ends, base)), "load-3")
    yield Path(tuple(steps), "running-end")
    yield Line(begins, base, ends, base, "axis", 1.4)
    yield from named


def _limit_words(layout: Layout, lane: Lane, base: float, most: float) -> Iterator[Shape]:
    output = lane.output
    continuous = f"{as_written(output.most_a, 'A')} {'most' if output.peak_a is None else 'continuous'}"
    short = ""
    if output.peak_a is not None:
        seconds = f" for {as_written(output.peak_for_s, 's')}" if output.peak_for_s is not None else ""
        short = f"{as_written(output.peak_a, 'A')}{seconds}"
    top = base - layout.plot
    limits = [Run(continuous, "" if short else "stop-text")] + ([Run(f", {short}", "stop-text")] if short else [])
    if layout is PHONE:
        yield words(layout.left, top - 26, Run(lane.name, "bold"), size=13)
        yield words(layout.left, top - 9, *limits, size=layout.text)
        return
    yield words(0, top - 12, Run(lane.name, "bold"), size=14)
    yield words(layout.left - 8, most + 4, continuous, size=layout.text, css_class="label", anchor="end")
    if short:
        y = most - (float(output.peak_a or 0) - float(output.most_a)) * (base - most) / float(output.most_a)
        yield words(layout.left - 8, y + 4, short, size=layout.text, css_class="label stop-text", anchor="end")
