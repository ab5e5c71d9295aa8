"""What several pages show, made ready so that a template only prints it."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

from benchsheaf import urls
from benchsheaf.compute.capacitors import StressFigures
from benchsheaf.compute.reservoir import ReservoirFigures
from benchsheaf.compute.storage import StorageFigures
from benchsheaf.drawing.board import board_pictures
from benchsheaf.drawing.discharge import discharge_curve
from benchsheaf.drawing.interleave import interleave_ring
from benchsheaf.drawing.picture import Both
from benchsheaf.markup import Markup
from benchsheaf.model.boards import Extent, Part, PartRow, WeakPart
from benchsheaf.model.drives import Drive, DrivePart
from benchsheaf.model.machine import CautionHere
from benchsheaf.model.supply import Reservoir
from benchsheaf.pages.printing import figure, quantity
from benchsheaf.pages.shelf import Desk
from benchsheaf.standards import DISCHARGED_V, EXTRA_LOW_V


@dataclass(frozen=True, kw_only=True, slots=True)
class CautionView:
    """A caution: its sign, the order itself, the rest, what is stopped, and the way to more."""

    ident: str
    sign: str
    order: str
    says: str
    stop: str | None = None
    more: str | None = None
    more_words: str = ""


@dataclass(frozen=True, kw_only=True, slots=True)
class WeakView:
    """A weak part as its list row says it; `lights` are the designators that light up with it."""

    anchor: str
    names: tuple[Markup, ...]
    what: str
    weak: WeakPart
    stress: StressFigures | None
    lights: tuple[str, ...]
    fit: str


@dataclass(frozen=True, kw_only=True, slots=True)
class PartView:
    """A part as the table of all parts says it."""

    anchor: str
    ref: str
    words: str
    rail: str | None
    weak: bool


@dataclass(frozen=True, kw_only=True, slots=True)
class ReservoirView:
    """The charge of a supply, its figures, and the standards they are measured by."""

    reservoir: Reservoir
    figures: ReservoirFigures
    bleeder_part: Markup | None
    curve: Both | None
    discharged_v: object = DISCHARGED_V
    extra_low_v: object = EXTRA_LOW_V


@dataclass(frozen=True, kw_only=True, slots=True)
class DriveView:
    """A drive with its figures."""

    drive: Drive
    figures: StorageFigures
    ring: Both | None
    weak: Sequence[WeakView]
    where: str = ""
    way: str = ""


@dataclass(frozen=True, kw_only=True, slots=True)
class Named:
    """Something with a page."""

    name: str
    way: str
    summary: str = ""


def machine_caution(desk: Desk, written: CautionHere) -> CautionView:
    """A caution as a machine words it, with the way to what its sign asks everywhere."""
    shared = desk.shelf.collection.cautions[written.caution]
    return CautionView(
        ident=f"caution-{written.id}",
        sign=shared.sign,
        order=written.order,
        says=written.says,
        stop=written.stop,
        more=desk.href(urls.CAUTIONS, shared.id),
        more_words="What this sign asks",
    )


def charge_caution(desk: Desk, reservoir: Reservoir, figures: ReservoirFigures, way: str) -> CautionView:
    """The caution about stored charge, worked out from the supply's own figures."""
    volts = quantity(reservoir.charged_v, "V")
    wait = figure(figures, "wait_minutes", 0)
    broken = "If the bleeder is broken it is still charged." if figures.bleeder else "Nothing drains it."
    return CautionView(
        ident="caution-stored-charge",
        sign="stored-charge",
        order=f"Supply open: pull the plug, wait {wait}, then measure.",
        says=f"{reservoir.part} holds {figure(figures, 'stored_energy_j')} at {volts}, more at the highest mains. {broken}",
        more=way,
        more_words="How the wait is worked out",
    )


def reservoir_view(desk: Desk, reservoir: Reservoir, figures: ReservoirFigures, slug: str) -> ReservoirView:
    """The section about stored charge of one supply."""
    bleeder = desk.part(f"{slug}/{reservoir.bleeder_part}") if reservoir.bleeder_part else None
    curve = discharge_curve(reservoir, figures, "discharge") if figures.bleeder else None
    return ReservoirView(reservoir=reservoir, figures=figures, bleeder_part=bleeder, curve=curve)


