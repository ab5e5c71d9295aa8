"""A board from above: parts where they sit, the weak ones marked, each linked to its row in the list."""

from collections.abc import Mapping, Sequence
from dataclasses import replace

from benchsheaf.drawing.labels import placed
from benchsheaf.drawing.lettering import Crowd, Frame, base_line, text_width
from benchsheaf.drawing.marking import PHONE, WIDE, Hand, Plate, diamonds, plates, wishes
from benchsheaf.drawing.picture import Both, Box, Circle, Group, Hatch, Line, Picture, Run, Shape, Words, words
from benchsheaf.drawing.spots import NOTCHED_KINDS, Neighbours, Spot, body, diamond, neighbours
from benchsheaf.model.boards import Extent, Part, PartRow
from benchsheaf.quantities import printed


def board_pictures(
    size: Extent,
    parts: Sequence[Part],
    rows: Sequence[PartRow],
    weak: Mapping[str, str],
    ident: str,
    links: Mapping[str, str],
    back: str = "back edge",
    seen: str = "seen from above",
) -> Both:
    """The two drawings of a board.

    `weak` gives for a designator the id of its row in the list, `links` the address of that row; `back` names the edge
    that y is counted from. A board is drawn 340 units wide, one that is higher than wide to a greatest height.
    Units: millimetres in.
    """
    label = _label(size, parts, rows, weak, seen)
    wide, phone = (
        _picture(hand, size, neighbours(parts, rows, _scale(hand, size), weak, links), rows, ident, label, (back, seen))
        for hand in (WIDE, PHONE)
    )
    return Both(wide=wide, phone=phone, caption=_caption(parts, rows, weak))


def led_elsewhere(both: Both, links: Mapping[str, str]) -> Both:
    """The same drawings for another page: `links` gives for the row of a part the address that its link leads to."""

    def led(picture: Picture) -> Picture:
        shapes = (
            shape._replace(href=links.get(shape.part or "", shape.href)) if isinstance(shape, Group) else shape
            for shape in picture.shapes
        )
        return replace(picture, shapes=tuple(shapes))

    return replace(both, wide=led(both.wide), phone=led(both.phone))


def _scale(hand: Hand, size: Extent) -> float:
    return min(hand.widest / float(size.x_mm), hand.highest / float(size.y_mm))


def _label(size: Extent, parts: Sequence[Part], rows: Sequence[PartRow], weak: Mapping[str, str], seen: str) -> str:
    every = [part.ref for part in parts] + [ref for row in rows for ref in row.refs]
    marked = ", ".join(ref for ref in every if ref in weak) or "none"
    extent = f"{printed(size.x_mm, 'mm')} by {printed(size.y_mm, 'mm')}"
    drawn = f"parts drawn: {len(every)}; marked as weak: {marked}"
    return f"{extent}, {seen or 'from one side'}; {drawn}. The lists of parts say the same in words."


def _caption(parts: Sequence[Part], rows: Sequence[PartRow], weak: Mapping[str, str]) -> str:
    said = "A plain outline is a part with no record against it."
    if any(ref in weak for ref in [*(part.ref for part in parts), *(ref for row in rows for ref in row.refs)]):
        said = "A diamond and a hatched body mark a weak part; a plain outline is a part with no record against it."
    if ({each.kind for each in parts} | {row.kind for row in rows}) & set(NOTCHED_KINDS):
        said += " The notch tells a chip, not which way round it sits: look for contact 1 on the board."
    return said


def _picture(
    hand: Hand,
    size: Extent,
    found: tuple[Neighbours, ...],
    rows: Sequence[PartRow],
    ident: str,
    label: str,
    edges: tuple[str, str],
) -> Picture:
    scale = _scale(hand, size)
    board = Frame(0, 0, float(size.x_mm) * scale, float(size.y_mm) * scale)
    ident = f"{ident}-{hand.css_class}"
    hatch = Hatch(ident=f"{ident}-hatch", css_class="weak")
    outline = Box(0, 0, board.width, board.height, "outline board-body", 2)
    return Picture(
        view_box=_view_box(hand, board),
        label=label,
        shapes=(outline, *_inside(hand, board, found, rows, hatch.fill), *_edges(hand, size, board, *edges)),
        css_class=hand.css_class,
        ident=ident,
        hatches=(hatch,),
    )


