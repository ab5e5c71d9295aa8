"""What is computed about power, as records."""

from dataclasses import dataclass
from decimal import Decimal

from benchsheaf.compute.laws import rounded_down, rounded_up
from benchsheaf.model.boards import Draw


@dataclass(frozen=True, kw_only=True, slots=True)
class Load:
    """Something plugged in, with what it draws; `slug` and `kind` say what it is where it has a page."""

    name: str
    draws: tuple[Draw, ...]
    kind: str | None = None
    slug: str | None = None
    late: bool = False  # waits with its start until the others are at speed


@dataclass(frozen=True, kw_only=True, slots=True)
class LoadShare:
    """What one load takes from one rail."""

    name: str
    run_a: Decimal
    start_a: Decimal


@dataclass(frozen=True, kw_only=True, slots=True)
class ResistorFigures:
    """A load resistor: what it draws at the rail's low end and must bear at its high end."""

    rail: str
    resistance_ohm: Decimal
    nominal_a: Decimal
    nominal_w: Decimal
    least_a: Decimal = rounded_down()
    worst_w: Decimal = rounded_up()
    body_w: Decimal | None  # the next body that bears twice the worst; None where none is sold


@dataclass(frozen=True, kw_only=True, slots=True)
class RailFigures:
    """One rail under one outfit."""

    rail: str
    run_a: Decimal = rounded_up()
    cold_a: Decimal = rounded_up()  # running, without what a thermal switch adds
    start_a: Decimal = rounded_up()
    least_a: Decimal = rounded_down()
    run_w: Decimal = rounded_up()
    most_a: Decimal
    run_share: Decimal
    start_share: Decimal
    headroom_a: Decimal = rounded_down()
    peak_share: Decimal | None
    over_for_s: Decimal | None = rounded_up()  # how long starting stays over the continuous limit; None: not known
    carried: str  # yes, no, unknown
    least_met: bool
    wanted: ResistorFigures | None  # what would meet the least load, where it is not met
    shares: tuple[LoadShare, ...]


@dataclass(frozen=True, kw_only=True, slots=True)
class PowerFigures:
    """A supply under one outfit."""

    rails: tuple[RailFigures, ...]
    resistors: tuple[ResistorFigures, ...]
    run_w: Decimal = rounded_up()
    cold_w: Decimal = rounded_up()
    start_w: Decimal = rounded_up()
    run_share: Decimal
    start_share: Decimal
    carried: str  # yes, no, unknown
    least_met: bool


@dataclass(frozen=True, kw_only=True, slots=True)
class GroundFigures:
    """What a reading at "no power below" would still leave in one part."""

    rail: str
    extra_w: Decimal


@dataclass(frozen=True, kw_only=True, slots=True)
class SupplyFigures:
    """What follows from a supply's plate alone."""

    sum_of_most_w: Decimal
    smallest_loads: tuple[ResistorFigures, ...]
