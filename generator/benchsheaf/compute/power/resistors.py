"""Resistors on rails: what loads them, and what a low reading would leave in one part."""

from collections.abc import Sequence
from decimal import Decimal

from benchsheaf.compute.laws import heat, smallest_at_least, standard_at_most, twelve
from benchsheaf.compute.power.figures import GroundFigures, ResistorFigures, SupplyFigures
from benchsheaf.model.machine import Rail
from benchsheaf.model.supply import Supply
from benchsheaf.standards import BODY_OVER_LOAD, BODY_WATTS


def low_end(rail: Rail) -> Decimal:
    """The smallest magnitude of a rail's window, in volt."""
    return min(abs(rail.window.low_v), abs(rail.window.high_v))


def high_end(rail: Rail) -> Decimal:
    """The largest magnitude of a rail's window, in volt."""
    return max(abs(rail.window.low_v), abs(rail.window.high_v))


def resistor_for(wanted_a: Decimal, rail: Rail) -> ResistorFigures | None:
    """The largest preferred resistor that draws a current even at the low end of the rail; None where that is 0 V.

    Units: ampere in. Errors: ValueError unless the current is above zero. Source: Ohm's law; IEC 60063, E24.
    """
    if wanted_a <= 0:
        raise ValueError(f"a current must be above zero, not {wanted_a}")
    least_v = low_end(rail)
    return resistor_figures(standard_at_most(least_v / wanted_a), rail) if least_v else None


def resistor_figures(resistance_ohm: Decimal, rail: Rail) -> ResistorFigures:
    """What a resistor on a rail draws and must bear.

    Units: ohm in; ampere and watt out. Source: Ohm's law; the body from `standards`.
    """
    worst = heat(high_end(rail), resistance_ohm)
    return ResistorFigures(
        rail=rail.name,
        resistance_ohm=resistance_ohm,
        nominal_a=twelve(abs(rail.nominal_v) / resistance_ohm),
        nominal_w=heat(rail.nominal_v, resistance_ohm),
        least_a=twelve(low_end(rail) / resistance_ohm),
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
    alone = [resistor_for(each.least_a, by_name[each.rail]) for each in supply.outputs if each.least_a]
    return SupplyFigures(
        sum_of_most_w=twelve(
            sum((each.most_a * abs(by_name[each.rail].nominal_v) for each in supply.outputs), Decimal(0))
        ),
        smallest_loads=tuple(each for each in alone if each),
    )