def drive_view(desk: Desk, drive: Drive, where: str = "") -> DriveView:
    """A drive with its ring of sectors and its weak parts."""
    figures = desk.shelf.workup.drives[drive.slug].storage
    ring = interleave_ring(figures.interleave, figures.track, f"ring-{drive.slug}") if figures.interleave else None
    return DriveView(
        drive=drive,
        figures=figures,
        ring=ring,
        weak=weak_views(desk, drive.weak_parts, {}, (), f"{drive.slug}/"),
        where=where,
        way=desk.thing("drive", drive.slug),
    )


def weak_views(
    desk: Desk,
    weak_parts: Iterable[WeakPart],
    parts: Mapping[str, Part],
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
    views = []
    for weak in weak_parts:
        first = weak.parts[0] if weak.parts else ""
        part = parts.get(first)
        views.append(
            WeakView(
                anchor=first if own and first else f"weak-{prefix.replace('/', '-')}{weak.id}",
                names=tuple(desk.part(name if "/" in name else prefix + name) for name in weak.parts),
                what=weak.what or (part_words(part) if part else ""),
                weak=weak,
                stress=by_ref.get(prefix + first),
                lights=weak.parts if own else (),
                fit=_fit_words(weak),
            )
        )
    return views


def _fit_words(weak: WeakPart) -> str:
    """What to fit, from its facts; a note alone stands for itself."""
    if weak.fit is None:
        return ""
    facts = [
        quantity(weak.fit.capacitance_f, "F") if weak.fit.capacitance_f is not None else "",
        quantity(weak.fit.rated_v, "V") if weak.fit.rated_v is not None else "",
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


def part_views(parts: Iterable[Part], weak_rows: Iterable[WeakView]) -> list[PartView]:
    """All parts of a board in the order of its file; a part with a list row of its own leaves its anchor to that."""
    rows = list(weak_rows)
    taken = {row.anchor for row in rows}
    weak = {name for row in rows for name in row.weak.parts}
    return [
        PartView(
            anchor=f"row-{part.ref}" if part.ref in taken else part.ref,
            ref=part.ref,
            words=_long_words(part),
            rail=part.across,
            weak=part.ref in weak,
        )
        for part in parts
    ]


def drive_part_views(parts: Iterable[DrivePart], weak_rows: Iterable[WeakView]) -> list[PartView]:
    """The parts of a drive, with the spot where it is known."""
    weak = {name for row in weak_rows for name in row.weak.parts}
    views = []
    for part in parts:
        spot = f"at {quantity(part.at.x_mm, 'mm')} across and {quantity(part.at.y_mm, 'mm')} back" if part.at else ""
        coil = quantity(part.resistance_ohm, "ohm") if part.resistance_ohm is not None else ""
        words = ", ".join(each for each in (part.name, coil, spot) if each)
        note = f"{words}; {part.note}" if part.note else words
        views.append(PartView(anchor=part.ref, ref=part.ref, words=note, rail=None, weak=part.ref in weak))
    return views


def _long_words(part: Part) -> str:
    more = [
        f"{part.pins} contacts" if part.pins else "",
        "in a socket" if part.socket else "",
        f"{part.legs} legs" if part.legs else "",
        part.plus or "",
        part.note or "",
    ]
    return "; ".join([part_words(part), *(each for each in more if each)])


def board_drawing(
    size: Extent, parts: Sequence[Part], rows: Sequence[PartRow], weak: Iterable[WeakView], ident: str, back: str
) -> Both:
    """The outline of a board, every part a link to its row, the weak ones marked."""
    refs = [part.ref for part in parts] + [ref for row in rows for ref in row.refs]
    weak_refs = {name: name for each in weak for name in each.lights}
    return board_pictures(size, parts, rows, weak_refs, ident, {ref: f"#{ref}" for ref in refs}, back=back)
