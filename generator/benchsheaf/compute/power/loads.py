"""An outfit measured against its supply: running, starting, and the least that the supply needs."""

from collections.abc import Iterable, Sequence
from decimal import Decimal

from benchsheaf.compute.laws import twelve
from benchsheaf.compute.power.figures import Load, LoadShare, PowerFigures, RailFigures
from benchsheaf.compute.power.resistors import least_load_figures, low_end, resistor_figures
from benchsheaf.compute.power.starts import LoadRows, most_drawn, seconds_over, start_moments, start_sum
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
    cold_start_w = sum((each.cold_start_a * volts[each.rail] for each in figures), Decimal(0))
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
        cold_start_w=twelve(cold_start_w),
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
    start = max(start_sum(own, late=False), start_sum(own, late=True)) + steady
    own_least = sum((_at_rest(draw) for _, draw in own), Decimal(0))
    least = own_least + sum((low_end(rail) / ohm for ohm in put_on), Decimal(0))
    over_for = seconds_over(own, output.most_a - steady)
    asked = output.least_a or Decimal(0)
    return RailFigures(
        rail=rail.name,
        run_a=twelve(run),
        cold_a=twelve(run - warm),
        start_a=twelve(start),
        cold_start_a=twelve(start - warm),
        least_a=twelve(least),
        run_w=twelve(run * abs(rail.nominal_v)),
        most_a=output.most_a,
        run_share=twelve(run / output.most_a),
        start_share=twelve(start / output.most_a),
        headroom_a=twelve(output.most_a - run),
        peak_share=twelve(start / output.peak_a) if output.peak_a else None,
        over_for_s=over_for,
        carried=_carried(output, run, start, over_for),
        least_met=asked <= least,
        own_least_a=twelve(own_least),
        met_by=_met_by(asked, own_least, least),
        wanted=least_load_figures(asked, least, rail),
        moments=start_moments(own, steady),
        shares=_shares(own),
    )


def _met_by(asked: Decimal, own: Decimal, least: Decimal) -> str:
    if not asked:
        return "unneeded"
    return "itself" if own >= asked else "resistor" if least >= asked else "nothing"


def _shares(own: LoadRows) -> tuple[LoadShare, ...]:
    return tuple(LoadShare(name=load.name, run_a=draw.run_a, start_a=most_drawn(draw)) for load, draw in own)


def _at_rest(draw: Draw) -> Decimal:
    """What a load is sure to take: nothing where a thermal switch decides."""
    if draw.warm:
        return Decimal(0)
    return draw.run_a if draw.rest_a is None else min(draw.rest_a, draw.run_a)


def _carried(output: Output, run: Decimal, start: Decimal, over_for: Decimal | None) -> str:
    if run > output.most_a or start > max(output.most_a, output.peak_a or Decimal(0)):
        return "no"
    if over_for is None or output.peak_for_s is None:
        return "yes" if start <= output.most_a else "unknown"
    return "yes" if over_for <= output.peak_for_s else "no"
