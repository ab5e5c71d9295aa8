"""The memory sheet: how much is fitted, which chip is which bit, and what answers at which address."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from benchsheaf.compute.memory_map import AreaFigures, ChipBits, FillFigures, MapFigures, chip_bits, with_own_parity
from benchsheaf.compute.removal import RemovalFigures
from benchsheaf.drawing.memory_map import memory_map
from benchsheaf.drawing.picture import Both
from benchsheaf.markup import Markup
from benchsheaf.model.machine import Machine
from benchsheaf.model.memory import Bank, Fill, Memory
from benchsheaf.pages.bench.ways import Led, machine_ways
from benchsheaf.pages.fault_codes import FaultCodesView, fault_codes_view
from benchsheaf.pages.glance import sheet_cautions
from benchsheaf.pages.refresh import RefreshView, refresh_view
from benchsheaf.pages.settings import setting_words
from benchsheaf.pages.shelf import Desk
from benchsheaf.pages.views import CautionView
from benchsheaf.standards import BITS_A_BYTE


@dataclass(frozen=True, kw_only=True, slots=True)
class FillRow:
    """One way of filling the banks."""

    fill: Fill
    figures: FillFigures
    delivered: bool
    settings: Sequence[Markup]


@dataclass(frozen=True, kw_only=True, slots=True)
class BitView:
    """A bit and what an error message shows for it."""

    number: int
    mask: str


@dataclass(frozen=True, kw_only=True, slots=True)
class ChipCell:
    """A chip under the bits that it gives; `span` is how many columns, `bits` says which where it is more than one.

    `label` names the bits with what a message shows for each, for where there are no columns.
    """

    label: str
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
class ReachedBy:
    """What must come off before the chips can be pulled."""

    led: Led
    figures: RemovalFigures


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
    reached: Sequence[ReachedBy]
    codes: FaultCodesView | None
    map: MapFigures | None
    drawing: Both | None
    map_rows: Sequence[MapRow]


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
            FillRow(
                fill=fill,
                figures=by_id[fill.id],
                delivered=fill.id == machine.configurations[0].fill,
                settings=[setting_words(desk, each) for each in fill.set],
            )
            for fill in memory.fills
        ],
        bits=[BitView(number=bit, mask=_mask(bit)) for bit in range(BITS_A_BYTE)],
        banks=[_bank_row(desk, memory, bank) for bank in memory.banks],
        reached=_reached(desk, machine, memory),
        codes=fault_codes_view(desk, machine),
        map=outfit.map,
        drawing=memory_map(outfit.map, "map") if outfit.map else None,
        map_rows=list(_map_rows(desk, outfit.map)) if outfit.map else [],
    )


def _bank_row(desk: Desk, memory: Memory, bank: Bank) -> BankRow:
    return BankRow(
        bank=bank,
        cells=[
            ChipCell(label=_label(each), part=desk.part(each.ref), span=each.last - each.first + 1, bits=_span(each))
            for each in chip_bits(bank)
        ],
        parity=[desk.part(ref) for ref in bank.parity],
        own_parity=with_own_parity(memory, bank),
    )


def _label(chip: ChipBits) -> str:
    masks = ", ".join(_mask(bit) for bit in range(chip.first, chip.last + 1))
    return f"{_span(chip) or f'bit {chip.first}'} ({masks})"


def _mask(bit: int) -> str:
    return f"{1 << bit:02X}"


def _reached(desk: Desk, machine: Machine, memory: Memory) -> list[ReachedBy]:
    chips = {ref for bank in memory.banks for ref in [*(each.ref for each in chip_bits(bank)), *bank.parity]}
    ways = machine_ways(desk, machine)
    figures = {each.id: each for each in desk.shelf.workup.machines[machine.slug].bench.removals}
    return [
        ReachedBy(led=ways.removals([each.id])[0], figures=figures[each.id])
        for each in machine.removals
        if chips & set(each.frees)
    ]


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
