"""Memory, slots, switches, drives and sources: the sheets that tell what is where."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from benchsheaf import urls
from benchsheaf.compute.memory_map import AreaFigures, ChipBits, FillFigures, MapFigures, chip_bits, with_own_parity
from benchsheaf.drawing.memory_map import memory_map
from benchsheaf.drawing.picture import Both
from benchsheaf.links import Thing
from benchsheaf.markup import Markup
from benchsheaf.model.displays import Medium
from benchsheaf.model.machine import Bay, Machine
from benchsheaf.model.memory import Bank, Fill, Memory
from benchsheaf.model.plugs import Switch
from benchsheaf.model.sources import SourceEntry
from benchsheaf.pages.fault_codes import FaultCodesView, fault_codes_view
from benchsheaf.pages.glance import held_things, sheet_cautions
from benchsheaf.pages.refresh import RefreshView, refresh_view
from benchsheaf.pages.shelf import Desk
from benchsheaf.pages.views import CautionView, DriveView, drive_view
from benchsheaf.standards import BITS_A_BYTE


@dataclass(frozen=True, kw_only=True, slots=True)
class FillRow:
    """One way of filling the banks."""

    fill: Fill
    figures: FillFigures
    delivered: bool


@dataclass(frozen=True, kw_only=True, slots=True)
class BitView:
    """A bit and what an error message shows for it."""

    number: int
    mask: str


@dataclass(frozen=True, kw_only=True, slots=True)
class ChipCell:
    """A chip under the bits that it gives; `span` is how many columns, `bits` says which where it is more than one."""

    part: Markup
    span: int
    bits: str


@dataclass(frozen=True, kw_only=True, slots=True)
class BankRow:
    """A bank chip by chip, and where its parity bit is: in chips of its own, or in the same."""

    bank: Bank
    cells: Sequence[ChipCell]
    parity: Sequence[Markup]
    own_parity: bool


@dataclass(frozen=True, kw_only=True, slots=True)
class MapRow:
    """One stretch of the map."""

    area: AreaFigures
    gap: bool
    owner: Markup | None
    parts: Sequence[Markup]


@dataclass(frozen=True, kw_only=True, slots=True)
class MemorySheet:
    """The sheet about memory."""

    cautions: Sequence[CautionView]
    memory: Memory
    refresh: RefreshView | None
    delivered: FillFigures | None
    fills: Sequence[FillRow]
    bits: Sequence[BitView]
    banks: Sequence[BankRow]
    codes: FaultCodesView | None
    map: MapFigures | None
    drawing: Both | None
    map_rows: Sequence[MapRow]


@dataclass(frozen=True, kw_only=True, slots=True)
class SlotRow:
    """One slot and what is in it as delivered."""

    slot: str
    part: Markup
    name: str = ""
    way: str | None = None
    of: Thing | None = None
    summary: str = ""


@dataclass(frozen=True, kw_only=True, slots=True)
class SlotsSheet:
    """The sheet about slots and cards."""

    cautions: Sequence[CautionView]
    bus: str | None
    bus_way: str | None
    rows: Sequence[SlotRow]
    filled: int


@dataclass(frozen=True, kw_only=True, slots=True)
class SwitchRow:
    """One switch or jumper."""

    switch: Switch
    part: Markup


@dataclass(frozen=True, kw_only=True, slots=True)
class SwitchesSheet:
    """The sheet about switches."""

    cautions: Sequence[CautionView]
    rows: Sequence[SwitchRow]


@dataclass(frozen=True, kw_only=True, slots=True)
class MediumRow:
    """A medium and those of the machine's drives that take it."""

    medium: Medium
    way: str
    drives: Sequence[str]


@dataclass(frozen=True, kw_only=True, slots=True)
class DrivesSheet:
    """The sheet about drives."""

    cautions: Sequence[CautionView]
    drives: Sequence[DriveView]
    free: Sequence[Bay]
    media: Sequence[MediumRow]


@dataclass(frozen=True, kw_only=True, slots=True)
class SourcesSheet:
    """The sheet that says where the facts are from."""

    machine: Machine
    rows: Sequence[tuple[str, Thing, SourceEntry]]
    data: str


def memory_sheet(desk: Desk, machine: Machine) -> MemorySheet:
    """What the sheet says; only for a machine that has memory."""
    memory = machine.memory
    assert memory is not None
    workup = desk.shelf.workup.machines[machine.slug]
    outfit = workup.outfits[0]
    by_id = {each.id: each for each in workup.fills}
    return MemorySheet(
        cautions=sheet_cautions(desk, machine, "memory"),
        memory=memory,
        refresh=refresh_view(desk, machine),
        delivered=outfit.fill,
        fills=[
            FillRow(fill=fill, figures=by_id[fill.id], delivered=fill.id == machine.configurations[0].fill)
            for fill in memory.fills
        ],
        bits=[BitView(number=bit, mask=f"{1 << bit:02X}") for bit in range(BITS_A_BYTE)],
        banks=[_bank_row(desk, memory, bank) for bank in memory.banks],
        codes=fault_codes_view(desk, machine),
        map=outfit.map,
        drawing=memory_map(outfit.map, "map") if outfit.map else None,
        map_rows=list(_map_rows(desk, outfit.map)) if outfit.map else [],
    )


