"""Where designators may stand: on their own body, else close beside it, never over another label, body or mark."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import NamedTuple

from benchsheaf.drawing.lettering import CAP_HEIGHT, Crowd, Frame, around, base_line, hull, text_width
from benchsheaf.drawing.picture import Run, Words

MARGIN = 1.0
AIR = 0.7
"""How far a label stays off what it must not cover."""
LINE = 0.95
"""Height that a line of designators needs, by its size; they are capitals and figures only."""


@dataclass(frozen=True, kw_only=True, slots=True)
class Wish:
    """A label that wants a place: at a body, whose corner a mark may cover, and how much it matters."""

    text: str
    body: Frame
    inner: Frame  # the part of the body that words may cover
    size: float
    bold: bool = False
    on_body: bool = True
    beside: bool = True
    at_end: bool = False  # at the lower or right end of the body, where its middle line leaves room
    clear: float = 0  # how much room a ring round the body wants
    mark: Frame | None = None


class Place(NamedTuple):
    """A frame in which a label may stand."""

    frame: Frame
    turned: bool
    on_body: bool


def placed(wishes: Sequence[Wish], bodies: Sequence[Frame], marks: Sequence[Frame], board: Frame) -> list[Words]:
    """The labels that find a place, those that stand on their own body first, then by the order of the wishes.

    `bodies` and `marks` are all frames of the picture, the wishes' own among them. What finds no place is left out.
    """
    taken: dict[int, Place] = {}
    crowd, solid = Crowd(bodies), Crowd(marks)
    for on_body in (True, False):
        for index, wish in enumerate(wishes):
            if index in taken:
                continue
            for place in _on_body(wish) if on_body else _beside(wish):
                if board.holds(place.frame) and _is_free(place.frame.grown(AIR), wish.body, crowd, solid):
                    taken[index] = place
                    solid.add(place.frame)
                    break
    return [_written(wishes[index], taken[index]) for index in sorted(taken)]


def _is_free(frame: Frame, own: Frame, crowd: Crowd, solid: Crowd) -> bool:
    """Whether a label there covers no mark or label, and no body but those that its own lies on."""
    return not any(solid.met(frame)) and all(body.holds(own) for body in crowd.met(frame))


def _on_body(wish: Wish) -> Iterator[Place]:
    """Places within the body: the middle, then a lattice over the rest; turned where it fits only so."""
    if not wish.on_body:
        return
    wide, high = text_width(wish.text, wish.size, mono=True), wish.size * LINE
    body = wish.inner
    for turned, width, height in ((False, wide, high), (True, high, wide)):
        spare_x, spare_y = body.width - width, body.height - height
        if spare_x < (0 if turned else MARGIN) or spare_y < (MARGIN if turned else 0):
            continue
        shares = (0.5, 0.1, 0.9, 0.3, 0.7)
        end = 1 - 3 / max(spare_x, spare_y, 3)
        for down in (end,) if wish.at_end and spare_y > spare_x else shares:
            for across in (end,) if wish.at_end and spare_x >= spare_y else shares:
                x = body.left + width / 2 + spare_x * across
                y = body.top + height / 2 + spare_y * down
                yield Place(around(x, y, width, height), turned, True)


def _beside(wish: Wish) -> Iterator[Place]:
    """Places around the body with its mark: below, above, right, left; then further off, then turned."""
    if not wish.beside:
        return
    wide, high = text_width(wish.text, wish.size, mono=True), wish.size * LINE
    own = hull((wish.body.grown(wish.clear), wish.mark.grown(wish.clear) if wish.mark else wish.body))
    for turned, width, height in ((False, wide, high), (True, high, wide)):
        for off in (MARGIN, 3 * MARGIN, 6 * MARGIN):
            for x, y in _round(own, width, height, off):
                yield Place(around(x, y, width, height), turned, False)


def _round(own: Frame, width: float, height: float, off: float) -> Iterator[tuple[float, float]]:
    """Middles of a label of a size on each side of a frame: centred first, then shifted along the side."""
    x, y = own.centre
    right, left = own.right + off + width / 2, own.left - off - width / 2
    above, below = own.top - off - height / 2, own.bottom + off + height / 2
    slide_x, slide_y = (own.width + width) / 2, (own.height + height) / 2
    for share in (0.0, 0.5, -0.5, 0.9, -0.9):
        yield x + slide_x * share, below
        yield x + slide_x * share, above
        yield right, y + slide_y * share
        yield left, y + slide_y * share


def _written(wish: Wish, place: Place) -> Words:
    x, y = place.frame.centre
    css_class = "label mono" + (" bold" if wish.bold else "") + (" halo" if place.on_body else "")
    if place.turned:
        return Words(x + wish.size * CAP_HEIGHT / 2, y, (Run(wish.text),), wish.size, css_class, "middle", turned=True)
    return Words(x, base_line(y, wish.size), (Run(wish.text),), wish.size, css_class, "middle")