def _inside(
    hand: Hand, board: Frame, found: tuple[Neighbours, ...], rows: Sequence[PartRow], hatch: str
) -> tuple[Shape, ...]:
    """Bodies with their marks, names of rows, designators."""
    marks = diamonds(found, board, hand)
    named = plates(rows, found, board, hand)
    spots = [one for together in found for one in together]
    covered = [*(plate.frame for plate in named), *marks.values()]
    labels = placed(wishes(found, marks, named, hand), [one.frame for one in spots], covered, board.grown(-1.5))
    return (
        *(_part(one, marks.get(one.part.ref), hatch, hand) for one in _stacked(spots)),
        *(shape for plate in named for shape in _plate(plate, hand)),
        *labels,
    )


def _stacked(spots: Sequence[Spot]) -> list[Spot]:
    """In the order of the file, in which a keyboard goes through them, but what lies on another after it."""
    crowd = Crowd(one.frame for one in spots)

    def depth(one: Spot) -> int:
        return len({other for other in crowd.met(one.frame) if other.holds(one.frame)})

    return sorted(spots, key=depth)


def _view_box(hand: Hand, board: Frame) -> tuple[float, float, float, float]:
    if hand is PHONE:
        return -2, -16, 344, board.height + 34
    return -1.5, -10, hand.widest + 16, board.height + 25


def _part(one: Spot, mark: Frame | None, hatch: str, hand: Hand) -> Group:
    """The shapes of a part, its mark, and the ring that is shown when it is chosen."""
    shapes: list[Shape] = [] if one.is_bead else list(body(one, hatch))
    if mark:
        shapes.append(diamond(*mark.centre, mark.width / 2))
    if one.anchor:
        shapes.append(_ring(one, mark, hand))
    return Group(shapes=tuple(shapes), css_class="part", part=one.anchor, href=one.href, title=one.title)


def _ring(one: Spot, mark: Frame | None, hand: Hand) -> Shape:
    if one.is_bead and mark:
        return Circle(*mark.centre, mark.width / 2 + hand.clear, "ring")
    frame = one.frame.grown(hand.clear)
    if one.is_round:
        return Circle(*frame.centre, frame.width / 2, "ring")
    return Box(frame.left, frame.top, frame.width, frame.height, "ring", hand.clear * 2)


def _plate(plate: Plate, hand: Hand) -> tuple[Shape, ...]:
    frame = plate.frame
    x, y = frame.centre
    written = Words(x, base_line(y, hand.text), (Run(plate.text),), hand.text, "label mono", "middle")
    return Box(frame.left, frame.top, frame.width, frame.height, "chip", 1), written


def _edges(hand: Hand, size: Extent, board: Frame, back: str, seen: str) -> tuple[Shape, ...]:
    """What stands around a board: how it lies, from where it is seen, how large it is."""
    above: tuple[Shape, ...] = (
        words(0, -4, back, size=hand.text),
        words(board.right, -4, seen, size=hand.text, anchor="end"),
    )
    if text_width(back + seen, hand.text) + 6 > board.width:
        above = (words(0, -4, f"{back}, {seen}", size=hand.text),)
    if hand is PHONE:
        extent = f"{size.x_mm:f} × {printed(size.y_mm, 'mm')}"
        return *above, words(board.right, board.bottom + 14, extent, size=hand.text, anchor="end")
    x, y = board.centre
    below, beside = board.bottom + 9, board.right + 9
    across, down = printed(size.x_mm, "mm"), printed(size.y_mm, "mm")
    turned = Words(beside + 2.4, y, (Run(down),), hand.text, "label", "middle", turned=True)
    lines = _dimension(0, board.right, text_width(across, hand.text))
    uprights = _dimension(0, board.bottom, text_width(down, hand.text))
    return (
        *above,
        *(Line(start, below, end, below, "axis", 0.7) for start, end in lines),
        *(Line(end, below - 2.5, end, below + 2.5, "axis", 0.7) for end in (0, board.right)),
        words(x, below + 2.4, across, size=hand.text, anchor="middle"),
        *(Line(beside, start, beside, end, "axis", 0.7) for start, end in uprights),
        *(Line(beside - 2.5, end, beside + 2.5, end, "axis", 0.7) for end in (0, board.bottom)),
        turned,
    )


def _dimension(start: float, end: float, words_width: float) -> tuple[tuple[float, float], ...]:
    """The two halves of a dimension line with its words between; none where the words fill it."""
    half = (end - start - words_width) / 2 - 3
    return ((start, start + half), (end - half, end)) if half > 2 else ()
