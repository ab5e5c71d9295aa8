"""Before first power: what to do in which order, and where to stop."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from decimal import Decimal

from benchsheaf.compute.workup import MachineWorkup
from benchsheaf.drawing.picture import Both
from benchsheaf.drawing.rail_scales import rail_scales
from benchsheaf.links import Thing
from benchsheaf.markup import Markup
from benchsheaf.model.boards import WeakPart
from benchsheaf.model.cards import Bus
from benchsheaf.model.machine import Machine, Rail
from benchsheaf.pages.glance import held_things, sheet_cautions
from benchsheaf.pages.printing import quantity, rail_name, span
from benchsheaf.pages.sheets import SHEETS_BY_NAME
from benchsheaf.pages.shelf import Desk
from benchsheaf.pages.shorts import ShortsView, shorts_view
from benchsheaf.pages.views import CautionView, ReservoirView, reservoir_view
from benchsheaf.standards import MOST_EXTRA_W


@dataclass(frozen=True, kw_only=True, slots=True)
class Step:
    """One step: the order itself, the rest, the parts it is about, and what stops the work."""

    order: Markup
    says: Markup
    parts: Sequence[Markup] = ()
    stops: Sequence[Markup] = ()


@dataclass(frozen=True, kw_only=True, slots=True)
class FirstPowerSheet:
    """The sheet that is read before the plug goes in."""

    machine: Machine
    workup: MachineWorkup
    cautions: Sequence[CautionView]
    steps: Sequence[Step]
    grounded: Sequence[Rail]
    ground: Markup | None
    scales: Both | None
    reservoir: ReservoirView | None
    shorts: ShortsView | None
    apart: str | None = None
    checks: str | None = None
    rests_on: Sequence[str] = ()
    most_extra_w: Decimal = MOST_EXTRA_W


def first_power_sheet(desk: Desk, machine: Machine) -> FirstPowerSheet:
    """What the sheet says, from the machine's own facts in the order of the bench."""
    grounded = [rail for rail in machine.rails if rail.to_ground]
    workup = desk.shelf.workup.machines[machine.slug]
    supply = desk.shelf.collection.supplies[machine.supply]
    view = None
    if supply.reservoir and workup.reservoir:
        view = reservoir_view(desk, supply.reservoir, workup.reservoir, supply.slug)
    return FirstPowerSheet(
        machine=machine,
        workup=workup,
        cautions=sheet_cautions(desk, machine, "first-power"),
        steps=[*_before_the_plug(desk, machine, grounded), _then_power(desk, machine)],
        grounded=grounded,
        ground=desk.part(machine.measuring.ground) if machine.measuring else None,
        scales=rail_scales(grounded, "scales") if grounded else None,
        reservoir=view,
        shorts=shorts_view(desk, machine),
        apart=desk.sheet("apart") if machine.removals else None,
        checks=desk.sheet("checks") if machine.checks else None,
        rests_on=_rests_on(machine, grounded),
    )


def _rests_on(machine: Machine, grounded: Sequence[Rail]) -> list[str]:
    """How the resistances are known, in the words of their sources."""
    named = {rail.to_ground.source for rail in grounded if rail.to_ground}
    return [
        f"{each.kind.replace('makers', 'maker’s').replace('-', ' ')}: {each.note}"
        for each in machine.sources
        if each.id in named
    ]


def _step(desk: Desk, order: str, says: str, parts: Sequence[Markup] = (), stops: Sequence[str] = ()) -> Step:
    """A step in which the machine's words are told; what is told already stays so."""
    told = [text if isinstance(text, Markup) else desk.told(text) for text in (order, says, *stops)]
    return Step(order=told[0], says=told[1], parts=parts, stops=told[2:])


def _weak_stop(desk: Desk, weak: WeakPart, of: Thing | None) -> Markup:
    what = desk.told(weak.what or ", ".join(weak.parts), of)
    return Markup("{}: {}").format(what, desk.told(weak.stop or "", of))


