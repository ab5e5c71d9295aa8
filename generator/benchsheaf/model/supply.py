"""Supplies: what they give, what they need, and the capacitor that stays charged."""

from dataclasses import dataclass
from decimal import Decimal

from benchsheaf.model.bench import Check, Fault, Procedure
from benchsheaf.model.boards import Described, Draw, Extent, Part, WeakPart
from benchsheaf.model.cautions import CautionHere
from benchsheaf.model.sources import SourceEntry


@dataclass(frozen=True, kw_only=True, slots=True)
class MainsRange(Described):
    """What a supply may be plugged into."""

    low_v: Decimal
    high_v: Decimal


@dataclass(frozen=True, kw_only=True, slots=True)
class Output(Described):
    """One rail that a supply gives."""

    rail: str
    most_a: Decimal
    peak_a: Decimal | None = None
    peak_for_s: Decimal | None = None
    least_a: Decimal | None = None
    choke_ripple_share: Decimal | None = None
    smoothed_by: tuple[str, ...] = ()


@dataclass(frozen=True, kw_only=True, slots=True)
class Discharge(Described):
    """The insulated resistor to drain a reservoir with."""

    resistance_ohm: Decimal
    bears_w: Decimal


@dataclass(frozen=True, kw_only=True, slots=True)
class Reservoir(Described):
    """The capacitor that holds its charge when the plug is out."""

    part: str
    capacitance_f: Decimal
    charged_v: Decimal
    wait_minutes: Decimal
    discharge: Discharge
    bleeder_ohm: Decimal | None = None
    bleeder_part: str | None = None


@dataclass(frozen=True, kw_only=True, slots=True)
class Ready(Described):
    """When the READY line rises after the rails."""

    rises_after_s: Decimal
    rises_before_s: Decimal


@dataclass(frozen=True, kw_only=True, slots=True)
class Fan(Described):
    """How a supply is cooled."""

    part: str
    note: str
    above_celsius: Decimal | None = None


@dataclass(frozen=True, kw_only=True, slots=True)
class Supply:
    """A supply, an adapter or a pack."""

    slug: str
    name: str
    summary: str
    mains: MainsRange
    outputs: tuple[Output, ...]
    together_w: Decimal
    cautions: tuple[CautionHere, ...] = ()
    sources: tuple[SourceEntry, ...] = ()
    reservoir: Reservoir | None = None
    ready: Ready | None = None
    fan: Fan | None = None
    draws: tuple[Draw, ...] = ()
    size: Extent | None = None
    parts: tuple[Part, ...] = ()
    weak_parts: tuple[WeakPart, ...] = ()
    checks: tuple[Check, ...] = ()
    faults: tuple[Fault, ...] = ()
    procedures: tuple[Procedure, ...] = ()
