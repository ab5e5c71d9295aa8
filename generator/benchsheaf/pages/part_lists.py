"""Lists and tables of parts: what each is, how it fails, and the picture they lie in."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from functools import partial

from benchsheaf.compute.capacitors import StressFigures
from benchsheaf.drawing.board import board_pictures, led_elsewhere
from benchsheaf.drawing.picture import Both
from benchsheaf.markup import Markup
from benchsheaf.model.boards import Extent, Part, PartRow, WeakPart
from benchsheaf.model.cards import Card
from benchsheaf.model.drives import Drive, DrivePart
from benchsheaf.model.supply import Supply
from benchsheaf.pages.printing import quantity
from benchsheaf.pages.shelf import Desk, Holding


@dataclass(frozen=True, kw_only=True, slots=True)
class WeakView:
    """A weak part as its list row says it; `lights` are the designators that light up with it."""

    anchor: str
    names: tuple[Markup, ...]
    what: Markup
    weak: WeakPart
    stress: StressFigures | None
    lights: tuple[str, ...]
    signs: Markup
    stop: Markup
    do: Markup
    fit: str
    fit_note: Markup


@dataclass(frozen=True, kw_only=True, slots=True)
class RefView:
    """A designator and the place that links to it lead to."""

    ref: str
    anchor: str


@dataclass(frozen=True, kw_only=True, slots=True)
class PartView:
    """A part, or a row of like parts, as the table of all parts says it."""

    refs: tuple[RefView, ...]
    words: Markup
    rail: str | None
    weak: bool


def weak_views(
    desk: Desk,
    weak_parts: Iterable[WeakPart],
    parts: Mapping[str, Part] | Mapping[str, DrivePart],
    stress: Iterable[StressFigures],
    prefix: str = "",
    *,
    own: bool = False,
) -> list[WeakView]:
    """List rows for weak parts of one holder.

    `prefix` is `SLUG/` for what is held, and nothing for the machine itself. `own` rows stand beside the picture in
    which their parts lie, so they take the designator itself as their anchor.
    """
    by_ref = {each.ref: each for each in stress}
    slug = prefix.rstrip("/")
    told = partial(desk.told, of=(desk.kind_of(slug), slug) if slug else None)
    views: list[WeakView] = []
    listed = list(weak_parts)
    for weak, anchor in zip(listed, weak_anchors(listed, prefix, own=own), strict=True):
        first = weak.parts[0] if weak.parts else ""
        part = parts.get(first)
        what = weak.what or (part.name if isinstance(part, DrivePart) else part_words(part) if part else "")
        views.append(
            WeakView(
                anchor=anchor,
                names=tuple(
                    desk.part(name if "/" in name else prefix + name, brief=bool(prefix)) for name in weak.parts
                ),
                what=told(what, at=first),
                weak=weak,
                stress=by_ref.get(prefix + first),
                lights=weak.parts if own else (),
                signs=told(weak.signs, at=first),
                stop=told(weak.stop or "", at=first),
                do=told(weak.do or "", at=first),
                fit=_fit_words(weak),
                fit_note=told(weak.fit.note or "", at=first) if weak.fit else Markup(""),
            )
        )
    return views


def weak_anchors(weak_parts: Iterable[WeakPart], prefix: str = "", *, own: bool = False) -> list[str]:
    """The place of each list row: the designator itself where `own` rows stand beside their picture and it is free."""
    anchors: list[str] = []
    for weak in weak_parts:
        first = weak.parts[0] if weak.parts else ""
        free = own and first and first not in anchors
        anchors.append(first if free else f"weak-{prefix.replace('/', '-')}{weak.id}")
    return anchors


def is_drawn(thing: Holding) -> bool:
    """Whether enough is known to draw where its parts lie."""
    if isinstance(thing, Drive):
        return thing.body is not None and any(part.at for part in thing.parts)
    return isinstance(thing, Supply | Card) and thing.size is not None and bool(thing.parts)


def _fit_words(weak: WeakPart) -> str:
    """What to fit, from its facts; a note alone stands for itself."""
    if weak.fit is None:
        return ""
    facts = [
        quantity(weak.fit.capacitance_f, "F") if weak.fit.capacitance_f is not None else "",
        quantity(weak.fit.resistance_ohm, "ohm") if weak.fit.resistance_ohm is not None else "",
        quantity(weak.fit.bears_w, "W") if weak.fit.bears_w is not None else "",
        quantity(weak.fit.rated_v, "V") if weak.fit.rated_v is not None else "",
        quantity(weak.fit.stands_celsius, "°C") if weak.fit.stands_celsius is not None else "",
        weak.fit.kind or "",
    ]
    return " ".join(fact for fact in facts if fact) or "as below"


def part_words(part: Part) -> str:
    """What a part is, from its facts: `Bead on +12 V, 10 µF, 16 V`."""
    speed = {"slow": "slow (T) ", "quick": "quick (F) "}.get(part.speed or "", "")
    facts = [
        part.name or part.kind.replace("-", " ").capitalize(),
        quantity(part.capacitance_f, "F") if part.capacitance_f is not None else "",
        quantity(part.resistance_ohm, "ohm") if part.resistance_ohm is not None else "",
        quantity(part.frequency_hz, "Hz") if part.frequency_hz is not None else "",
        quantity(part.rated_v, "V") if part.rated_v is not None else "",
        speed + quantity(part.blows_a, "A") if part.blows_a is not None else "",
        quantity(part.bears_w, "W") if part.bears_w is not None else "",
    ]
    return ", ".join(fact for fact in facts if fact)


def part_views(
    desk: Desk, parts: Iterable[Part], rows: Iterable[PartRow], weak_rows: Iterable[WeakView]
) -> list[PartView]:
    """All parts of a board in the order of its file, a row of like parts as one.

    A part with a list row of its own leaves its anchor to that.
    """
    listed = list(weak_rows)
    taken = {row.anchor for row in listed}
    weak = {name for row in listed for name in row.weak.parts}
    groups = [((part.ref,), part) for part in parts] + [(row.refs, row.part(0)) for row in rows]
    return [
        PartView(
            refs=tuple(RefView(ref=ref, anchor=f"row-{ref}" if ref in taken else ref) for ref in refs),
            words=desk.told(long_words(part), at=refs[0]),
            rail=part.across,
            weak=any(ref in weak for ref in refs),
        )
        for refs, part in groups
    ]


def drive_part_views(desk: Desk, parts: Iterable[DrivePart], weak_rows: Iterable[WeakView]) -> list[PartView]:
    """The parts of a drive, with the spot where it is known."""
    listed = list(weak_rows)
    taken = {row.anchor for row in listed}
    weak = {name for row in listed for name in row.weak.parts}
    views = []
    for part in parts:
        own = (RefView(ref=part.ref, anchor=f"row-{part.ref}" if part.ref in taken else part.ref),)
        words = desk.told(drive_part_words(part), at=part.ref)
        views.append(PartView(refs=own, words=words, rail=None, weak=part.ref in weak))
    return views


def drive_part_words(part: DrivePart) -> str:
    """What a part of a drive is, where it sits, and what is noted."""
    spot = f"at {quantity(part.at.x_mm, 'mm')} across and {quantity(part.at.y_mm, 'mm')} back" if part.at else ""
    coil = quantity(part.resistance_ohm, "ohm") if part.resistance_ohm is not None else ""
    words = ", ".join(each for each in (part.name, coil, spot) if each)
    return f"{words}; {part.note}" if part.note else words


def long_words(part: Part) -> str:
    """What a part is, with its contacts, its legs and what else is noted."""
    more = [
        f"{part.pins} contacts" if part.pins else "",
        "in a socket" if part.socket else "",
        f"{part.legs} legs" if part.legs else "",
        f"plus: {part.plus}" if part.plus else "",
        part.note or "",
    ]
    return "; ".join([part_words(part), *(each for each in more if each)])


def board_drawing(
    desk: Desk,
    size: Extent,
    parts: Sequence[Part],
    rows: Sequence[PartRow],
    weak: Sequence[WeakView],
    ident: str,
    back: str = "back edge",
    seen: str = "seen from above",
    elsewhere: str | None = None,
) -> Both:
    """The outline of a board, every part a link to its row, the weak ones marked.

    `elsewhere` is the sheet with the table of all parts, where that is not the page itself.
    """
    own = {ref: view.anchor for view in reversed(weak) for ref in view.lights}
    every = [part.ref for part in parts] + [ref for row in rows for ref in row.refs]
    here = {ref: f"#{ref}" for ref in every}

    def drawing() -> Both:
        return board_pictures(size, parts, rows, {ref: ref for ref in own}, ident, here, back=back, seen=seen)

    if desk.machine is None:
        return drawing()
    # Two sheets of a machine show its boards; to find places for their labels takes longer than all else.
    both = desk.shelf.kept(ident, desk.machine.slug, drawing)
    if elsewhere is None:
        return both
    return led_elsewhere(both, {ref: f"#{own[ref]}" if ref in own else desk.sheet(elsewhere, ref) for ref in every})