def _before_the_plug(desk: Desk, machine: Machine, grounded: Sequence[Rail]) -> Iterator[Step]:
    """Looking, earth and fuse, resistance: all with the plug out."""
    found = [weak for weak in machine.weak_parts if weak.when == "before-mains"]
    names = [desk.part(name) for weak in found for name in weak.parts]
    stops: list[str] = [_weak_stop(desk, weak, None) for weak in found if weak.stop]
    for _, kind, slug in held_things(desk, machine):
        for weak in desk.shelf.thing(kind, slug).weak_parts:
            if weak.when == "before-mains":
                names += [desk.part(f"{slug}/{name}") for name in weak.parts]
                stops.append(_weak_stop(desk, weak, (kind, slug)))
    yield _step(
        desk,
        order="Look, before anything else.",
        says="Plug out. Photograph how it stands. Is every bead, can, cell and mains part whole?"
        + (" First of all" if names else ""),
        parts=names,
        stops=stops,
    )
    mains = machine.mains
    says = f"The type plate must say {span(mains, 'V')}."
    stops = []
    if mains.earth_below_ohm is not None:
        limit = quantity(mains.earth_below_ohm, "ohm")
        says += f" Plug out of the wall: earth pin of the plug to bare metal of the case reads under {limit}."
        stops.append(
            f"Earth at {limit} or more, a wrong fuse, a plate for another mains: no mains until it is put right."
        )
    if mains.fuse:
        stops.append("A fuse that is open: no new one until the mains side has been looked at.")
    yield _step(
        desk,
        order="Earth, plate and fuse.",
        says=says + (" The fuse is whole and of the right kind:" if mains.fuse else ""),
        parts=[_fuse(desk, mains.fuse)] if mains.fuse else [],
        stops=stops,
    )
    if grounded:
        condition = f"{machine.measuring.condition}. " if machine.measuring else ""
        yield _step(
            desk,
            order="Measure every rail to ground, cold.",
            says=f"{condition}{probes(desk, machine)}{_readings(grounded)}. The scales below say what is doubtful.",
            stops=[f"{_no_power(grounded)}: no power until the short is found. Hunt only with a source under 1 V."],
        )
        yield _step(
            desk,
            order="Measure each card and each drive too, by itself.",
            says="Their rail contacts to ground, out of the machine or off their plugs. One that reads like a short "
            "beside the others stays out until it is found.",
        )


def probe_points(machine: Machine, bus: Bus | None = None) -> dict[str, str]:
    """Where each rail, and ground, is first found on a plug of the machine: `PW1-8`; else in a slot of its bus."""
    points: dict[str, str] = {}
    plugs = [(each.part or each.name, each.rows) for each in machine.connectors]
    plugs += [(machine.slots[0].slot, bus.rows)] if bus and machine.slots else []
    for plug, rows in plugs:
        for row in rows:
            for pin in row.pins:
                name = pin.rail or ("ground" if pin.signal == "ground" else None)
                if name:
                    points.setdefault(name, f"{plug}-{pin.pin}")
    return points


def probes(desk: Desk, machine: Machine) -> str:
    """Where each rail and ground are measured, a sentence with a space after it; nothing where no plug shows them."""
    points = probe_points(machine, desk.shelf.collection.buses[machine.bus] if machine.bus else None)
    found = [f"{rail_name(rail.name)} at {points[rail.name]}" for rail in machine.rails if rail.name in points]
    ground = f", ground at {points['ground']}" if "ground" in points else ""
    return f"{', '.join(found)}{ground}. " if found else ""


def _fuse(desk: Desk, name: str) -> Markup:
    slug, _, ref = name.rpartition("/")
    kind = desk.kind_of(slug) if slug else ""
    part = next((each for each in desk.shelf.parts_of(kind, slug) if each.ref == ref), None)
    if part is None or part.blows_a is None:
        return desk.part(name)
    speed = {"slow": "slow (T) ", "quick": "quick (F) "}.get(part.speed or "", "")
    return Markup("{}, {}{}").format(desk.part(name), speed, quantity(part.blows_a, "A"))


def _readings(rails: Sequence[Rail]) -> str:
    return "; ".join(
        f"{rail_name(rail.name)} usually {span(rail.to_ground.usual, 'ohm')}" for rail in rails if rail.to_ground
    )


def _no_power(rails: Sequence[Rail]) -> str:
    limits = [
        f"{rail_name(rail.name)} under {quantity(rail.to_ground.no_power_below_ohm, 'ohm')}"
        for rail in rails
        if rail.to_ground
    ]
    return ", or ".join(limits)


def _then_power(desk: Desk, machine: Machine) -> Step:
    """What comes after this sheet: the way up, where it is described."""
    order = Markup("Only then power, rung by rung.")
    if SHEETS_BY_NAME["ladder"].wanted(machine, desk.shelf.collection):
        return Step(order=order, says=Markup(NO_LADDER))
    way = Markup('<a href="{}">Bringing it up</a>').format(desk.sheet("ladder"))
    return Step(order=order, says=Markup("All rails at once, the supply alone first. Go on with: {}.").format(way))


NO_LADDER = (
    "The supply alone first, on resistors that give it its least load, then all rails at once, plug out at whatever is "
    "odd. How this machine is brought up is not described yet."
)
