"""How much memory a filling gives, which chips that takes, and what stands at which address."""

from collections.abc import Iterable
from dataclasses import dataclass
from sys import intern

from benchsheaf.model.memory import Area, Bank, Fill, Memory
from benchsheaf.standards import BITS_A_BYTE


@dataclass(frozen=True, kw_only=True, slots=True)
class AreaFigures:
    """Something in the map, from its first to its last address."""

    name: str
    owner: str | None  # the slug of the card that it belongs to; None: the machine itself
    first: str
    last: str
    size_bytes: int
    parts: tuple[str, ...] = ()


@dataclass(frozen=True, kw_only=True, slots=True)
class ChipBits:
    """A chip of a bank and the bits of the byte that it gives."""

    ref: str
    first: int
    last: int


@dataclass(frozen=True, kw_only=True, slots=True)
class FillFigures:
    """One way of filling the banks."""

    id: str
    total_bytes: int
    chips: int
    parity_chips: int
    areas: tuple[AreaFigures, ...]


@dataclass(frozen=True, kw_only=True, slots=True)
class Overlap:
    """Addresses that two claim."""

    one: str
    other: str
    first: str
    last: str
    size_bytes: int


@dataclass(frozen=True, kw_only=True, slots=True)
class MapFigures:
    """All that answers, in order of address, and what does not fit together."""

    last: str
    areas: tuple[AreaFigures, ...]
    gaps: tuple[AreaFigures, ...]
    overlaps: tuple[Overlap, ...]
    beyond: tuple[str, ...]  # names of areas that go beyond the last address


def address(number: int, address_bits: int) -> str:
    """An address in hexadecimal with as many digits as the address lines need.

    Errors: ValueError for a number below zero.
    """
    if number < 0:
        raise ValueError(f"an address is not below zero: {number}")
    return intern(f"{number:0{-(-address_bits // 4)}X}")  # one text for all outfits that have it


def bank_bytes(holds_bits: int, width_bits: int) -> int:
    """Bytes of a bank, which is one byte wide: as many as a chip has addresses.

    Units: bits in all and bits at once of one chip in; bytes out.
    Errors: ZeroDivisionError for a chip without width.
    """
    return holds_bits // width_bits


def chip_bits(bank: Bank) -> tuple[ChipBits, ...]:
    """Which bits of the byte each chip of a bank gives: like chips share it evenly, bit 0 first.

    A single chip gives them all, also where it is nine bits wide: the ninth is its own parity bit.
    """
    each = max(1, BITS_A_BYTE // max(1, len(bank.bits)))
    return tuple(ChipBits(ref=ref, first=at * each, last=at * each + each - 1) for at, ref in enumerate(bank.bits))


def with_own_parity(memory: Memory, bank: Bank) -> bool:
    """Whether some filling puts chips into a bank that carry a parity bit of their own."""
    kinds = {chip.id: chip.width_bits for chip in memory.chips}
    widths = {kinds[group.chip] for fill in memory.fills for group in fill.groups if bank.id in group.banks}
    return any(len(bank.bits) * width == BITS_A_BYTE + 1 for width in widths)


def fill_figures(memory: Memory, fill: Fill) -> FillFigures:
    """What one filling gives: bytes, chips, and where its groups stand.

    Errors: KeyError if a bank or chip is not known; links have seen to that.
    """
    banks = {bank.id: bank for bank in memory.banks}
    kinds = {chip.id: chip for chip in memory.chips}
    areas = []
    chips = parity = 0
    for group in fill.groups:
        kind = kinds[group.chip]
        size = bank_bytes(kind.holds_bits, kind.width_bits) * len(group.banks)
        names = " and ".join(banks[name].on_screen for name in group.banks)
        parts = tuple(ref for name in group.banks for ref in banks[name].bits + banks[name].parity)
        areas.append(_area(f"Store {names}", None, int(group.base, 16), size, memory.address_bits, parts))
        chips += len(parts)
        parity += sum(len(banks[name].parity) for name in group.banks)
    total = sum(area.size_bytes for area in areas)
    return FillFigures(id=fill.id, total_bytes=total, chips=chips, parity_chips=parity, areas=tuple(areas))


def _area(name: str, owner: str | None, first: int, size: int, bits: int, parts: tuple[str, ...]) -> AreaFigures:
    return AreaFigures(
        name=name,
        owner=owner,
        first=address(first, bits),
        last=address(first + size - 1, bits),
        size_bytes=size,
        parts=parts,
    )


def area_figures(area: Area, owner: str | None, address_bits: int) -> AreaFigures:
    """An area of a description with its last address."""
    return _area(area.name, owner, int(area.base, 16), area.size_bytes, address_bits, area.parts)


def map_figures(address_bits: int, areas: Iterable[AreaFigures]) -> MapFigures:
    """All areas in order of address, the gaps between, and what is claimed twice or lies beyond.

    Units: number of address lines in; addresses as hexadecimal text, sizes in bytes out.
    """
    ordered = sorted(areas, key=lambda area: (int(area.first, 16), int(area.last, 16), area.name))
    end = 2**address_bits
    gaps = []
    reached = 0
    for area in ordered:
        first = min(int(area.first, 16), end)
        if first > reached:
            gaps.append(_area("empty", None, reached, first - reached, address_bits, ()))
        reached = max(reached, int(area.last, 16) + 1)
    if reached < end:
        gaps.append(_area("empty", None, reached, end - reached, address_bits, ()))
    return MapFigures(
        last=address(end - 1, address_bits),
        areas=tuple(ordered),
        gaps=tuple(gaps),
        overlaps=_overlaps(ordered, address_bits),
        beyond=tuple(area.name for area in ordered if int(area.last, 16) >= end),
    )


def _overlaps(ordered: list[AreaFigures], address_bits: int) -> tuple[Overlap, ...]:
    found = []
    for index, one in enumerate(ordered):
        for other in ordered[index + 1 :]:
            first = int(other.first, 16)
            last = min(int(one.last, 16), int(other.last, 16))
            if first > int(one.last, 16):
                break
            found.append(
                Overlap(
                    one=one.name,
                    other=other.name,
                    first=address(first, address_bits),
                    last=address(last, address_bits),
                    size_bytes=last - first + 1,
                )
            )
    return tuple(found)
