"""Errors with mains, supplies, loads and capacitors."""

from collections.abc import Sequence
from decimal import Decimal

from benchsheaf.component_standards import RATED_VOLTS
from benchsheaf.compute.handbook import preferred_values
from benchsheaf.compute.laws import smallest_at_least, stored_energy
from benchsheaf.compute.power import resistor_figures, resistor_for
from benchsheaf.model.boards import Volts
from benchsheaf.model.machine import Rail
from benchsheaf.pages.handbook.shape import Point
from benchsheaf.pages.printing import number, plain, quantity
from benchsheaf.standards import BODY_OVER_LOAD

MAINS_V, DOUBLED_RATED_V = Decimal(230), Decimal(400)
RESERVOIR_F = Decimal("220e-6")
FIVE = Rail(name="+5 V", nominal_v=Decimal(5), window=Volts(low_v=Decimal("4.75"), high_v=Decimal("5.25")))
TWELVE = Rail(name="+12 V", nominal_v=Decimal(12), window=Volts(low_v=Decimal("11.4"), high_v=Decimal("12.6")))
BEADS_V = RATED_VOLTS["tantalum"]
MAXIMA = ((Decimal(5), Decimal(12)), (Decimal(12), Decimal("3.2")), (Decimal(12), Decimal("0.3")))
TOGETHER_W = Decimal(96)
RUN_A, START_A = (
    (Decimal("0.05"), Decimal("0.90"), Decimal("0.70")),
    (Decimal("0.05"), Decimal("1.80"), Decimal("1.50")),
)


def mains_errors() -> Sequence[Point]:
    """Peak, doubler, and what two capacitors in series hold."""
    peak = MAINS_V * Decimal(2).sqrt()
    series, single = stored_energy(RESERVOIR_F / 2, peak), stored_energy(RESERVOIR_F, peak)
    return (
        Point(
            anchor="mains-peak",
            title="Mains peak and selector",
            wrong=f"{MAINS_V} V mains charge a reservoir to {MAINS_V} V.",
            right=f"To the peak, {number(peak)} V. With the selector on the lower position the doubler makes "
            f"{number(2 * peak.quantize(Decimal(1)))} V on {DOUBLED_RATED_V} V of capacitors: read the selector before "
            "the plug goes in.",
            working=f"{MAINS_V} V × √2 = {number(peak, 1)} V; twice that in a doubler.",
            mark="Computed; general example.",
        ),
        Point(
            anchor="series-reservoir",
            title="Two capacitors in series",
            wrong=f"Two of 220 µF hold what one holds, {number(single, 1)} J, or twice that, {number(2 * single, 1)} "
            "J.",
            right=f"In series they are 110 µF: {number(series, 2)} J at {number(peak)} V, which can still kill.",
            working=f"E = C V² / 2 with C = 220/2 µF and V = {number(peak, 1)} V.",
            mark="Computed; general example.",
        ),
    )


def power_errors() -> Sequence[Point]:
    """Load resistors, starts, and what rails may give together."""
    return (_least_load(), _watts(), _starts(), _together(), _cards_in(), _plug())


def _least_load() -> Point:
    wanted = Decimal("1.5")
    wrong, right = resistor_figures(Decimal("3.3"), FIVE), resistor_for(wanted, FIVE)
    assert right is not None
    return Point(
        anchor="least-load",
        title="Least load at nominal voltage",
        wrong=f"{wrong.resistance_ohm} Ω on +5 V gives {number(wrong.nominal_a, 2)} A, over the {wanted} A wanted.",
        right=f"Only at 5.00 V. At {FIVE.window.low_v} V it is {number(wrong.least_a, 2)} A: take "
        f"{right.resistance_ohm:.1f} Ω, which still gives {plain(right, 'least_a', 2)} A, and bear its "
        f"{plain(right, 'worst_w', 2)} W at {FIVE.window.high_v} V.",
        working=f"Size the resistor at the low end: {FIVE.window.low_v} V / {wanted} A, the next smaller of E24. Its "
        "watts "
        f"at the high end: {FIVE.window.high_v}² / {right.resistance_ohm:.1f}.",
        mark="Computed.",
    )


def _watts() -> Point:
    three, forty_seven = resistor_figures(Decimal(3), FIVE), resistor_figures(Decimal(47), TWELVE)
    return Point(
        anchor="resistor-watts",
        title="Watts of a resistor",
        wrong=f"3.0 Ω on +5 V turns {number(three.nominal_w, 2)} W into heat, so a 10 W body will do.",
        right=f"{number(three.worst_w, 2)} W at {FIVE.window.high_v} V: a {three.body_w} W body. 47 Ω on +12 V: "
        f"{number(forty_seven.worst_w, 2)} W at {TWELVE.window.high_v} V: a {forty_seven.body_w} W body.",
        working=f"V²/R at the high end, times {BODY_OVER_LOAD}, the next body that is sold. It still gets hot enough "
        "to "
        "burn.",
        mark="Computed; the factor is common practice.",
    )


