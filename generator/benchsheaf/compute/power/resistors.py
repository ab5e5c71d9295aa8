"""Resistors on rails: what loads them, and what a low reading would leave in one part."""

from collections.abc import Sequence
from decimal import Decimal

from benchsheaf.compute.laws import heat, smallest_at_least, standard_at_most, twelve
from benchsheaf.compute.power.figures import GroundFigures, LeastLoadFigures, ResistorFigures, SupplyFigures
from benchsheaf.model.machine import Rail
from benchsheaf.model.supply import Supply
from benchsheaf.standards import BODY_OVER_LOAD, BODY_WATTS, LARGEST_BODY_W, RESISTOR_SPREAD


def low_end(rail: Rail) -> Decimal:
    """The smallest magnitude of a rail's window, in volt."""
    return min(abs(rail.window.low_v), abs(rail.window.high_v))


def high_end(rail: Rail) -> Decimal:
    """The largest magnitude of a rail's window, in volt."""
    return max(abs(rail.window.low_v), abs(rail.window.high_v))


def resistor_for(wanted_a: Decimal, rail: Rail) -> ResistorFigures | None:
    """The fewest preferred resistors that draw a current even at the low end of the rail; None where that is 0 V.

    One where its body is sold and not too large, else like ones side by side or in a row, whichever wastes less.
    Units: ampere in. Errors: ValueError unless the current is above zero. Source: Ohm's law; IEC 60063, E24.
    """
    if wanted_a <= 0:
        raise ValueError(f"a current must be above zero, not {wanted_a}")
    least_v = low_end(rail)
    if not least_v:
        return None
    at_most = least_v / wanted_a
    pieces = max(1, int(heat(high_end(rail), at_most) * BODY_OVER_LOAD / LARGEST_BODY_W))
    while True:
        ways = [
            resistor_set(standard_at_most(at_most * pieces), rail, pieces, "parallel" if pieces > 1 else "alone"),
            resistor_set(standard_at_most(at_most / pieces), rail, pieces, "series" if pieces > 1 else "alone"),
        ]
        fit = [each for each in ways if each.body_w is not None and each.body_w <= LARGEST_BODY_W]
        if fit:
            return max(fit, key=lambda each: each.resistance_ohm)
        pieces += 1


def least_load_figures(least_a: Decimal, sure_a: Decimal, rail: Rail) -> LeastLoadFigures | None:
    """What a rail lacks to its least load, with the resistors for it; None where it lacks nothing, or has a 0 V end.

    Units: ampere in. Source: as `resistor_for`; for those that nobody measures, each 5 % above its print (E24).
    """
    missing = least_a - sure_a
    chosen = resistor_for(missing, rail) if missing > 0 else None
    unmeasured = resistor_for(missing * (1 + RESISTOR_SPREAD), rail) if missing > 0 else None
    if chosen is None or unmeasured is None:
        return None
    return LeastLoadFigures(
        rail=rail.name,
        least_a=least_a,
        sure_a=twelve(sure_a),
        missing_a=twelve(missing),
        at_most_ohm=twelve(low_end(rail) / missing),
        chosen=chosen,
        unmeasured=unmeasured,
    )


def resistor_figures(resistance_ohm: Decimal, rail: Rail) -> ResistorFigures:
    """What a resistor on a rail draws and must bear.

    Units: ohm in; ampere and watt out. Source: Ohm's law; the body from `standards`.
    """
    return resistor_set(resistance_ohm, rail, 1, "alone")


def resistor_set(piece_ohm: Decimal, rail: Rail, pieces: int, joined: str) -> ResistorFigures:
    """What like resistors on a rail draw and must bear, `joined` alone, parallel or series; the heat is shared evenly.

    Units: ohm of one in; ampere and watt out. Source: Ohm's law; the body from `standards`.
    """
    together = piece_ohm * pieces if joined == "series" else piece_ohm / pieces
    worst = heat(high_end(rail), together)
    least = low_end(rail) / together
    return ResistorFigures(
        rail=rail.name,
        resistance_ohm=twelve(together),
        pieces=pieces,
        joined=joined,
        piece_ohm=piece_ohm,
        nominal_a=twelve(abs(rail.nominal_v) / together),
        nominal_w=heat(rail.nominal_v, together),
        least_a=twelve(least),
        spread_a=twelve(least / (1 + RESISTOR_SPREAD)),
        worst_w=worst,
        piece_w=twelve(worst / pieces),
        body_w=smallest_at_least(worst / pieces * BODY_OVER_LOAD, BODY_WATTS),
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
    alone = [
        least_load_figures(each.least_a, Decimal(0), by_name[each.rail]) for each in supply.outputs if each.least_a
    ]
    return SupplyFigures(
        sum_of_most_w=twelve(
            sum((each.most_a * abs(by_name[each.rail].nominal_v) for each in supply.outputs), Decimal(0))
        ),
        smallest_loads=tuple(each for each in alone if each),
    )
