"""Every figure of a part, a machine, the collection."""

from collections.abc import Mapping
from dataclasses import dataclass
from decimal import Decimal

from benchsheaf.compute.beeps import SoundFigures, sound_figures
from benchsheaf.compute.bench import BenchWorkup, bench_workup
from benchsheaf.compute.capacitors import StressFigures, stress_figures
from benchsheaf.compute.card_conflicts import PortMapFigures, card_claim, port_map
from benchsheaf.compute.clocks import ClockFigures, RefreshFigures, clock_figures, refresh_figures
from benchsheaf.compute.fault_codes import FaultCodeFigures, fault_code_figures
from benchsheaf.compute.filesystem import FlawListFigures, VolumeFigures, flaw_list_figures, volume_figures
from benchsheaf.compute.firmware import CoverageFigures, coverage_figures
from benchsheaf.compute.memory_map import FillFigures, fill_figures
from benchsheaf.compute.power import (
    GroundFigures,
    SplitFigures,
    SupplyFigures,
    ground_figures,
    ladder,
    split_figures,
    supply_figures,
)
from benchsheaf.compute.reservoir import ReservoirFigures, reservoir_figures
from benchsheaf.compute.storage import StorageFigures, storage_figures
from benchsheaf.compute.video import (
    LockFigures,
    ModeFigures,
    PictureFigures,
    card_modes,
    display_locks,
    outfit_pictures,
)
from benchsheaf.compute.workup.asked import Asked
from benchsheaf.compute.workup.new_parts import NewParts, new_parts
from benchsheaf.compute.workup.outfit import OutfitWorkup, outfit_workup
from benchsheaf.model.cards import Card
from benchsheaf.model.collection import Collection, records_by_kind
from benchsheaf.model.drives import Drive
from benchsheaf.model.machine import Machine
from benchsheaf.model.signals import LineUse
from benchsheaf.model.supply import Supply


@dataclass(frozen=True, kw_only=True, slots=True)
class MachineWorkup:
    """The figures of a machine."""

    slug: str
    ground: tuple[GroundFigures, ...]
    splits: tuple[SplitFigures, ...]
    stress: tuple[StressFigures, ...]
    new_parts: NewParts
    supply: SupplyFigures
    reservoir: ReservoirFigures | None
    fills: tuple[FillFigures, ...]
    coverage: tuple[CoverageFigures, ...]
    clocks: tuple[ClockFigures, ...]
    refresh: RefreshFigures | None
    pictures: tuple[PictureFigures, ...]
    outfits: tuple[OutfitWorkup, ...]
    ladder: tuple[str, ...]  # the outfits on the way up, the lowest first
    sounds: SoundFigures | None
    fault_codes: FaultCodeFigures | None
    bench: BenchWorkup


@dataclass(frozen=True, kw_only=True, slots=True)
class DriveWorkup:
    """The figures of a drive."""

    slug: str
    storage: StorageFigures
    volumes: tuple[VolumeFigures, ...]
    flaw_lists: tuple[FlawListFigures, ...]


@dataclass(frozen=True, kw_only=True, slots=True)
class SupplyWorkup:
    """The figures of a supply by itself."""

    slug: str
    reservoir: ReservoirFigures | None


@dataclass(frozen=True, kw_only=True, slots=True)
class CardWorkup:
    """The figures of a card by itself, as delivered."""

    slug: str
    modes: tuple[ModeFigures, ...]
    ports: PortMapFigures
    lines: tuple[LineUse, ...]
    coverage: tuple[CoverageFigures, ...]


@dataclass(frozen=True, kw_only=True, slots=True)
class DisplayWorkup:
    """A display against every picture mode that is described."""

    slug: str
    locks: tuple[LockFigures, ...]


@dataclass(frozen=True, kw_only=True, slots=True)
class CollectionWorkup:
    """The figures of everything; those of machines are worked out when they are asked for.

    `stress` has the capacitors of each machine, which pages of things that many machines hold ask for.
    """

    machines: Mapping[str, MachineWorkup]
    stress: Mapping[str, tuple[StressFigures, ...]]
    drives: Mapping[str, DriveWorkup]
    supplies: Mapping[str, SupplyWorkup]
    cards: Mapping[str, CardWorkup]
    displays: Mapping[str, DisplayWorkup]


