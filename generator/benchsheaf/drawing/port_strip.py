"""Ports in rows, like a ruler: what answers stands as a block in its place, with its name below."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise

from benchsheaf.drawing.lettering import text_width
from benchsheaf.drawing.picture import Both, Box, Hatch, Line, Picture, Run, Shape, Words, words

CAPTION = "Each row begins with the port at its left. Rows in which nothing answers are left out."
COPIES = " Hatched: copies, which answer because an address line is not decoded."
BAR = 24.0
TICK = 16
"""Ports between two marks of a row."""


@dataclass(frozen=True, kw_only=True, slots=True)
class Stretch:
    """Ports in a row that something answers at: from the first to the last number; a copy of others is hatched."""

    first: int
    last: int
    name: str
    copy: bool = False


@dataclass(frozen=True, kw_only=True, slots=True)
class Layout:
    """Sizes of one of the two drawings, in pixels of its column."""

    css_class: str
    width: float
    ports: int  # a row
    text: float
    line: float


WIDE = Layout(css_class="wide", width=930, ports=128, text=13, line=17)
PHONE = Layout(css_class="phone", width=344, ports=64, text=12.5, line=16.5)


def port_strip(stretches: Sequence[Stretch], last: int | None, digits: int, ident: str) -> Both:
    """The two drawings.

    Units: numbers of ports; `last` is the last one that there is, None where that is not known.
    """
    said = ", ".join(
        f"{each.name}{' (copy)' if each.copy else ''} P{each.first:0{digits}X} to P{each.last:0{digits}X}"
        for each in stretches
    )
    label = f"Ports: {said or 'nothing answers'}. The table of ports has the same."
    wide, phone = (_picture(layout, stretches, last, digits, ident, label) for layout in (WIDE, PHONE))
    return Both(wide=wide, phone=phone, caption=CAPTION + (COPIES if any(each.copy for each in stretches) else ""))


def rows_needed(stretches: Sequence[Stretch]) -> int:
    """How many rows the drawing for a phone would have."""
    return len(_rows_held(PHONE, stretches))


def _rows_held(layout: Layout, stretches: Sequence[Stretch]) -> list[int]:
    """The rows in which anything answers, by their number."""
    spans = [range(each.first // layout.ports, each.last // layout.ports + 1) for each in stretches]
    return sorted({row for span in spans for row in span})


def _picture(
    layout: Layout, stretches: Sequence[Stretch], last: int | None, digits: int, ident: str, label: str
) -> Picture:
    ident = f"{ident}-{layout.css_class}"
    hatch = Hatch(ident=f"{ident}-hatch", css_class="ink", every=5)
    left = text_width("P" + "0" * digits, layout.text, mono=True) + 10
    scale = (layout.width - left - 2) / layout.ports
    held = _rows_held(layout, stretches)
    shapes: list[Shape] = []
    top = 2.0
    for before, row in pairwise([-1, *held]):
        if before >= 0 and row > before + 1:
            shapes.append(words(left, top + 13, "nothing answers here", size=layout.text, css_class="label2"))
            top += 26
        own, height = _row(layout, stretches, row, (left, top, scale), digits, hatch.fill)
        shapes += own
        top += height
    if last is not None and held and last // layout.ports > held[-1]:
        rest = _rest(held[-1], last, layout, digits)
        shapes.append(words(left, top + 13, rest, size=layout.text, css_class="label2"))
        top += 22
    return Picture(
        view_box=(0, 0, layout.width, top + 2),
        label=label,
        shapes=tuple(shapes),
        css_class=layout.css_class,
        ident=ident,
        hatches=(hatch,),
    )


def _rest(row: int, last: int, layout: Layout, digits: int) -> str:
    return f"nothing from P{(row + 1) * layout.ports:0{digits}X} to P{last:0{digits}X}"


def _row(
    layout: Layout,
    stretches: Sequence[Stretch],
    row: int,
    place: tuple[float, float, float],
    digits: int,
    hatch: str,
) -> tuple[list[Shape], float]:
    """One row with its blocks and their names in as many lines as they need."""
    left, top, scale = place
    first = row * layout.ports
    shapes: list[Shape] = [
        Words(left - 8, top + BAR / 2 + 5, (Run(f"P{first:0{digits}X}"),), layout.text, "label mono", "end"),
        Box(left, top, scale * layout.ports, BAR, "outline", stroke_width=1),
    ]
    shapes += [
        Line(left + scale * at, top + BAR - 6, left + scale * at, top + BAR, "axis", 1)
        for at in range(TICK, layout.ports, TICK)
    ]
    taken: list[float] = []
    for each in reversed(stretches):
        if each.first >= first + layout.ports or each.last < first:
            continue
        start = left + scale * (max(each.first, first) - first)
        width = scale * (min(each.last, first + layout.ports - 1) - max(each.first, first) + 1)
        fill = hatch if each.copy else None
        shapes.append(Box(start, top, width, BAR, "body" if each.copy else "load-1", fill=fill))
        if each.first >= first:
            shapes += _name(layout, each.name, start, top + BAR, taken)
    return shapes, BAR + layout.line * len(taken) + 14


def _name(layout: Layout, name: str, start: float, top: float, taken: list[float]) -> Iterator[Shape]:
    """A name below its block, in the first line that has room; `taken` is from where on each line has words.

    Names come from the right, so that no thin line to a block crosses a name.
    """
    wide = text_width(name, layout.text)
    x = max(0.0, min(start + 5, layout.width - wide - 2))
    tier = next((place for place, begins in enumerate(taken) if x + wide + 12 <= begins), len(taken))
    taken[tier : tier + 1] = [x]
    y = top + layout.line * (tier + 1)
    yield Line(start + 1, top, start + 1, y, "axis", 1)
    yield words(x, y, name, size=layout.text)
