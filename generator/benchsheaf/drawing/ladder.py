"""The way up as a staircase: the watts of each rung as a step, its amperes below, rail by rail against the limits."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from math import ceil

from benchsheaf.drawing.lettering import spread, text_width, wrapped
from benchsheaf.drawing.picture import Both, Box, Hatch, Line, Path, Picture, Run, Shape, words
from benchsheaf.drawing.rung_panels import Column, Panel, Rung, rung_panels
from benchsheaf.model.supply import Supply

CAPTION = (
    "A column for each rung. White: load resistors. Grey: all else, cold. Outlined above it: what a warm fan adds. "
    "Hatched: only while starting. Green line: the least that the rail needs. Thin line: the continuous limit. Red bar:"
    " what must not be crossed. Under each column what it takes cold, then what it takes as it starts."
)
ROW = 16
MOST_LINES = 4


@dataclass(frozen=True, kw_only=True, slots=True)
class Layout:
    """Where things stand in one of the two drawings, in pixels of its column."""

    css_class: str
    width: float
    left: float
    right: float
    head: float  # from a panel's top to the highest thing in it
    stairs: float  # height of the panel of all together
    plot: float  # height of a rail's
    text: float


WIDE = Layout(css_class="wide", width=930, left=172, right=926, head=24, stairs=120, plot=76, text=12.5)
PHONE = Layout(css_class="phone", width=344, left=2, right=342, head=26, stairs=90, plot=64, text=11.5)


def ladder_picture(rungs: Sequence[Rung], supply: Supply, ident: str) -> Both:
    """The rungs from the first to the last against what a supply gives; at least one is wanted.

    Units: ampere, and watt together.
    """
    panels = rung_panels(rungs, supply)
    label = f"The way up on {supply.name}, rung by rung. {'. '.join(panel.spoken for panel in panels)}."
    label += " The list of rungs has the same figures."
    wide, phone = (_picture(layout, rungs, panels, ident, label) for layout in (WIDE, PHONE))
    return Both(wide=wide, phone=phone, caption=CAPTION)


def _picture(layout: Layout, rungs: Sequence[Rung], panels: Sequence[Panel], ident: str, label: str) -> Picture:
    ident = f"{ident}-{layout.css_class}"
    hatch = Hatch(ident=f"{ident}-hatch", css_class="ink", every=6, line_width=1.2)
    pitch = (layout.right - layout.left) / len(rungs)
    shapes: list[Shape] = []
    top = 0.0
    for number, panel in enumerate(panels):
        plot = layout.plot if number else layout.stairs
        base = top + layout.head + plot
        shapes += _panel(layout, panel, pitch, base, plot, hatch.fill, stairs=not number)
        top = base + 4 + ROW * _rows(panel)
        if not number:
            shapes += _numbers(layout, rungs, pitch, top)
            top += _names_height(layout, rungs, pitch)
    return Picture(
        view_box=(0, 0, layout.width, top + 4),
        label=label,
        shapes=tuple(shapes),
        css_class=layout.css_class,
        ident=ident,
        hatches=(hatch,),
    )


def _rows(panel: Panel) -> int:
    return 2 if any(each.start_text for each in panel.columns) else 1


def _panel(
    layout: Layout, panel: Panel, pitch: float, base: float, plot: float, hatch: str, *, stairs: bool
) -> Iterator[Shape]:
    """One panel from the back to the front: its columns, the limits across them, the words."""
    unit = plot / float(panel.highest)
    half = pitch / 2 if stairs else min(pitch * 0.3, 26)
    for number, column in enumerate(panel.columns):
        middle = layout.left + (number + 0.5) * pitch
        yield from _column(column, middle, half, base, unit, hatch)
        yield from _values(layout, column, middle, base, pitch)
    if stairs:
        yield Path(_treads(layout, panel, pitch, base, unit), "outline")
    yield Line(layout.left, base, layout.right, base, "axis", 1.4)
    most = base - float(panel.most) * unit
    yield Line(layout.left, most, layout.right, most, "stop-bar" if panel.peak is None else "limit")
    if panel.peak is not None:
        peak = base - float(panel.peak) * unit
        yield Line(layout.left, peak, layout.right, peak, "stop-bar")
    if panel.least is not None:
        least = base - float(panel.least) * unit
        yield Line(layout.left, least, layout.right, least, "good-line")
    yield from _limit_words(layout, panel, base, plot, unit)


def _column(column: Column, middle: float, half: float, base: float, unit: float, hatch: str) -> Iterator[Shape]:
    """What a rung takes, from the base line up: resistors, loads, what warmth adds, what starting adds."""
    left, wide = middle - half, 2 * half
    resistors, cold, warm, start = (
        float(each) * unit for each in (column.resistors, column.cold, column.warm, column.start)
    )
    if cold > resistors:
        yield Box(left, base - cold, wide, cold - resistors, "load-2")
    if resistors > 0:
        yield Box(left, base - resistors, wide, resistors, "body")
    if start > cold:
        yield Box(middle - half * 0.6, base - start, half * 1.2, start - cold, "outline", fill=hatch, stroke_width=1.5)
    if warm > cold:
        yield Box(left, base - warm, wide, warm - cold, "outline", stroke_width=1)


def _treads(
    layout: Layout, panel: Panel, pitch: float, base: float, unit: float
) -> tuple[tuple[str, tuple[float, ...]], ...]:
    """The line over the columns: up, along, up, along."""
    steps: list[tuple[str, tuple[float, ...]]] = [("M", (layout.left, base))]
    for number, column in enumerate(panel.columns, 1):
        steps += [("V", (base - float(column.cold) * unit,)), ("H", (layout.left + number * pitch,))]
    return (*steps, ("V", (base,)))


def _values(layout: Layout, column: Column, middle: float, base: float, pitch: float) -> Iterator[Shape]:
    """What a column takes under it: with its unit where there is room, without where there is less, else nothing."""
    for row, text in enumerate((column.cold_text, column.start_text or "")):
        bare = text.partition("\u00a0")[0]
        said = next((each for each in (text, bare) if text_width(each, layout.text) + 6 <= pitch), "")
        if said:
            css_class = "label2" if row else "label bold"
            yield words(
                middle, base + 2 + ROW * (row + 0.8), said, size=layout.text, css_class=css_class, anchor="middle"
            )


def _limit_words(layout: Layout, panel: Panel, base: float, plot: float, unit: float) -> Iterator[Shape]:
    """The panel's name, and its limits: at their lines on the wide page, in one line on a phone."""
    named = [(panel.peak, panel.peak_text, "label stop-text")] if panel.peak is not None else []
    named.append((panel.most, panel.most_text, "label" if panel.peak is not None else "label stop-text"))
    named += [(panel.least, panel.least_text, "label good-text")] if panel.least is not None else []
    top = base - plot
    if layout is PHONE:
        yield words(layout.left, top - 9, Run(panel.name, "bold"), size=13)
        texts = [Run(f"{text}{'' if last else ', '}", css) for (_, text, css), last in _with_last(named[::-1])]
        yield words(layout.right, top - 9, *texts, size=layout.text, anchor="end")
        return
    yield words(0, base - plot / 2 + 5, Run(panel.name, "bold"), size=14)
    heights = [base - float(value) * unit for value, _, _ in named if value is not None]
    tops = spread(heights, [15.0] * len(named), top - 8, base + 12, 0)
    for y, (_, text, css_class) in zip(tops, named, strict=True):
        yield words(layout.left - 8, y + 12, text, size=layout.text, css_class=css_class, anchor="end")


