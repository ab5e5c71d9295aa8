"""Cards, keyboards and the buses between."""

from dataclasses import dataclass
from decimal import Decimal

from benchsheaf.model.bench import Check, Fault, Procedure
from benchsheaf.model.boards import Draw, Extent, Part, Pin, WeakPart
from benchsheaf.model.cautions import CautionHere
from benchsheaf.model.memory import Area
from benchsheaf.model.plugs import Connector, ContactRow, Switch
from benchsheaf.model.signals import BusLine, Image, LineUse, Mode, PortRange, SettingUse
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
    ports: tuple[PortRange, ...] = ()
    lines: tuple[LineUse, ...] = ()
    by_setting: tuple[SettingUse, ...] = ()
    switches: tuple[Switch, ...] = ()
    firmware: tuple[Image, ...] = ()
    modes: tuple[Mode, ...] = ()
    sockets: tuple[Connector, ...] = ()
    checks: tuple[Check, ...] = ()
    faults: tuple[Fault, ...] = ()
    procedures: tuple[Procedure, ...] = ()


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
    checks: tuple[Check, ...] = ()
    faults: tuple[Fault, ...] = ()
    procedures: tuple[Procedure, ...] = ()


@dataclass(frozen=True, kw_only=True, slots=True)
class Bus:
    """The contacts and signals that cards speak."""

    slug: str
    name: str
    summary: str
    sources: tuple[SourceEntry, ...] = ()
    clock_hz: Decimal | None = None
    ports: int | None = None
    lines: tuple[BusLine, ...] = ()
    rows: tuple[ContactRow, ...] = ()
    seen: str | None = None