def collection_workup(collection: Collection) -> CollectionWorkup:
    """All figures of a collection."""
    machines = collection.machines
    return CollectionWorkup(
        machines=Asked(machines, lambda slug: machine_workup(machines[slug], collection)),
        stress=Asked(machines, lambda slug: _stress(machines[slug], collection), most_kept=None),
        drives={slug: drive_workup(drive) for slug, drive in collection.drives.items()},
        supplies={
            slug: SupplyWorkup(slug=slug, reservoir=_reservoir(supply)) for slug, supply in collection.supplies.items()
        },
        cards={slug: card_workup(card, collection) for slug, card in collection.cards.items()},
        displays={
            slug: DisplayWorkup(slug=slug, locks=display_locks(display, collection.cards))
            for slug, display in collection.displays.items()
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
        "card": workup.cards,
    }
    shelves = (figures, records_by_kind(collection))
    found = [shelf.get(kind, {}).get(slug) for shelf in shelves]
    return tuple(each for each in found if each is not None)


def machine_workup(machine: Machine, collection: Collection) -> MachineWorkup:
    """All figures of a machine with what it holds."""
    supply = collection.supplies[machine.supply]
    memory = machine.memory
    display = collection.displays[machine.display] if machine.display else None
    clocks = clock_figures(machine.clocks, _crystals(machine, collection))
    frequencies = {clock.id: clock.frequency_hz for clock in clocks}
    return MachineWorkup(
        slug=machine.slug,
        ground=tuple(figures for rail in machine.rails if (figures := ground_figures(rail))),
        splits=tuple(figures for rail in machine.rails for figures in split_figures(rail)),
        stress=_stress(machine, collection),
        new_parts=new_parts(machine, collection),
        supply=supply_figures(supply, machine.rails),
        reservoir=_reservoir(supply),
        fills=tuple(fill_figures(memory, fill) for fill in memory.fills) if memory else (),
        coverage=coverage_figures(memory.areas, machine.firmware) if memory else (),
        clocks=clocks,
        refresh=refresh_figures(memory.refresh, frequencies) if memory and memory.refresh else None,
        pictures=outfit_pictures(machine.configurations[0], collection.cards, display),
        outfits=tuple(outfit_workup(outfit, machine, collection) for outfit in machine.configurations),
        ladder=tuple(outfit.id for outfit in ladder(machine.configurations)),
        sounds=sound_figures(machine.tones, machine.beeps) if machine.beeps else None,
        fault_codes=fault_code_figures(memory, machine.messages) if memory else None,
        bench=bench_workup(machine, collection),
    )


def _crystals(machine: Machine, collection: Collection) -> dict[str, Decimal]:
    """The frequency of every part that has one: on its own boards, then SLUG/REF on its cards as delivered."""
    own = [(part.ref, part) for board in machine.boards for part in board.all_parts()]
    for filled in machine.configurations[0].slots:
        own += [(f"{filled.holds}/{part.ref}", part) for part in collection.cards[filled.holds].parts]
    return {name: part.frequency_hz for name, part in own if part.frequency_hz is not None}


def drive_workup(drive: Drive) -> DriveWorkup:
    """All figures of a drive: its plate, its volumes, and what its lists of flaws say."""
    return DriveWorkup(
        slug=drive.slug,
        storage=storage_figures(drive),
        volumes=tuple(volume_figures(volume, drive) for volume in drive.volumes),
        flaw_lists=tuple(flaw_list_figures(flaws, drive.geometry, drive.accept) for flaws in drive.flaw_lists),
    )


def card_workup(card: Card, collection: Collection) -> CardWorkup:
    """All figures of a card by itself, its switches as delivered."""
    claim = card_claim(card)
    return CardWorkup(
        slug=card.slug,
        modes=card_modes(card),
        ports=port_map([claim], collection.buses[card.bus].ports),
        lines=claim.lines,
        coverage=coverage_figures(card.areas, card.firmware),
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
