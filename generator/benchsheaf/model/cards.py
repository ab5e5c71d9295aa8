"""Cards, keyboards and the buses between."""

from dataclasses import dataclass

from benchsheaf.model.boards import Draw, Extent, Part, Pin, WeakPart
from benchsheaf.model.cautions import CautionHere
from benchsheaf.model.memory import Area
from benchsheaf.model.sources import SourceEntry


@dataclass(frozen=True, kw_only=True, slots=True)
class Card:
    """A card that goes into a slot."""

    slug: str
    name: str
    summary: str
    bus: str
    draws: tuple[Draw, ...]
    cautions: tuple[CautionHere, ...] = ()
    sources: tuple[SourceEntry, ...] = ()
    size: Extent | None = None
    areas: tuple[Area, ...] = ()
    parts: tuple[Part, ...] = ()
    weak_parts: tuple[WeakPart, ...] = ()


@dataclass(frozen=True, kw_only=True, slots=True)
class Keyboard:
    """A keyboard with its lead."""

    slug: str
    name: str
    summary: str
    keys: int
    draws: tuple[Draw, ...]
    cautions: tuple[CautionHere, ...] = ()
    sources: tuple[SourceEntry, ...] = ()
    lead: tuple[Pin, ...] = ()
    weak_parts: tuple[WeakPart, ...] = ()


@dataclass(frozen=True, kw_only=True, slots=True)
class Bus:
    """The contacts and signals that cards speak."""

    slug: str
    name: str
    summary: str
    sources: tuple[SourceEntry, ...] = ()
