"""Which marks, plates and labels a board gets in each of its two drawings, and where the marks stand."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from benchsheaf.drawing.labels import Wish
from benchsheaf.drawing.lettering import Frame, around, hull, text_width
from benchsheaf.drawing.spots import Neighbours, Spot, ref_range
from benchsheaf.model.boards import PartRow

MEASURED_KINDS = ("test-pin", "plug")
"""Kinds that a meter is held to, so that the phone names them too."""


@dataclass(frozen=True, kw_only=True, slots=True)
class Hand:
    """How a drawing is done: sizes in its own units, which are pixels on the phone."""

    css_class: str
    widest: float
    highest: float
    text: float
    bead: float  # half the diagonal of the diamond that stands for a body
    corner: float  # half the diagonal of the diamond at a body's corner
    clear: float  # how far the ring of a chosen part stays off the body


WIDE = Hand(css_class="wide", widest=340, highest=300, text=6.6, bead=6.4, corner=4.2, clear=2)
PHONE = Hand(css_class="phone", widest=340, highest=420, text=12.5, bead=8.5, corner=7, clear=3)


@dataclass(frozen=True, slots=True)
class Plate:
    """The name of a row, written across its bodies."""

    text: str
    frame: Frame
    refs: tuple[str, ...]


Marks = dict[str, Frame]
"""The diamond of a part by its designator; of neighbours the first has it."""


def diamonds(found: Sequence[Neighbours], board: Frame, hand: Hand) -> Marks:
    """Where each diamond stands: for a body, at its corner, or at the head of a row."""
    bodies = [one.frame for together in found for one in together]
    weak = [together for together in found if together[0].is_weak]
    return {together[0].part.ref: _diamond(together, bodies, board, hand) for together in weak}


def _diamond(together: Neighbours, bodies: Sequence[Frame], board: Frame, hand: Hand) -> Frame:
    own = hull(one.inner for one in together)
    if together[0].is_bead:
        return around(*own.centre, hand.bead * 2, hand.bead * 2)
    half = hand.bead if len(together) > 1 else hand.corner
    frames = [around(*place, half * 2, half * 2) for place in _corners(own, len(together) > 1, half)]
    foreign = [body for body in bodies if not (body.holds(own) or own.holds(body))]
    free = (frame for frame in frames if board.holds(frame) and not any(frame.meets(each) for each in foreign))
    return next(free, frames[0])


def _corners(own: Frame, in_row: bool, half: float) -> Iterator[tuple[float, float]]:
    """Middles for the diamond: before the first and behind the last of a row, then the corners."""
    x, y = own.centre
    if in_row:
        off = half + 2
        lies = own.width > own.height
        yield from [(own.left - off, y), (own.right + off, y)] if lies else [(x, own.top - off), (x, own.bottom + off)]
    yield from [(own.right, own.top), (own.left, own.top), (own.right, own.bottom), (own.left, own.bottom)]


def plates(rows: Sequence[PartRow], found: Sequence[Neighbours], board: Frame, hand: Hand) -> tuple[Plate, ...]:
    """Names of rows for the phone, where there is no room for each part; a row that is weak in part gets none."""
    if hand is not PHONE:
        return ()
    spots = {one.part.ref: one for together in found for one in together}
    made: list[Plate] = []
    for row in rows:
        own = [spots[ref] for ref in row.refs]
        foreign = [one.frame for ref, one in spots.items() if ref not in row.refs]
        if len({one.is_weak for one in own}) > 1 or any(one.is_bead for one in own):
            continue
        plate = _plate(row, hull(one.frame for one in own), hand)
        if plate and board.holds(plate.frame) and not any(plate.frame.meets(each) for each in foreign):
            made.append(plate)
    return tuple(made)


def _plate(row: PartRow, own: Frame, hand: Hand) -> Plate | None:
    """The fullest name that the row is wide enough for, if any."""
    refs = ref_range(row.refs)
    last = (row.name or "").rpartition(" ")[2]
    names = [f"{row.name} {refs}", f"{last} {refs}" if len(last) <= 4 else refs, refs] if row.name else [refs]
    for name in names:
        wide = text_width(name, hand.text, mono=True) + 6
        if wide <= own.width and own.height >= hand.text * 0.6:
            return Plate(name, around(*own.centre, wide, hand.text * 1.2), row.refs)
    return None


def wishes(found: Sequence[Neighbours], marks: Marks, named: Sequence[Plate], hand: Hand) -> list[Wish]:
    """The labels in the order in which they matter: weak parts, what a meter is held to, then the rest."""
    hidden = {ref for plate in named for ref in plate.refs}
    spots = [one for together in found for one in together if one.part.ref not in hidden]
    return [_wish(one, marks.get(one.part.ref), hand) for one in sorted(spots, key=_rank)]


def _rank(one: Spot) -> int:
    if one.is_weak:
        return 0
    return 1 + MEASURED_KINDS.index(one.part.kind) if one.part.kind in MEASURED_KINDS else 3


def _wish(one: Spot, mark: Frame | None, hand: Hand) -> Wish:
    """A label; beside its body on the phone only where it matters there."""
    return Wish(
        text=one.part.ref,
        body=one.frame,
        inner=one.inner,
        size=hand.text,
        bold=one.is_weak,
        on_body=not one.is_bead and one.part.kind not in MEASURED_KINDS,
        beside=hand is not PHONE or _rank(one) < 3,
        at_end=one.part.kind == "slot",
        clear=hand.clear if one.is_bead else 0,
        mark=mark if mark and mark.meets(one.frame) else None,
    )
