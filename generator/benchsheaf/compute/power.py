"""Whether a supply carries what is plugged in: rail by rail, running, starting, and the least that it needs."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from decimal import Decimal

from benchsheaf.compute.laws import heat, rounded_down, rounded_up, smallest_at_least, standard_at_most, twelve
from benchsheaf.model.boards import Draw
from benchsheaf.model.machine import DummyLoad, Rail
from benchsheaf.model.supply import Output, Supply
from benchsheaf.standards import BODY_OVER_LOAD, BODY_WATTS


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
    nominal_w: Decimal = rounded_up()
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
    extra_w: Decimal = rounded_up()


@dataclass(frozen=True, kw_only=True, slots=True)
class SupplyFigures:
    """What follows from a supply's plate alone."""

    sum_of_most_w: Decimal
    smallest_loads: tuple[ResistorFigures, ...]


def power_figures(
    supply: Supply, rails: Sequence[Rail], loads: Sequence[Load], resistors: Sequence[DummyLoad]
) -> PowerFigures:
    """The outfit measured against the supply.

    Units: as the endings of the names say. Least load counts loads at rest, the fan still, resistors at the low end.
    Errors: KeyError if an output names a rail that the machine lacks; links have seen to that.
    Source: sums; P = U I at nominal volts.
    """
    by_name = {rail.name: rail for rail in rails}
    figures = tuple(_rail(output, by_name[output.rail], loads, resistors) for output in supply.outputs)
    volts = {each.rail: abs(by_name[each.rail].nominal_v) for each in figures}
    run_w = sum((each.run_a * volts[each.rail] for each in figures), Decimal(0))
    cold_w = sum((each.cold_a * volts[each.rail] for each in figures), Decimal(0))
    start_w = sum((each.start_a * volts[each.rail] for each in figures), Decimal(0))
    verdicts = [each.carried for each in figures]
    if run_w > supply.together_w:
        verdicts.append("no")
    elif start_w > supply.together_w:
        verdicts.append("unknown")
    return PowerFigures(
        rails=figures,
        resistors=tuple(resistor_figures(each.resistance_ohm, by_name[each.rail]) for each in resistors),
        run_w=twelve(run_w),
        cold_w=twelve(cold_w),
        start_w=twelve(start_w),
        run_share=twelve(run_w / supply.together_w),
        start_share=twelve(start_w / supply.together_w),
        carried=_worst(verdicts),
        least_met=all(each.least_met for each in figures),
    )


def _worst(verdicts: Iterable[str]) -> str:
    found = set(verdicts)
    return "no" if "no" in found else "unknown" if "unknown" in found else "yes"


def _rail(output: Output, rail: Rail, loads: Sequence[Load], resistors: Sequence[DummyLoad]) -> RailFigures:
    own = [(load, draw) for load in loads for draw in load.draws if draw.rail == rail.name]
    put_on = [each.resistance_ohm for each in resistors if each.rail == rail.name]
    steady = sum((abs(rail.nominal_v) / ohm for ohm in put_on), Decimal(0))
    run = sum((draw.run_a for _, draw in own), steady)
    warm = sum((draw.run_a for _, draw in own if draw.warm), Decimal(0))
    start = max(_starting(own, late=False), _starting(own, late=True)) + steady
    least = sum((_at_rest(draw) for _, draw in own), Decimal(0))
    least += sum((_low_end(rail) / ohm for ohm in put_on), Decimal(0))
    over_for = _seconds_over(own, output.most_a - steady)
    wanted = (output.least_a or Decimal(0)) - least
    return RailFigures(
        rail=rail.name,
        run_a=twelve(run),
        cold_a=twelve(run - warm),
        start_a=twelve(start),
        least_a=twelve(least),
        run_w=twelve(run * abs(rail.nominal_v)),
        most_a=output.most_a,
        run_share=twelve(run / output.most_a),
        start_share=twelve(start / output.most_a),
        headroom_a=twelve(output.most_a - run),
        peak_share=twelve(start / output.peak_a) if output.peak_a else None,
        over_for_s=over_for,
        carried=_carried(output, run, start, over_for),
        least_met=wanted <= 0,
        wanted=resistor_for(wanted, rail) if wanted > 0 else None,
        shares=tuple(
            LoadShare(name=load.name, run_a=draw.run_a, start_a=_most(draw)) for load, draw in own
        ),
    )


