"""How long a supply can still hurt after the plug is out, and how hard."""

from dataclasses import dataclass
from decimal import ROUND_CEILING, Decimal

from benchsheaf.compute.laws import heat, rounded_up, seconds_to_fall, stored_energy, twelve
from benchsheaf.model.supply import Reservoir
from benchsheaf.standards import BLEEDER_OVER, CAPACITANCE_OVER, DISCHARGED_V, EXTRA_LOW_V, HIGHEST_MAINS_RATIO


@dataclass(frozen=True, kw_only=True, slots=True)
class DischargeFigures:
    """What the insulated resistor does to the reservoir at its worst."""

    first_a: Decimal
    first_w: Decimal
    wait_s: Decimal = rounded_up()


@dataclass(frozen=True, kw_only=True, slots=True)
class BleederFigures:
    """What drains the reservoir by itself; the worst case is the highest mains and both parts at their limits."""

    time_constant_s: Decimal
    extra_low_s: Decimal
    worst_resistance_ohm: Decimal
    worst_wait_s: Decimal = rounded_up()
    worst_heat_w: Decimal


@dataclass(frozen=True, kw_only=True, slots=True)
class ReservoirFigures:
    """The charge by the printed values, and at the worst."""

    stored_energy_j: Decimal
    worst_charged_v: Decimal
    worst_capacitance_f: Decimal
    worst_energy_j: Decimal
    wait_minutes: Decimal = rounded_up()
    discharge: DischargeFigures
    bleeder: BleederFigures | None  # None: no bleeder is known, so only the stated wait may be told


def reservoir_figures(reservoir: Reservoir) -> ReservoirFigures:
    """The wait before measuring, and what is stored until then.

    Units: as the endings of the names say.
    Errors: ValueError if the charge is not above zero.
    Source: V = V0 e^(-t/RC); worst case and 10 V from `standards`. The longer of computed and stated wait is told.
    """
    worst_v = twelve(reservoir.charged_v * HIGHEST_MAINS_RATIO)
    worst_f = twelve(reservoir.capacitance_f * CAPACITANCE_OVER)
    bleeder = _bleeder(reservoir, worst_v, worst_f)
    computed = bleeder.worst_wait_s / 60 if bleeder else Decimal(0)
    whole = computed.to_integral_value(ROUND_CEILING)
    drain = reservoir.discharge.resistance_ohm
    return ReservoirFigures(
        stored_energy_j=stored_energy(reservoir.capacitance_f, reservoir.charged_v),
        worst_charged_v=worst_v,
        worst_capacitance_f=worst_f,
        worst_energy_j=stored_energy(worst_f, worst_v),
        wait_minutes=max(whole, reservoir.wait_minutes),
        discharge=DischargeFigures(
            first_a=twelve(worst_v / drain),
            first_w=heat(worst_v, drain),
            wait_s=seconds_to_fall(worst_f, drain, worst_v, DISCHARGED_V),
        ),
        bleeder=bleeder,
    )


def _bleeder(reservoir: Reservoir, worst_v: Decimal, worst_f: Decimal) -> BleederFigures | None:
    printed = reservoir.bleeder_ohm
    if printed is None:
        return None
    worst_ohm = twelve(printed * BLEEDER_OVER)
    return BleederFigures(
        time_constant_s=twelve(printed * reservoir.capacitance_f),
        extra_low_s=seconds_to_fall(reservoir.capacitance_f, printed, reservoir.charged_v, EXTRA_LOW_V),
        worst_resistance_ohm=worst_ohm,
        worst_wait_s=seconds_to_fall(worst_f, worst_ohm, worst_v, DISCHARGED_V),
        worst_heat_w=heat(worst_v, printed),
    )
