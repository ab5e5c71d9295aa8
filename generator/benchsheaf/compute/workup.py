"""The table of contents of all figures: of a part, an outfit, a machine, the collection."""

from collections.abc import Mapping
from dataclasses import dataclass
from decimal import Decimal

from benchsheaf.compute.capacitors import StressFigures, stress_figures
from benchsheaf.compute.memory_map import FillFigures, MapFigures, area_figures, fill_figures, map_figures
from benchsheaf.compute.power import (
    GroundFigures,
    Load,
    PowerFigures,
    SupplyFigures,
    ground_figures,
    power_figures,
    supply_figures,
)
from benchsheaf.compute.reservoir import ReservoirFigures, reservoir_figures
from benchsheaf.compute.storage import StorageFigures, storage_figures
from benchsheaf.model.boards import Draw
from benchsheaf.model.collection import Collection, records_by_kind
from benchsheaf.model.machine import BayFilled, Configuration, Machine
from benchsheaf.model.memory import Fill, Memory
from benchsheaf.model.supply import Supply


@dataclass(frozen=True, kw_only=True, slots=True)
class OutfitWorkup:
    """The figures of one outfit of a machine."""

    id: str
    power: PowerFigures
    fill: FillFigures | None
    map: MapFigures | None


@dataclass(frozen=True, kw_only=True, slots=True)
class MachineWorkup:
    """The figures of a machine."""

    slug: str
    ground: tuple[GroundFigures, ...]
    stress: tuple[StressFigures, ...]
    supply: SupplyFigures
    reservoir: ReservoirFigures | None
    fills: tuple[FillFigures, ...]
    outfits: tuple[OutfitWorkup, ...]


@dataclass(frozen=True, kw_only=True, slots=True)
class DriveWorkup:
    """The figures of a drive."""

    slug: str
    storage: StorageFigures


@dataclass(frozen=True, kw_only=True, slots=True)
class SupplyWorkup:
    """The figures of a supply by itself."""

    slug: str
    reservoir: ReservoirFigures | None


@dataclass(frozen=True, kw_only=True, slots=True)
class CollectionWorkup:
    """The figures of everything."""

    machines: Mapping[str, MachineWorkup]
    drives: Mapping[str, DriveWorkup]
    supplies: Mapping[str, SupplyWorkup]


def collection_workup(collection: Collection) -> CollectionWorkup:
    """All figures of a collection."""
    return CollectionWorkup(
        machines={slug: machine_workup(machine, collection) for slug, machine in collection.machines.items()},
        drives={
            slug: DriveWorkup(slug=slug, storage=storage_figures(drive)) for slug, drive in collection.drives.items()
        },
        supplies={
            slug: SupplyWorkup(slug=slug, reservoir=_reservoir(supply)) for slug, supply in collection.supplies.items()
        },
    )


def sheaf_of(kind: str, slug: str, collection: Collection, workup: CollectionWorkup) -> tuple[object, ...]:
    """The figures of a machine or a thing that machines share, if it has any, then its facts.

    Errors: none; what is neither has neither.
    """
    figures: Mapping[str, Mapping[str, object]] = {
        "machine": workup.machines,
        "drive": workup.drives,
        "supply": workup.supplies,
    }
    shelves = (figures, records_by_kind(collection))
    found = [shelf.get(kind, {}).get(slug) for shelf in shelves]
    return tuple(each for each in found if each is not None)


def machine_workup(machine: Machine, collection: Collection) -> MachineWorkup:
    """All figures of a machine with what it holds."""
    supply = collection.supplies[machine.supply]
    memory = machine.memory
    return MachineWorkup(
        slug=machine.slug,
        ground=tuple(figures for rail in machine.rails if (figures := ground_figures(rail))),
        stress=_stress(machine, collection),
        supply=supply_figures(supply, machine.rails),
        reservoir=_reservoir(supply),
        fills=tuple(fill_figures(memory, fill) for fill in memory.fills) if memory else (),
        outfits=tuple(outfit_workup(outfit, machine, collection) for outfit in machine.configurations),
    )


def _reservoir(supply: Supply) -> ReservoirFigures | None:
    return reservoir_figures(supply.reservoir) if supply.reservoir else None