def _with_last(named: Sequence[tuple[object, str, str]]) -> Iterator[tuple[tuple[object, str, str], bool]]:
    for number, each in enumerate(named, 1):
        yield each, number == len(named)


def _numbers(layout: Layout, rungs: Sequence[Rung], pitch: float, top: float) -> Iterator[Shape]:
    """The number of each rung under its step, with its name where the column is wide enough.

    Of more numbers than there is room for only every second or third is written.
    """
    every = ceil((text_width(str(len(rungs)), 14) + 2) / pitch)
    for number, rung in enumerate(rungs[: len(rungs) // every * every or 1]):
        middle = layout.left + (number + 0.5) * pitch
        if number % every == 0:
            yield words(middle, top + 14, Run(str(number + 1), "bold"), size=14, anchor="middle")
        for line, text in enumerate(_name_lines(layout, rung, pitch)):
            y = top + 30 + line * 14
            yield words(middle, y, text, size=layout.text, css_class="label2", anchor="middle")


def _name_lines(layout: Layout, rung: Rung, pitch: float) -> list[str]:
    """A rung's name in lines under its step; none where a word of it does not fit, or too many are wanted."""
    lines = wrapped(rung.name, layout.text, pitch - 8) if layout is WIDE else []
    fits = all(text_width(line, layout.text) <= pitch - 4 for line in lines)
    return lines if fits and len(lines) <= MOST_LINES else []


def _names_height(layout: Layout, rungs: Sequence[Rung], pitch: float) -> float:
    return 24 + 14 * max(len(_name_lines(layout, rung, pitch)) for rung in rungs)
