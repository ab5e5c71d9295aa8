"""Memory: chips, banks, the ways to fill them, and what else stands in the map."""

from dataclasses import dataclass
from decimal import Decimal

from benchsheaf.model.boards import Described, Draw


@dataclass(frozen=True, kw_only=True, slots=True)
class MemoryChip(Described):
    """A kind of memory chip."""

    id: str
    holds_bits: int
    width_bits: int
    draws: tuple[Draw, ...] = ()


@dataclass(frozen=True, kw_only=True, slots=True)
class Bank(Described):
    """A row of chips that works as one byte lane."""

    id: str
    lane: int
    bits: tuple[str, ...]
    parity: tuple[str, ...] = ()
    shown: str | None = None

    @property
    def on_screen(self) -> str:
        """How messages, and pages, write it."""
        return self.shown or self.id.upper()


@dataclass(frozen=True, kw_only=True, slots=True)
class Setting(Described):
    """A switch or jumper and where it stands."""

    switch: str
    to: str


@dataclass(frozen=True, kw_only=True, slots=True)
class FillGroup(Described):
    """Banks that are filled together with one kind of chip."""

    banks: tuple[str, ...]
    chip: str
    base: str


@dataclass(frozen=True, kw_only=True, slots=True)
class Fill(Described):
    """One way of filling the banks."""

    id: str
    name: str
    groups: tuple[FillGroup, ...]
    set: tuple[Setting, ...] = ()


@dataclass(frozen=True, kw_only=True, slots=True)
class Area(Described):
    """Something that answers at its own addresses."""

    id: str
    name: str
    base: str
    size_bytes: int
    parts: tuple[str, ...] = ()


@dataclass(frozen=True, kw_only=True, slots=True)
class Refresh(Described):
    """How memory chips are kept alive."""

    clock: str
    every: int
    rows: int
    within_s: Decimal


@dataclass(frozen=True, kw_only=True, slots=True)
class Memory(Described):
    """The memory of a machine."""

    word_bits: int
    address_bits: int
    parity: str
    chips: tuple[MemoryChip, ...]
    banks: tuple[Bank, ...]
    fills: tuple[Fill, ...]
    refresh: Refresh | None = None
    areas: tuple[Area, ...] = ()
