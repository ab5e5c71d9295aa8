"""A switch block as it is set: each slider drawn where it stands, ON written on its side."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from benchsheaf.drawing.lettering import text_width
from benchsheaf.drawing.picture import Both, Box, Picture, Run, Shape, Words, words
from benchsheaf.model.plugs import Switch

CAPTION = "Each filled slider is drawn where it stands. Lay the picture so that its words are where the block has them."


@dataclass(frozen=True, kw_only=True, slots=True)
class Layout:
    """Sizes of one of the two drawings, in pixels of its column."""

    css_class: str
    width: float
    way: float
    text: float


WIDE = Layout(css_class="wide", width=930, way=58, text=13.5)
PHONE = Layout(css_class="phone", width=344, way=44, text=13)
LEVEL = 26.0
SLOT = 20.0


def switch_block(part: str, ways: Sequence[Switch], stands: Sequence[str], ident: str) -> Both:
    """The two drawings of a block; `stands` is where each way stands, in their order."""
    said = ", ".join(f"{each.switch} {to}" for each, to in zip(ways, stands, strict=True))
    label = f"Switch block {part} as set: {said}. The table of ways has the same."
    wide, phone = (_picture(layout, part, ways, stands, ident, label) for layout in (WIDE, PHONE))
    return Both(wide=wide, phone=phone, caption=CAPTION)


def levels(way: Switch) -> list[str]:
    """Its positions from the upper to the lower end of the slider; ON is written at the upper one."""
    names = [each.to for each in way.positions]
    return sorted(names, key=lambda name: name.casefold() != "on")


def _picture(
    layout: Layout, part: str, ways: Sequence[Switch], stands: Sequence[str], ident: str, label: str
) -> Picture:
    alike = len({tuple(levels(each)) for each in ways}) == 1
    names = [_spoken(name) for name in levels(ways[0])] if alike else []
    left = max((text_width(name, layout.text) for name in names), default=0) + 14
    a_row = max(1, int((layout.width - left - 12) // layout.way))
    shapes: list[Shape] = []
    top = 2.0
    pairs = list(zip(ways, stands, strict=True))
    for row in (pairs[start : start + a_row] for start in range(0, len(pairs), a_row)):
        high = max(len(way.positions) for way, _ in row) * LEVEL
        shapes.append(Box(left, top, layout.way * len(row) + 8, high + 36, "outline board-body", 2))
        for place, name in enumerate(names):
            y = top + 10 + LEVEL * place + 18
            shapes.append(words(left - 8, y, Run(name, "bold"), size=layout.text, anchor="end"))
        for place, (way, to) in enumerate(row):
            shapes += _way(layout, part, way, to, left + 4 + layout.way * (place + 0.5), top + 10)
        top += high + 36 + 24
    width = left + layout.way * min(a_row, len(pairs)) + 10
    return Picture(
        view_box=(0, 0, layout.width if layout is PHONE else width, top),
        label=label,
        shapes=tuple(shapes),
        css_class=layout.css_class,
        ident=f"{ident}-{layout.css_class}",
        most_px=width if layout is WIDE else None,
    )


def _spoken(name: str) -> str:
    """A position as it is written on a block."""
    return name.upper() if name.casefold() in ("on", "off") else name


def _way(layout: Layout, part: str, way: Switch, to: str, x: float, top: float) -> Iterator[Shape]:
    """One way: its slot, its slider, its number in the block, and below the block how it stands."""
    steps = levels(way)
    place = steps.index(to)
    high = LEVEL * len(steps)
    yield Box(x - SLOT / 2, top, SLOT, high, "body", 2)
    yield Box(x - SLOT / 2 + 2.5, top + LEVEL * place + 2.5, SLOT - 5, LEVEL - 5, "slider", 1)
    number = way.switch.removeprefix(part).lstrip("-") or way.switch
    yield Words(x, top + high + 17, (Run(number),), layout.text, "label mono", "middle")
    yield Words(x, top + high + 43, (Run(to),), layout.text, "label bold", "middle")
