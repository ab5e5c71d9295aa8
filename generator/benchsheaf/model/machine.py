"""A machine: what it is, its rails, its boards, what is plugged in."""

from dataclasses import dataclass
from decimal import Decimal

from benchsheaf.model.bench import Check, Fault, Procedure, Removal, ShowsHere, Symptom
from benchsheaf.model.boards import Board, Described, Ohms, Volts, WeakPart
from benchsheaf.model.cautions import CautionHere
from benchsheaf.model.memory import Memory, Setting
from benchsheaf.model.plugs import Connector, Switch
from benchsheaf.model.signals import (
    Beep,
    Clock,
    Image,
    LineUse,
    Mark,
    Message,
    PortRange,
    Switching,
    Tone,
    View,
)
from benchsheaf.model.sources import SourceEntry


@dataclass(frozen=True, kw_only=True, slots=True)
class Processor(Described):
    """What does the work."""

    word_bits: int
    part: str | None = None
    clock: str | None = None


@dataclass(frozen=True, kw_only=True, slots=True)
class Mains(Described):
    """What the plug may be put into."""

    nominal_v: Decimal
    low_v: Decimal
    high_v: Decimal
    earth_below_ohm: Decimal | None = None
    fuse: str | None = None


@dataclass(frozen=True, kw_only=True, slots=True)
class ToGround(Described):
    """What a meter reads from a rail to ground, everything unplugged."""

    usual: Ohms
    doubtful_below_ohm: Decimal
    no_power_below_ohm: Decimal


@dataclass(frozen=True, kw_only=True, slots=True)
class Rail(Described):
    """One voltage of the machine."""

    name: str
    nominal_v: Decimal
    window: Volts
    ripple_v: Decimal | None = None
    colour: str | None = None
    to_ground: ToGround | None = None


@dataclass(frozen=True, kw_only=True, slots=True)
class Measuring(Described):
    """How readings on this machine are taken."""

    ground: str
    condition: str
    far: str | None = None


@dataclass(frozen=True, kw_only=True, slots=True)
class Slot(Described):
    """Where a card goes."""

    slot: str


@dataclass(frozen=True, kw_only=True, slots=True)
class Bay(Described):
    """Where a drive goes."""

    id: str
    name: str
    takes: str


@dataclass(frozen=True, kw_only=True, slots=True)
class SlotFilled(Described):
    """A card in a slot."""

    slot: str
    holds: str


@dataclass(frozen=True, kw_only=True, slots=True)
class BayFilled(Described):
    """A drive in a bay."""

    bay: str
    holds: str
    starts: str | None = None


@dataclass(frozen=True, kw_only=True, slots=True)
class DummyLoad(Described):
    """A resistor put on a rail so that the supply runs."""

    rail: str
    resistance_ohm: Decimal
    bears_w: Decimal
    between: str


@dataclass(frozen=True, kw_only=True, slots=True)
class Configuration(Described):
    """What is plugged in: an outfit."""

    id: str
    name: str
    before: str | None = None
    boards: tuple[str, ...] = ()
    fill: str | None = None
    slots: tuple[SlotFilled, ...] = ()
    bays: tuple[BayFilled, ...] = ()
    keyboard: str | None = None
    loads: tuple[DummyLoad, ...] = ()
    rests: tuple[str, ...] = ()
    set: tuple[Setting, ...] = ()
    plug: str | None = None
    expect: str | None = None
    go: str | None = None
    stop: str | None = None


@dataclass(frozen=True, kw_only=True, slots=True)
class Machine:
    """A machine."""

    slug: str
    name: str
    summary: str
    built: int
    supply: str
    mains: Mains
    rails: tuple[Rail, ...]
    configurations: tuple[Configuration, ...]
    bus: str | None = None
    sources: tuple[SourceEntry, ...] = ()
    processor: Processor | None = None
    cautions: tuple[CautionHere, ...] = ()
    measuring: Measuring | None = None
    connectors: tuple[Connector, ...] = ()
    boards: tuple[Board, ...] = ()
    weak_parts: tuple[WeakPart, ...] = ()
    memory: Memory | None = None
    slots: tuple[Slot, ...] = ()
    bays: tuple[Bay, ...] = ()
    switches: tuple[Switch, ...] = ()
    worth: int | None = None
    switching: Switching | None = None
    marks: tuple[Mark, ...] = ()
    views: tuple[View, ...] = ()
    display: str | None = None
    clocks: tuple[Clock, ...] = ()
    ports: tuple[PortRange, ...] = ()
    lines: tuple[LineUse, ...] = ()
    firmware: tuple[Image, ...] = ()
    tones: tuple[Tone, ...] = ()
    beeps: tuple[Beep, ...] = ()
    silence: str | None = None
    messages: tuple[Message, ...] = ()
    removals: tuple[Removal, ...] = ()
    before_power: tuple[str, ...] = ()
    checks: tuple[Check, ...] = ()
    faults: tuple[Fault, ...] = ()
    shows_here: tuple[ShowsHere, ...] = ()
    symptoms: tuple[Symptom, ...] = ()
    procedures: tuple[Procedure, ...] = ()
