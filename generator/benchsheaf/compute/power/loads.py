"""An outfit measured against its supply: running, starting, and the least that the supply needs."""

from collections.abc import Iterable, Sequence
from decimal import Decimal

from benchsheaf.compute.laws import twelve
from benchsheaf.compute.power.figures import Load, LoadShare, PowerFigures, RailFigures
from benchsheaf.compute.power.resistors import low_end, resistor_figures, resistor_for
from benchsheaf.model.boards import Draw
from benchsheaf.model.machine import DummyLoad, Rail
from benchsheaf.model.supply import Output, Supply


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
    least += sum((low_end(rail) / ohm for ohm in put_on), Decimal(0))
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
        shares=tuple(LoadShare(name=load.name, run_a=draw.run_a, start_a=_most(draw)) for load, draw in own),
    )


def _most(draw: Draw) -> Decimal:
    return max(draw.run_a, draw.start_a or Decimal(0))


def _at_rest(draw: Draw) -> Decimal:
    """What a load is sure to take: nothing where a thermal switch decides."""
    if draw.warm:
        return Decimal(0)
    return draw.run_a if draw.rest_a is None else min(draw.rest_a, draw.run_a)


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
