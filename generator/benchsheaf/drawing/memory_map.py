"""The memory map as a column: addresses left, what answers in its place, gaps cut short, double claims hatched."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from benchsheaf.compute.memory_map import AreaFigures, MapFigures
from benchsheaf.drawing.lettering import Frame, text_width, wrapped
from benchsheaf.drawing.map_sections import Lane, Section, lanes, sections
from benchsheaf.drawing.picture import Both, Box, Hatch, Path, Picture, Run, Shape, Steps, Words, words
from benchsheaf.drawing.spots import diamond
from benchsheaf.quantities import printed_binary

CAPTION = (
    "From the first address down to the last. Large areas are to one scale, small ones are drawn higher so that they "
    "can be read, and empty stretches are cut short."
)
OVERLAPPED = " Hatched, with a diamond: addresses that two claim, or that the machine does not have."
TALLEST = 92.0
GAP = 32.0


@dataclass(frozen=True, kw_only=True, slots=True)
class Layout:
    """Where things stand in one of the two drawings, in pixels of its column."""

    css_class: str
    width: float
    text: float
    line: float

    def left(self, digits: int) -> float:
        """Where the column begins, behind addresses of so many digits."""
        return text_width("0" * digits, self.text, mono=True) + 12


WIDE = Layout(css_class="wide", width=620, text=13, line=17)
PHONE = Layout(css_class="phone", width=344, text=12.5, line=16.5)


@dataclass(frozen=True, kw_only=True, slots=True)
class Plan:
    """Everything with its place."""

    layout: Layout
    digits: int
    column: Frame
    stretches: tuple[tuple[Section, Frame], ...]
    areas: tuple[tuple[AreaFigures, Frame], ...]
    figures: MapFigures


def memory_map(figures: MapFigures, ident: str) -> Both:
    """The two drawings of a map.

    Units: addresses as hexadecimal text, sizes in bytes.
    """
    wrong = bool(figures.overlaps or figures.beyond)
    named = ", ".join(f"{area.name} {area.first} to {area.last}" for area in figures.areas) or "nothing answers"
    claims = "".join(
        f"; {each.one} and {each.other} both claim {each.first} to {each.last}" for each in figures.overlaps
    )
    beyond = f"; beyond the last address: {', '.join(figures.beyond)}" if figures.beyond else ""
    label = f"Memory map up to {figures.last}: {named}{claims}{beyond}. The table of areas has the same."
    wide, phone = (_picture(layout, figures, ident, label) for layout in (WIDE, PHONE))
    return Both(wide=wide, phone=phone, caption=CAPTION + (OVERLAPPED if wrong else ""))


def _picture(layout: Layout, figures: MapFigures, ident: str, label: str) -> Picture:
    ident = f"{ident}-{layout.css_class}"
    hatch = Hatch(ident=f"{ident}-hatch", css_class="weak", every=6, line_width=1.2)
    plan = _plan(layout, figures)
    shapes: list[Shape] = []
    for _, frame in plan.areas:
        shapes.append(Box(frame.left, frame.top, frame.width, frame.height, "body", 1))
    for section, frame in plan.stretches:
        shapes += _stretch(plan, section, frame, hatch.fill)
    for area, frame in plan.areas:
        shapes += _named(layout, area, frame)
    return Picture(
        view_box=(0, 0, layout.width, plan.column.bottom + 4),
        label=label,
        shapes=tuple(shapes),
        css_class=layout.css_class,
        ident=ident,
        hatches=(hatch,),
        most_px=layout.width if layout is WIDE else None,
    )


def _plan(layout: Layout, figures: MapFigures) -> Plan:
    cut = sections(figures)
    columns = lanes(figures.areas)
    digits = max([len(figures.last), *(len(area.last) for area in figures.areas)])
    left, right = layout.left(digits), layout.width - 8
    largest = max((section.size for section in cut if section.holders), default=1)
    top = 2.0
    stretches = []
    for section in cut:
        height = _height(layout, section, figures, columns, right - left, largest)
        stretches.append((section, Frame(left, top, right, top + height)))
        top += height
    areas = []
    for number, area in enumerate(figures.areas):
        own = [frame for section, frame in stretches if number in section.holders]
        lane = columns[number]
        each = (right - left) / lane.columns
        x = left + each * lane.column
        areas.append((area, Frame(x, own[0].top, x + each, own[-1].bottom)))
    return Plan(
        layout=layout,
        digits=digits,
        column=Frame(left, 2, right, top),
        stretches=tuple(stretches),
        areas=tuple(areas),
        figures=figures,
    )


def _height(
    layout: Layout, section: Section, figures: MapFigures, columns: Sequence[Lane], width: float, largest: int
) -> float:
    """To scale, but high enough for the names that begin there and for what is wrong."""
    if not section.holders:
        return GAP
    starting = [
        len(_lines(layout, figures.areas[number], width / columns[number].columns))
        for number in section.holders
        if int(figures.areas[number].first, 16) == section.first
    ]
    wanted = max(max(starting, default=0) * layout.line + 10, 2 * layout.line)
    if section.is_wrong:
        wanted += len(_wrong(layout, section, figures, width)) * layout.line + 14
    return max(wanted, TALLEST * section.size / largest)


def _lines(layout: Layout, area: AreaFigures, width: float) -> list[str]:
    """The name, and the size behind it or below."""
    size = printed_binary(area.size_bytes)
    lines = wrapped(area.name, layout.text, width - 18)
    if text_width(f"{lines[-1]}    {size}", layout.text) > width - 18:
        lines.append("")
    return lines


def _named(layout: Layout, area: AreaFigures, frame: Frame) -> Iterator[Shape]:
    """Name and size of an area at its upper edge, on a ground of their own; left out where they are wider than it."""
    lines = _lines(layout, area, frame.width)
    if max(text_width(line, layout.text) for line in lines) > frame.width - 12:
        return
    ground = len(lines) * layout.line + 4
    yield Box(frame.left + 2, frame.top + 2, frame.width - 4, min(ground, frame.height - 4), "chip")
    for number, line in enumerate(lines):
        y = frame.top + 16 + number * layout.line
        if line:
            yield words(frame.left + 9, y, Run(line, "bold"), size=layout.text)
        if number == len(lines) - 1:
            size = printed_binary(area.size_bytes)
            yield words(frame.right - 9, y, size, size=layout.text, css_class="label2", anchor="end")


def _stretch(plan: Plan, section: Section, frame: Frame, hatch: str) -> Iterator[Shape]:
    """The addresses of a stretch, and how it is drawn where it is empty or wrong."""
    layout = plan.layout
    edge = frame.left - 8
    for address, y in ((section.first, frame.top + 13), (section.last, frame.bottom - 4)):
        if section.holders:
            text = f"{address:0{plan.digits}X}"
            yield Words(edge, y, (Run(text),), layout.text, "label mono", "end")
    if not section.holders:
        yield from _gap(layout, section, frame)
    if section.is_wrong:
        yield Box(frame.left, frame.top, frame.width, frame.height, "weak-line", fill=hatch)
        lines = _wrong(layout, section, plan.figures, frame.width)
        top = frame.bottom - 6 - len(lines) * layout.line
        yield Box(frame.left + 6, top - 3, frame.width - 12, len(lines) * layout.line + 5, "chip")
        for number, line in enumerate(lines):
            y = top + 12 + number * layout.line
            yield words(frame.left + 12, y, line, size=layout.text, css_class="label weak-text")
        yield diamond(frame.right, frame.top, 7)


def _wrong(layout: Layout, section: Section, figures: MapFigures, width: float) -> list[str]:
    """What is wrong with a stretch, in lines."""
    if section.is_beyond:
        said = f"beyond the last address, {figures.last}"
    else:
        *named, last = (figures.areas[number].name for number in section.holders)
        said = f"{_size(section.size)} claimed by {', '.join(named)} and {last}"
    return wrapped(said, layout.text, width - 26)


def _gap(layout: Layout, section: Section, frame: Frame) -> Iterator[Shape]:
    """An empty stretch: both edges broken, its size in words."""
    x, y = frame.centre
    for edge in (frame.left, frame.right):
        steps: Steps = (
            ("M", (edge, frame.top)),
            ("V", (y - 6,)),
            ("L", (edge + 5, y - 2)),
            ("L", (edge - 5, y + 2)),
            ("L", (edge, y + 6)),
            ("V", (frame.bottom,)),
        )
        yield Path(steps, "gap axis", 1.2)
    text = f"empty, {_size(section.size)}"
    yield words(x, y + 4.5, text, size=layout.text, css_class="label2", anchor="middle")


def _size(size_bytes: int) -> str:
    """A size in full, or about, where it would have more than two places."""
    full = printed_binary(size_bytes)
    places = full.partition(".")[2].partition("\u00a0")[0]
    return full if len(places) <= 2 else f"about {printed_binary(size_bytes, places=1)}"
