"""Before first power: what to do in which order, and where to stop."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from decimal import Decimal

from benchsheaf.compute.workup import MachineWorkup
from benchsheaf.drawing.picture import Both
from benchsheaf.drawing.rail_scales import rail_scales
from benchsheaf.links import Thing
from benchsheaf.markup import Markup
from benchsheaf.model.boards import WeakPart
from benchsheaf.model.cards import Bus
from benchsheaf.model.machine import Configuration, Machine, Rail
from benchsheaf.pages.glance import all_cautions, held_things, sheet_cautions
from benchsheaf.pages.printing import quantity, rail_name, span
from benchsheaf.pages.shelf import Desk
from benchsheaf.pages.views import CautionView, ReservoirView, reservoir_view
from benchsheaf.standards import MOST_EXTRA_W


@dataclass(frozen=True, kw_only=True, slots=True)
class Step:
    """One step: the order, the rest, the parts it is about; under power what is seen, when to go on, what stops it."""

    order: Markup
    says: Markup
    parts: Sequence[Markup] = ()
    expect: Markup | None = None
    go: Markup | None = None
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
        steps=[*_before_the_plug(desk, machine, grounded), *_with_the_plug(desk, machine)],
        grounded=grounded,
        ground=desk.part(machine.measuring.ground) if machine.measuring else None,
        scales=rail_scales(grounded, "scales") if grounded else None,
        reservoir=view,
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


def _under_power(desk: Desk, step: Step, rung: Configuration) -> Step:
    """The same step with what the rung says of its life under power."""
    expect = desk.told(rung.expect) if rung.expect else None
    return replace(step, expect=expect, go=desk.told(rung.go or "All rails are in their windows."))


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
            says=f"{condition}{_probes(desk, machine)}{_readings(grounded)}. The scales below say what is doubtful.",
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


def _probes(desk: Desk, machine: Machine) -> str:
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


def _with_the_plug(desk: Desk, machine: Machine) -> Iterator[Step]:
    """Up the ladder: the supply alone on resistors, then what stands after it, rung by rung."""
    rungs = ladder(machine.configurations)
    alone = [rung for rung in rungs if not rung.boards]
    windows = "; ".join(f"{rail_name(rail.name)} {span(rail.window, 'V')}" for rail in machine.rails)
    ripples = [f"{rail_name(rail.name)} {quantity(rail.ripple_v, 'V')}" for rail in machine.rails if rail.ripple_v]
    for rung in alone:
        yield _step(
            desk,
            order="The supply alone, on resistors.",
            says=f"{_loads(rung)}. {_told(rung.plug)}No untested drive serves as a load, and the resistors get "
            "hot enough to burn.",
        )
        power = [desk.told(each.order, of) for of, each in all_cautions(desk, machine) if "power" in each.sheets]
        step = _step(
            desk,
            order="Mains on. Over-voltage is looked for first, then all rails.",
            says=f"{_probes(desk, machine)}{windows}." + (f" Ripple at most {', '.join(ripples)}." if ripples else ""),
            stops=[rung.stop or NO_GOOD, *power],
        )
        yield _under_power(desk, step, rung)
    for rung in rungs:
        if rung not in alone:
            step = _step(
                desk,
                order=f"{rung.name}.",
                says=f"Plug out first; all rails at once, never rail by rail. {_told(rung.plug)}{_told(_loads(rung))}",
                stops=[rung.stop or NO_GOOD],
            )
            yield _under_power(desk, step, rung)


NO_GOOD = "A rail out of its window, a tick, a hiss, a smell: plug out. What was added last is looked at first."


def _told(text: str | None) -> str:
    return f"{text.rstrip('.')}. " if text else ""


def _loads(rung: Configuration) -> str:
    return "; ".join(
        f"{quantity(load.resistance_ohm, 'ohm')}, {quantity(load.bears_w, 'W')} body on {rail_name(load.rail)} "
        f"between {load.between[:1].lower() + load.between[1:] if load.between[1:2].islower() else load.between}"
        for load in rung.loads
    )


def ladder(configurations: Sequence[Configuration]) -> list[Configuration]:
    """The rungs below the outfit as delivered, the lowest first, and that outfit last."""
    by_name = {outfit.id: outfit for outfit in configurations}
    rungs = [configurations[0]]
    while rungs[0].before:
        rungs.insert(0, by_name[rungs[0].before])
    return rungs


def beside_the_ladder(configurations: Sequence[Configuration]) -> list[Configuration]:
    """Outfits with words of their own that are no rung on the way to the machine as delivered."""
    rungs = {outfit.id for outfit in ladder(configurations)}
    others = [outfit for outfit in configurations if outfit.id not in rungs]
    return [outfit for outfit in others if outfit.plug or outfit.expect or outfit.go or outfit.stop]
