"""Front and back of a machine: what the eye finds there, where it is and how large."""

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import chain

from benchsheaf.drawing.connector import WIRES
from benchsheaf.drawing.lettering import Crowd, Frame, text_width, words_frame, wrapped
from benchsheaf.drawing.picture import Both, Box, Circle, Group, Line, Picture, Run, Shape, Words
from benchsheaf.model.signals import Feature, View

LETTERED = ("badge", "plate")
"""What carries words of its own."""


@dataclass(frozen=True, kw_only=True, slots=True)
class Layout:
    """How wide one of the two drawings is shown, and the size of words in it, in pixels."""

    css_class: str
    column: float
    text: float


WIDE = Layout(css_class="wide", column=452, text=12)
PHONE = Layout(css_class="phone", column=344, text=12.5)


def view_pictures(view: View, ident: str) -> Both:
    """The two drawings of a view, in millimetres."""
    label = f"{view.name}: {'; '.join(feature_words(each) for each in view.features)}. The list below has the same."
    wide, phone = (_picture(layout, view, ident, label) for layout in (WIDE, PHONE))
    return Both(wide=wide, phone=phone)


def feature_words(feature: Feature) -> str:
    """A feature in words: what it is, how many, of what colour."""
    lettered = feature.kind in LETTERED
    more = [
        f"{feature.count} in a row" if feature.count else "",
        f"{feature.rings} rings" if feature.rings else "",
        feature.colour if feature.colour and feature.colour not in feature.name.lower() else "",
    ]
    name = f"{feature.kind} {feature.name}" if lettered else feature.name
    return ", ".join([name, *(each for each in more if each)])


def _picture(layout: Layout, view: View, ident: str, label: str) -> Picture:
    width, height = float(view.size.x_mm), float(view.size.y_mm)
    size = layout.text * width / layout.column
    edge = 2 * width / layout.column
    bodies = [room for feature in view.features for frame in _frames(feature) for room in _rooms(feature, frame)]
    crowd = Crowd(bodies)
    shapes: list[Shape] = [Box(0, 0, width, height, "outline board-body", 2, stroke_width=edge)]
    named: list[Shape] = []
    for feature in view.features:
        shapes.append(Group(tuple(_drawn(feature, size)), title=feature_words(feature)))
        named += _label(feature, size, Frame(0, 0, width, height), crowd)
    return Picture(
        view_box=(-edge, -edge, width + 2 * edge, height + 2 * edge),
        label=label,
        shapes=(*shapes, *named),
        css_class=layout.css_class,
        ident=f"{ident}-{layout.css_class}",
    )


def _frames(feature: Feature) -> list[Frame]:
    """The bodies of a feature, one for each of a row."""
    left, top = float(feature.at.x_mm), float(feature.at.y_mm)
    width, height = float(feature.body.x_mm), float(feature.body.y_mm)
    step = (float(feature.step.x_mm), float(feature.step.y_mm)) if feature.step else (0.0, 0.0)
    corners = ((left + step[0] * k, top + step[1] * k) for k in range(feature.count or 1))
    return [Frame(x, y, x + width, y + height) for x, y in corners]


def _rooms(feature: Feature, frame: Frame) -> tuple[Frame, ...]:
    """What words may not cover: of a round grille a cross, whose corners are free."""
    if not feature.rings:
        return (frame,)
    aside = 0.15 * frame.width
    return (
        Frame(frame.left, frame.top + aside, frame.right, frame.bottom - aside),
        Frame(frame.left + aside, frame.top, frame.right - aside, frame.bottom),
    )


def _drawn(feature: Feature, size: float) -> Iterator[Shape]:
    return chain.from_iterable(_body(feature, frame, size) for frame in _frames(feature))


def _body(feature: Feature, frame: Frame, size: float) -> Iterator[Shape]:
    """One body: a lamp is filled, a grille has its rings, a slot its gap, what is lettered its words."""
    x, y = frame.centre
    fill = WIRES.get(feature.colour or "")
    if feature.kind == "lamp":
        yield Circle(x, y, frame.width / 2, "lamp" if fill else "outline", fill, None if fill else 1.3)
    elif feature.kind == "grille" and feature.rings:
        for ring in range(1, feature.rings + 1):
            yield Circle(x, y, frame.width / 2 * ring / feature.rings, "outline", stroke_width=1.2)
    elif _is_round(frame) and feature.kind in ("socket", "button"):
        yield Circle(x, y, frame.width / 2, "outline", fill, 1.4)
    else:
        yield Box(frame.left, frame.top, frame.width, frame.height, "outline chip", 1, fill, 1.4)
        if feature.kind == "slot":
            yield Line(frame.left + 3, y, frame.right - 3, y, "outline", max(frame.height / 3, 1))
        if feature.kind in LETTERED:
            yield from _lettered(feature.name, frame, size)


def _is_round(frame: Frame) -> bool:
    return abs(frame.width - frame.height) <= 0.1 * frame.width


def _lettered(text: str, frame: Frame, size: float) -> Iterator[Shape]:
    """The words of a badge or a plate in the middle of it, where there is room for all of them."""
    lines = wrapped(text, size, frame.width - 4)
    high = size * 1.1 * len(lines)
    if high <= frame.height and all(text_width(each, size) <= frame.width - 2 for each in lines):
        x, y = frame.centre
        for number, each in enumerate(lines):
            yield Words(x, y - high / 2 + size * (0.9 + 1.1 * number), (Run(each),), size, "label", "middle")


def _label(feature: Feature, size: float, within: Frame, crowd: Crowd) -> Iterator[Shape]:
    """The name beside a feature: below, above, right or left of it, where it hides nothing; else only in the list."""
    frames = _frames(feature)
    if feature.kind in LETTERED and list(_lettered(feature.name, frames[0], size)):
        return
    whole = Frame(frames[0].left, frames[0].top, frames[-1].right, frames[-1].bottom)
    x, y = whole.centre
    text = feature.name if not feature.count else f"{feature.count} × {feature.name.lower()}"
    half = text_width(text, size) / 2 + size * 0.3
    x = min(max(x, within.left + half), within.right - half)
    places = (
        (x, whole.bottom + size * 1.1, "middle"),
        (x, whole.top - size * 0.4, "middle"),
        (whole.right + size * 0.4, y + size * 0.35, "start"),
        (whole.left - size * 0.4, y + size * 0.35, "end"),
    )
    for left, base, anchor in places:
        line = Words(left, base, (Run(text),), size, "label", anchor)
        room = words_frame(line)
        if within.holds(room) and not any(crowd.met(room)):
            crowd.add(room)
            yield line
            return
