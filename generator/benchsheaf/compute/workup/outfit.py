"""The figures of one outfit of a machine."""

from dataclasses import dataclass

from benchsheaf.compute.card_conflicts import LineFigures, PortMapFigures, claims, line_figures, port_map
from benchsheaf.compute.memory_map import FillFigures, MapFigures, area_figures, fill_figures, map_figures
from benchsheaf.compute.power import PowerFigures, power_figures
from benchsheaf.compute.switches import ReadBack, values_read
from benchsheaf.compute.workup.loads import outfit_fill, outfit_loads, outfit_settings
from benchsheaf.model.collection import Collection
from benchsheaf.model.machine import Configuration, Machine
from benchsheaf.model.memory import Memory


@dataclass(frozen=True, kw_only=True, slots=True)
class OutfitWorkup:
    """The figures of one outfit of a machine."""

    id: str
    power: PowerFigures
    fill: FillFigures | None
    map: MapFigures | None
    ports: PortMapFigures
    lines: tuple[LineFigures, ...]
    switches: tuple[ReadBack, ...]


def outfit_workup(outfit: Configuration, machine: Machine, collection: Collection) -> OutfitWorkup:
    """The figures of one outfit: its loads on the supply, its memory and map, its ports, lines and switches."""
    supply = collection.supplies[machine.supply]
    memory = machine.memory
    fill = outfit_fill(memory, outfit)
    filled = fill_figures(memory, fill) if memory and fill else None
    bus = collection.buses[machine.bus] if machine.bus else None
    settings = outfit_settings(outfit, memory)
    claimants = claims(machine, outfit.slots, collection.cards, settings)
    return OutfitWorkup(
        id=outfit.id,
        power=power_figures(supply, machine.rails, outfit_loads(outfit, machine, collection), outfit.loads),
        fill=filled,
        map=_map(memory, filled, outfit, collection) if memory else None,
        ports=port_map(claimants, bus.ports if bus else None),
        lines=line_figures(bus.lines, claimants) if bus else (),
        switches=values_read(machine.switches, settings),
    )


def _map(memory: Memory, filled: FillFigures | None, outfit: Configuration, collection: Collection) -> MapFigures:
    areas = [area_figures(area, None, memory.address_bits) for area in memory.areas]
    areas += filled.areas if filled else ()
    for slot in outfit.slots:
        card = collection.cards[slot.holds]
        areas += [area_figures(area, card.slug, memory.address_bits) for area in card.areas]
    return map_figures(memory.address_bits, areas)
