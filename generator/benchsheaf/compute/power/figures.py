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
    """A load resistor, or several like ones: what they draw at the rail's low end and must bear at its high end."""

    rail: str
    resistance_ohm: Decimal  # of all together
    pieces: int
    joined: str  # alone, parallel, series
    piece_ohm: Decimal
    nominal_a: Decimal
    nominal_w: Decimal
    least_a: Decimal = rounded_down()
    spread_a: Decimal = rounded_down()  # the same where each lies above its print by all of its spread
    worst_w: Decimal = rounded_up()
    piece_w: Decimal = rounded_up()  # the worst of one of them
    body_w: Decimal | None  # the next body that bears twice the worst of one; None where none is sold


@dataclass(frozen=True, kw_only=True, slots=True)
class LeastLoadFigures:
    """What a rail lacks to its least load, and the resistors that give it."""

    rail: str
    least_a: Decimal
    sure_a: Decimal = rounded_down()  # what it has without them
    missing_a: Decimal = rounded_up()
    at_most_ohm: Decimal = rounded_down()
    chosen: ResistorFigures
    unmeasured: ResistorFigures  # what is enough whatever its spread, so that nobody needs to measure it


@dataclass(frozen=True, kw_only=True, slots=True)
class StartMoment:
    """What a rail gives for a while as things start; seconds count from the beginning of its phase.

    First all start but the late ones; these start when the others run. A start of unknown end is taken to last.
    """

    phase: str  # first, late
    from_s: Decimal
    until_s: Decimal | None  # None: to the end of the phase
    sum_a: Decimal = rounded_up()


@dataclass(frozen=True, kw_only=True, slots=True)
class RailFigures:
    """One rail under one outfit."""

    rail: str
    run_a: Decimal = rounded_up()
    cold_a: Decimal = rounded_up()  # running, without what a thermal switch adds
    start_a: Decimal = rounded_up()
    cold_start_a: Decimal = rounded_up()
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
    own_least_a: Decimal = rounded_down()  # what is sure without any resistor
    met_by: str  # itself, resistor, nothing; unneeded where there is no least load
    wanted: LeastLoadFigures | None  # what would meet the least load, where it is not met
    moments: tuple[StartMoment, ...]  # empty where nothing takes more as it starts
    shares: tuple[LoadShare, ...]


@dataclass(frozen=True, kw_only=True, slots=True)
class PowerFigures:
    """A supply under one outfit."""

    rails: tuple[RailFigures, ...]
    resistors: tuple[ResistorFigures, ...]
    run_w: Decimal = rounded_up()
    cold_w: Decimal = rounded_up()
    start_w: Decimal = rounded_up()
    cold_start_w: Decimal = rounded_up()
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
    smallest_loads: tuple[LeastLoadFigures, ...]