def _bank_row(desk: Desk, memory: Memory, bank: Bank) -> BankRow:
    return BankRow(
        bank=bank,
        cells=[
            ChipCell(part=desk.part(each.ref), span=each.last - each.first + 1, bits=_span(each))
            for each in chip_bits(bank)
        ],
        parity=[desk.part(ref) for ref in bank.parity],
        own_parity=with_own_parity(memory, bank),
    )


def _span(chip: ChipBits) -> str:
    return f"bits {chip.first} to {chip.last}" if chip.last > chip.first else ""


def _map_rows(desk: Desk, figures: MapFigures) -> Iterator[MapRow]:
    """Areas and the gaps between them, from the lowest address up."""
    stretches = [(area, False) for area in figures.areas] + [(gap, True) for gap in figures.gaps]
    for area, gap in sorted(stretches, key=lambda each: (int(each[0].first, 16), int(each[0].last, 16))):
        owner = None
        if area.owner:
            owner = Markup('<a href="{}">{}</a>').format(
                desk.thing("card", area.owner), desk.shelf.name_of("card", area.owner)
            )
        prefix = f"{area.owner}/" if area.owner else ""
        few = area.parts if len(area.parts) <= 4 else ()
        yield MapRow(area=area, gap=gap, owner=owner, parts=[desk.part(prefix + name) for name in few])


def slots_sheet(desk: Desk, machine: Machine) -> SlotsSheet:
    """What the sheet says."""
    filled = {each.slot: each.holds for each in machine.configurations[0].slots}
    rows = []
    for each in machine.slots:
        slug = filled.get(each.slot)
        card = desk.shelf.collection.cards[slug] if slug else None
        rows.append(
            SlotRow(
                slot=each.slot,
                part=desk.part(each.slot),
                name=card.name if card else "",
                way=desk.thing("card", card.slug) if card else None,
                of=("card", card.slug) if card else None,
                summary=card.summary if card else "",
            )
        )
    bus = desk.shelf.collection.buses[machine.bus] if machine.bus else None
    return SlotsSheet(
        cautions=sheet_cautions(desk, machine, "slots"),
        bus=bus.name if bus else None,
        bus_way=desk.thing("bus", bus.slug) if bus else None,
        rows=rows,
        filled=len(filled),
    )


def switches_sheet(desk: Desk, machine: Machine) -> SwitchesSheet:
    """What the sheet says."""
    return SwitchesSheet(
        cautions=sheet_cautions(desk, machine, "switches"),
        rows=[SwitchRow(switch=each, part=desk.part(each.part)) for each in machine.switches],
    )


def drives_sheet(desk: Desk, machine: Machine) -> DrivesSheet:
    """What the sheet says: the drives as delivered, and the bays that are free."""
    bays = {bay.id: bay for bay in machine.bays}
    put = machine.configurations[0].bays
    where: dict[str, list[str]] = {}
    for each in put:
        where.setdefault(each.holds, []).append(bays[each.bay].name)
    return DrivesSheet(
        cautions=sheet_cautions(desk, machine, "drives"),
        drives=[
            drive_view(desk, desk.shelf.collection.drives[slug], "; ".join(names)) for slug, names in where.items()
        ],
        free=[bay for bay in machine.bays if bay.id not in {each.bay for each in put}],
        media=list(_media(desk, machine)),
    )


def _media(desk: Desk, machine: Machine) -> Iterator[MediumRow]:
    """Every medium that one of its drives takes, in any outfit."""
    held = {bay.holds for outfit in machine.configurations for bay in outfit.bays}
    for medium in desk.shelf.collection.media.values():
        drives = [desk.shelf.collection.drives[slug].name for slug in medium.drives if slug in held]
        if drives:
            yield MediumRow(medium=medium, way=desk.thing("medium", medium.slug), drives=drives)


def sources_sheet(desk: Desk, machine: Machine) -> SourcesSheet:
    """What the sheet says: the machine's own sources, then those of what it holds."""
    rows: list[tuple[str, Thing, SourceEntry]]
    rows = [(machine.name, ("machine", machine.slug), source) for source in machine.sources]
    for kind, slug in dict.fromkeys((kind, slug) for _, kind, slug in held_things(desk, machine)):
        thing = desk.shelf.thing(kind, slug)
        rows += [(thing.name, (kind, slug), source) for source in thing.sources]
    if machine.display:
        screen = desk.shelf.collection.displays[machine.display]
        rows += [(screen.name, ("display", screen.slug), source) for source in screen.sources]
    for row in _media(desk, machine):
        rows += [(row.medium.name, ("medium", row.medium.slug), source) for source in row.medium.sources]
    return SourcesSheet(machine=machine, rows=rows, data=urls.machine_data(machine.slug))