def _stress(machine: Machine, collection: Collection) -> tuple[StressFigures, ...]:
    """Capacitors of the machine's own boards, then SLUG/REF of what is plugged in as delivered."""
    rails = {rail.name: rail for rail in machine.rails}
    own = [("", board.all_parts()) for board in machine.boards]
    supply = collection.supplies[machine.supply]
    held = [(f"{supply.slug}/", supply.parts)]
    for slug in sorted({filled.holds for filled in machine.configurations[0].slots}):
        held.append((f"{slug}/", collection.cards[slug].parts))
    found = []
    for prefix, parts in own + held:
        for part in parts:
            rail = rails.get(part.across or "")
            figures = stress_figures(part, rail.nominal_v, rail.window) if rail else None
            if figures:
                found.append(
                    StressFigures(
                        ref=prefix + figures.ref,
                        rail=figures.rail,
                        stress_share=figures.stress_share,
                        worst_stress_share=figures.worst_stress_share,
                    )
                )
    return tuple(found)


def outfit_workup(outfit: Configuration, machine: Machine, collection: Collection) -> OutfitWorkup:
    """The figures of one outfit: its loads on the supply, its memory and map."""
    supply = collection.supplies[machine.supply]
    memory = machine.memory
    fill = _fill(memory, outfit)
    filled = fill_figures(memory, fill) if memory and fill else None
    return OutfitWorkup(
        id=outfit.id,
        power=power_figures(supply, machine.rails, outfit_loads(outfit, machine, collection), outfit.loads),
        fill=filled,
        map=_map(memory, filled, outfit, collection) if memory else None,
    )


def _fill(memory: Memory | None, outfit: Configuration) -> Fill | None:
    return next((fill for fill in memory.fills if fill.id == outfit.fill), None) if memory else None


def _map(memory: Memory, filled: FillFigures | None, outfit: Configuration, collection: Collection) -> MapFigures:
    areas = [area_figures(area, None, memory.address_bits) for area in memory.areas]
    areas += filled.areas if filled else ()
    for slot in outfit.slots:
        card = collection.cards[slot.holds]
        areas += [area_figures(area, card.slug, memory.address_bits) for area in card.areas]
    return map_figures(memory.address_bits, areas)


def outfit_loads(outfit: Configuration, machine: Machine, collection: Collection) -> tuple[Load, ...]:
    """What draws current under an outfit, in the order in which a table lists it."""
    boards = {board.id: board for board in machine.boards}
    loads = [Load(name=boards[name].name, draws=boards[name].draws) for name in outfit.boards]
    loads += _memory_loads(machine.memory, outfit)
    for slot in outfit.slots:
        card = collection.cards[slot.holds]
        loads.append(Load(name=card.name, draws=card.draws, kind="card", slug=card.slug))
    loads += [_drive_load(bay, collection) for bay in outfit.bays]
    if outfit.keyboard:
        keyboard = collection.keyboards[outfit.keyboard]
        loads.append(Load(name=keyboard.name, draws=keyboard.draws, kind="keyboard", slug=keyboard.slug))
    supply = collection.supplies[machine.supply]
    if supply.draws:
        loads.append(Load(name=f"{supply.name} itself", draws=supply.draws, kind="supply", slug=supply.slug))
    return tuple(load for load in loads if load.draws)


def _drive_load(bay: BayFilled, collection: Collection) -> Load:
    drive = collection.drives[bay.holds]
    return Load(name=drive.name, draws=drive.draws, kind="drive", slug=drive.slug, late=bay.starts == "late")


def _memory_loads(memory: Memory | None, outfit: Configuration) -> list[Load]:
    """The memory chips of the outfit's filling, one load for each kind of chip."""
    fill = _fill(memory, outfit)
    if memory is None or fill is None:
        return []
    banks = {bank.id: bank for bank in memory.banks}
    loads = []
    for kind in memory.chips:
        groups = [group for group in fill.groups if group.chip == kind.id]
        count = sum(len(banks[name].bits) + len(banks[name].parity) for group in groups for name in group.banks)
        if count and kind.draws:
            name = f"Memory, {count} chips of {kind.id.upper()} × {kind.width_bits}"
            loads.append(Load(name=name, draws=tuple(_times(draw, count) for draw in kind.draws)))
    return loads


def _times(draw: Draw, count: int) -> Draw:
    """The draw of several like things together."""

    def several(one_a: Decimal | None) -> Decimal | None:
        return None if one_a is None else one_a * count

    return Draw(
        rail=draw.rail,
        run_a=draw.run_a * count,
        start_a=several(draw.start_a),
        start_for_s=draw.start_for_s,
        rest_a=several(draw.rest_a),
        warm=draw.warm,
    )