def _most(draw: Draw) -> Decimal:
    return max(draw.run_a, draw.start_a or Decimal(0))


def _at_rest(draw: Draw) -> Decimal:
    """What a load is sure to take: nothing where a thermal switch decides."""
    if draw.warm:
        return Decimal(0)
    return draw.run_a if draw.rest_a is None else min(draw.rest_a, draw.run_a)


def _low_end(rail: Rail) -> Decimal:
    return min(abs(rail.window.low_v), abs(rail.window.high_v))


def _high_end(rail: Rail) -> Decimal:
    return max(abs(rail.window.low_v), abs(rail.window.high_v))


def _starting(own: Sequence[tuple[Load, Draw]], *, late: bool) -> Decimal:
    """The sum in one of the two phases of a start.

    First all but the late ones start, and these draw nothing yet; then the others run and the late ones start.
    """
    total = Decimal(0)
    for load, draw in own:
        starts = load.late == late
        total += _most(draw) if starts else (draw.run_a if late else Decimal(0))
    return total


def _seconds_over(own: Sequence[tuple[Load, Draw]], most_a: Decimal) -> Decimal | None:
    """How long the start stays over a limit; None where some start has no known end and keeps it over."""
    longest: Decimal = Decimal(0)
    for late in (False, True):
        sum_a = _starting(own, late=late)
        ends = sorted(
            (draw.start_for_s, _most(draw) - draw.run_a)
            for load, draw in own
            if load.late == late and draw.start_for_s is not None
        )
        seconds = Decimal(0)
        while sum_a > most_a:
            if not ends:
                return None
            seconds, relief = ends.pop(0)
            sum_a -= relief
        longest = max(longest, seconds)
    return longest


def _carried(output: Output, run: Decimal, start: Decimal, over_for: Decimal | None) -> str:
    if run > output.most_a or start > max(output.most_a, output.peak_a or Decimal(0)):
        return "no"
    if over_for is None or output.peak_for_s is None:
        return "yes" if start <= output.most_a else "unknown"
    return "yes" if over_for <= output.peak_for_s else "no"


def resistor_for(wanted_a: Decimal, rail: Rail) -> ResistorFigures:
    """The largest preferred resistor that draws a current even at the low end of the rail.

    Units: ampere in. Errors: ValueError unless the current is above zero. Source: Ohm's law; IEC 60063, E24.
    """
    if wanted_a <= 0:
        raise ValueError(f"a current must be above zero, not {wanted_a}")
    return resistor_figures(standard_at_most(_low_end(rail) / wanted_a), rail)


def resistor_figures(resistance_ohm: Decimal, rail: Rail) -> ResistorFigures:
    """What a resistor on a rail draws and must bear.

    Units: ohm in; ampere and watt out. Source: Ohm's law; the body from `standards`.
    """
    worst = heat(_high_end(rail), resistance_ohm)
    return ResistorFigures(
        rail=rail.name,
        resistance_ohm=resistance_ohm,
        nominal_a=twelve(abs(rail.nominal_v) / resistance_ohm),
        nominal_w=heat(rail.nominal_v, resistance_ohm),
        least_a=twelve(_low_end(rail) / resistance_ohm),
        worst_w=worst,
        body_w=smallest_at_least(worst * BODY_OVER_LOAD, BODY_WATTS),
    )


def ground_figures(rail: Rail) -> GroundFigures | None:
    """The extra power in one part at a reading of "no power below"; None where that is not given.

    Units: watt out. Source: V² (1/R − 1/usual), V the rail's nominal, usual its low end.
    """
    if rail.to_ground is None:
        return None
    reading, usual = rail.to_ground.no_power_below_ohm, rail.to_ground.usual.low_ohm
    return GroundFigures(rail=rail.name, extra_w=twelve(rail.nominal_v**2 * (1 / reading - 1 / usual)))


def supply_figures(supply: Supply, rails: Sequence[Rail]) -> SupplyFigures:
    """What follows from a supply alone: the sum of its maxima, and the resistors that it runs on by itself."""
    by_name = {rail.name: rail for rail in rails}
    return SupplyFigures(
        sum_of_most_w=twelve(sum((each.most_a * abs(by_name[each.rail].nominal_v) for each in supply.outputs), Decimal(0))),
        smallest_loads=tuple(
            resistor_for(each.least_a, by_name[each.rail]) for each in supply.outputs if each.least_a
        ),
    )
