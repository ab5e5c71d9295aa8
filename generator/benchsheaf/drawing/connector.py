"""A plug contact by contact: its number, the colour of its wire, and the word for what is on it."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from benchsheaf.drawing.lettering import CAP_HEIGHT, Frame, around, text_width
from benchsheaf.drawing.picture import Both, Box, Picture, Run, Shape, Words, words
from benchsheaf.drawing.told import rail_name
from benchsheaf.model.boards import Pin
from benchsheaf.model.plugs import ContactRow

WIRES: Mapping[str, str] = {
    "black": "#1C1C1C",
    "brown": "#7A4A22",
    "red": "#C8202C",
    "orange": "#E97818",
    "yellow": "#F2D02C",
    "green": "#2E8B3D",
    "blue": "#2456C4",
    "violet": "#7D3FA8",
    "grey": "#8D8D8D",
    "white": "#FFFFFF",
    "pink": "#F29AB4",
    "turquoise": "#2FB5B0",
}
"""What the insulation looks like: content, not decoration, so it is the same on paper and on a dark screen."""

CAPTION = "A dashed frame without a number is the key: there is no contact, so that the plug fits one way only."


@dataclass(frozen=True, kw_only=True, slots=True)
class Layout:
    """Sizes of one of the two drawings, in pixels of its column."""

    css_class: str
    width: float
    widest: float  # how wide a contact may become
    narrowest: float
    text: float


WIDE = Layout(css_class="wide", width=930, widest=76, narrowest=22, text=13)
PHONE = Layout(css_class="phone", width=344, widest=76, narrowest=30, text=12.5)
WIRE = 20.0


def connector(rows: Sequence[ContactRow], seen: str, ident: str) -> Both:
    """The two drawings of a plug; where contacts would be too narrow side by side they stand below each other.

    `seen` says from which side, and where the first contact is.
    """
    said = "; ".join(f"{pin.pin} {_spoken(pin)}" for row in rows for pin in row.pins)
    label = f"Contacts, seen {seen}: {said or 'none described'}. The table of contacts has the same."
    wide, phone = (_picture(layout, rows, seen, ident, label) for layout in (WIDE, PHONE))
    return Both(wide=wide, phone=phone, caption=CAPTION if any(pin.key for row in rows for pin in row.pins) else "")


def _word(pin: Pin) -> str:
    return rail_name(pin.rail) if pin.rail else pin.signal or ("key" if pin.key else "")


def _spoken(pin: Pin) -> str:
    return f"{_word(pin)}, {pin.colour}" if pin.colour else _word(pin)


def _picture(layout: Layout, rows: Sequence[ContactRow], seen: str, ident: str, label: str) -> Picture:
    most = max((len(row.pins) for row in rows), default=0)
    cell = min(layout.widest, (layout.width - 2) / max(most, 1))
    shapes: list[Shape] = [words(1, 14, f"seen {seen}", size=layout.text, css_class="label2")]
    if cell >= layout.narrowest:
        own, width, height = _side_by_side(layout, rows, cell)
    else:
        own, width, height = _below_each_other(layout, rows)
    width = max(width, text_width(f"seen {seen}", layout.text) + 2)
    return Picture(
        view_box=(0, 0, layout.width if layout is PHONE else min(width, layout.width), height),
        label=label,
        shapes=(*shapes, *own),
        css_class=layout.css_class,
        ident=f"{ident}-{layout.css_class}",
        most_px=min(width, layout.width) if layout is WIDE else None,
    )


def _side_by_side(layout: Layout, rows: Sequence[ContactRow], cell: float) -> tuple[list[Shape], float, float]:
    """Each row of contacts from left to right, with its words below."""
    shapes: list[Shape] = []
    top, width = 26.0, 0.0
    for row in rows:
        if not row.pins:
            continue
        longest = max(text_width(each, layout.text) for pin in row.pins for each in (_word(pin), pin.colour or ""))
        side = min(cell - 4, 26)
        number = max((text_width(pin.pin, layout.text, mono=True) for pin in row.pins if not pin.key), default=0)
        upright = number > side
        high = number + 6 if upright else 22
        wired = any(pin.colour for pin in row.pins)
        body = high + 8
        lower = top + body + (WIRE if wired else 0) + 6
        shapes.append(Box(1, top, cell * len(row.pins), body, "outline board-body", 2))
        for place, pin in enumerate(row.pins):
            x = 1 + (place + 0.5) * cell
            shapes += _contact(layout, pin, around(x, top + body / 2, side, high), upright)
            swatch = WIRES.get(pin.colour or "")
            if swatch:
                shapes.append(Box(x - 5, top + body, 10, WIRE, "lamp", fill=swatch))
            shapes += _said(layout, pin, x, lower, turned=longest > cell - 8)
        top = lower + (longest + 16 if longest > cell - 8 else 44 if wired else 26)
        width = max(width, cell * len(row.pins) + 2)
    return shapes, width, top


def _contact(layout: Layout, pin: Pin, frame: Frame, upright: bool) -> Iterator[Shape]:
    """The contact with its number; the key is an empty frame."""
    css_class, stroke = ("outline dash", 1) if pin.key else ("body", None)
    yield Box(frame.left, frame.top, frame.width, frame.height, css_class, 1, stroke_width=stroke)
    if not pin.key:
        x, y = frame.centre
        rise = layout.text * CAP_HEIGHT / 2
        base = (x + rise, y) if upright else (x, y + rise)
        yield Words(*base, (Run(pin.pin),), layout.text, "label mono", "middle", upright)


def _said(layout: Layout, pin: Pin, x: float, top: float, turned: bool) -> Iterator[Shape]:
    """What is on a contact and the colour of its wire, in words."""
    strong = "label bold" if pin.rail else "label"
    if turned:
        for text, css_class, off in ((_word(pin), strong, -1 if pin.colour else 5), (pin.colour, "label2", 14)):
            if text:
                yield Words(x + off, top + 4, (Run(text),), layout.text, css_class, "end", turned=True)
        return
    yield Words(x, top + 13, (Run(_word(pin)),), layout.text, strong, "middle")
    if pin.colour:
        yield Words(x, top + 30, (Run(pin.colour),), layout.text, "label2", "middle")


def _below_each_other(layout: Layout, rows: Sequence[ContactRow]) -> tuple[list[Shape], float, float]:
    """Each row of contacts from top to bottom, with its words on the right."""
    shapes: list[Shape] = []
    step, side, top = 26.0, 38.0, 26.0
    column = (layout.width - 2) / max(len(rows), 1)
    for number, row in enumerate(rows):
        left = 1 + number * column
        shapes.append(Box(left, top, side + 4, step * len(row.pins), "outline board-body", 2))
        for place, pin in enumerate(row.pins):
            y = top + step * (place + 0.5)
            shapes += _contact(layout, pin, around(left + side / 2 + 2, y, side - 2, 22), upright=False)
            x = left + side + 10
            swatch = WIRES.get(pin.colour or "")
            if swatch:
                shapes.append(Box(left + side + 4, y - 5, 18, 10, "lamp", fill=swatch))
                x += 18
            strong = Run(_word(pin), "bold" if pin.rail else "")
            more = (Run(f", {pin.colour}", "label2"),) if pin.colour else ()
            shapes.append(words(x, y + 4.5, strong, *more, size=layout.text))
    most = max((len(row.pins) for row in rows), default=0)
    return shapes, layout.width, top + step * most + 6