def _starts() -> Point:
    run, start = sum(RUN_A, Decimal(0)), sum(START_A, Decimal(0))
    return Point(
        anchor="starts",
        title="Starting current of drives",
        wrong=f"+12 V carries {number(run, 2)} A, since that is what all draw together.",
        right=f"That is running. While both drives start it is {number(start, 2)} A: hold it against what the supply "
        "gives for those seconds, and let the second drive start late only where that helps.",
        working=f"Running {' + '.join(map(str, RUN_A))}; starting {' + '.join(map(str, START_A))} A.",
        mark="Computed; general example.",
    )


def _together() -> Point:
    watts = [volts * ampere for volts, ampere in MAXIMA]
    total = sum(watts, Decimal(0))
    return Point(
        anchor="rail-maxima",
        title="Sum of what the rails may give",
        wrong=f"A supply whose rails give {', '.join(number(each, 1) for each in watts)} W gives {number(total, 1)} W.",
        right=f"It gives {TOGETHER_W} W together where its plate says so: the rails may not all be at their most.",
        working=" + ".join(f"{volts} V × {ampere} A" for volts, ampere in MAXIMA) + f" = {number(total, 1)} W.",
        mark="Computed; general example.",
    )


def _cards_in() -> Point:
    least, drawn = Decimal("0.20"), Decimal("0.05")
    most_ohm = TWELVE.window.low_v / (least - drawn)
    bought = max(each for each in preferred_values(12) if each <= most_ohm)
    taken = resistor_figures(Decimal(47), TWELVE)
    return Point(
        anchor="cards-in",
        title="Least load forgotten with cards in",
        wrong="With board and cards in, the load resistors can go.",
        right=f"Board, cards and keyboard may draw only {drawn} A on +12 V, under the {least} A wanted: keep 47 Ω on "
        "it "
        f"({number(bought)} Ω of E12 at most) until a tested drive is on.",
        working=f"{TWELVE.window.low_v} V / ({least} − {drawn}) A = {number(most_ohm)} Ω at most; 47 Ω gives "
        f"{number(taken.least_a, 2)} A there.",
        mark="Computed; general example.",
    )


def _plug() -> Point:
    return Point(
        anchor="drive-plug",
        title="A drive's plug taken for the whole supply",
        wrong="Both rails at the drive's plug are right, so the board may have power.",
        right="The plug of a drive carries +5 V and +12 V only. −12 V and −5 V are measured where they are: at the "
        "board's "
        "plug or at a slot.",
        mark="Common practice.",
    )


def bead_errors() -> Sequence[Point]:
    """Ratings, polarity, and what a cold test leaves open."""
    twice, worst = 2 * TWELVE.nominal_v, 2 * TWELVE.window.high_v
    return (
        Point(
            anchor="bead-basis",
            title="Rating of a bead, nominal or worst",
            wrong=f"Twice 12 V is {twice} V, so a {smallest_at_least(twice, BEADS_V)} V bead.",
            right=f"That holds for the nominal voltage. At the high end it is {worst} V, so a "
            f"{smallest_at_least(worst, BEADS_V)} V bead: say which of the two is meant.",
            working="Rated at least twice what it sees; 12 V +5 % is 12.6 V; the next rating that is sold.",
            mark="Computed.",
        ),
        Point(
            anchor="bead-negative",
            title="Plus to the rail on a negative rail",
            wrong="Plus of a bead goes to the rail.",
            right="On −12 V plus goes to ground. In a place with three holes the middle one is ground there. A "
            "reversed "
            "bead bursts.",
            mark="Common practice.",
        ),
        Point(
            anchor="cold-short",
            title="A short test without power that passed",
            wrong="No rail is shorted, so no bead is.",
            right="A bead may short only at voltage: the supply ticks, and every reading is usual. Lift beads one at a "
            "time.",
            mark="Common practice.",
        ),
        Point(
            anchor="ripple-formula",
            title="Ripple by the formula",
            wrong=f"I/(2 f C) is the ripple: {number(Decimal(1) / (2 * 50 * Decimal('4700e-6')), 2)} V at 1 A, 4700 µF "
            "and 50 Hz.",
            right="It is an upper bound: the capacitor is charged again before the half wave is over.",
            working=f"1 A / (2 × 50 Hz × {quantity(Decimal('0.0047'), 'F')}).",
            mark="Computed.",
        ),
    )
