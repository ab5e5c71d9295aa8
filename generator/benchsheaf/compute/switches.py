"""Switches as they stand, and the value that the machine reads from them."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from benchsheaf.model.memory import Setting
from benchsheaf.model.plugs import Switch

BITS_A_DIGIT_PAIR = 8


@dataclass(frozen=True, kw_only=True, slots=True)
class BitFigures:
    """One bit of a value that is read: what it is worth, whose it is, where that stands, and what it reads."""

    bit: int
    mask: str
    switch: str
    to: str
    reads: int


@dataclass(frozen=True, kw_only=True, slots=True)
class ReadBack:
    """The value at one port, the highest bit first; bits that no switch gives count as 0."""

    port: str
    value: str
    bits: tuple[BitFigures, ...]


def positions(switches: Iterable[Switch], settings: Iterable[Setting]) -> Mapping[str, str]:
    """Where each switch stands: as delivered, unless a setting names it; the last one counts."""
    stands = {each.switch: each.as_delivered for each in switches}
    stands |= {each.switch: each.to for each in settings if each.switch in stands}
    return stands


def values_read(switches: Iterable[Switch], settings: Iterable[Setting] = ()) -> tuple[ReadBack, ...]:
    """What the machine reads at each port that switches are read at, in hexadecimal, two digits for eight bits."""
    every = list(switches)
    stands = positions(every, settings)
    ports: dict[str, list[Switch]] = {}
    for each in every:
        if each.read_at is not None and each.bit is not None:
            ports.setdefault(each.read_at, []).append(each)
    return tuple(_read_back(port, ways, stands) for port, ways in ports.items())


def _read_back(port: str, ways: list[Switch], stands: Mapping[str, str]) -> ReadBack:
    digits = 2 * (max(each.bit or 0 for each in ways) // BITS_A_DIGIT_PAIR + 1)
    bits = tuple(
        BitFigures(
            bit=bit,
            mask=f"{1 << bit:0{digits}X}",
            switch=each.switch,
            to=stands[each.switch],
            reads=int(stands[each.switch] == each.reads_one),
        )
        for bit, each in sorted(((each.bit or 0, each) for each in ways), key=lambda pair: -pair[0])
    )
    total = 0
    for each in bits:
        total |= each.reads << each.bit
    return ReadBack(port=port, value=f"{total:0{digits}X}", bits=bits)
