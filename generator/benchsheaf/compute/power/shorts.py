"""Where a short is: what one of several things on a rail reads by itself, and how far copper gives it away."""

from dataclasses import dataclass
from decimal import Decimal

from benchsheaf.compute.laws import rounded_down, rounded_up, twelve
from benchsheaf.model.machine import Rail
from benchsheaf.standards import COPPER_OHM_MM2_M, FOIL_M, HUNTING_A, METER_STEP_V


@dataclass(frozen=True, kw_only=True, slots=True)
class SplitFigures:
    """What hangs on a rail beside the machine, where the usual reading falls to one of the rail's own limits."""

    rail: str
    reading: str  # doubtful, no-power
    with_ohm: Decimal
    least_ohm: Decimal = rounded_down()  # where the rail reads the high end of usual without it
    most_ohm: Decimal = rounded_up()  # where it reads the low end


@dataclass(frozen=True, kw_only=True, slots=True)
class TrackFigures:
    """A board's track of one width, with the current that a short is hunted with."""

    width_mm: Decimal
    ohm_a_cm: Decimal
    drop_a_cm_v: Decimal
    step_mm: Decimal = rounded_up()  # how far apart two points must be for a meter's last digit


def resistance_beside(with_ohm: Decimal, without_ohm: Decimal) -> Decimal:
    """What one thing on a rail reads by itself, from the rail's readings with it and without it.

    Units: ohm in and out.
    Errors: ValueError unless the reading with it is above zero and the lower one: then nothing can be said.
    Source: conductances side by side add up, R = 1 / (1/R_with - 1/R_without).
    """
    if not 0 < with_ohm < without_ohm:
        raise ValueError(f"it must read less with it than without, and more than zero, not {with_ohm} of {without_ohm}")
    return twelve(1 / (1 / with_ohm - 1 / without_ohm))


def split_figures(rail: Rail) -> tuple[SplitFigures, ...]:
    """What a thing must read by itself to bring a rail from its usual reading down to each of its limits.

    Units: ohm. Errors: none; nothing where the resistances are not known, or a limit lies within the usual ones.
    """
    known = rail.to_ground
    if known is None:
        return ()
    limits = (("doubtful", known.doubtful_below_ohm), ("no-power", known.no_power_below_ohm))
    return tuple(
        SplitFigures(
            rail=rail.name,
            reading=reading,
            with_ohm=limit,
            least_ohm=resistance_beside(limit, known.usual.high_ohm),
            most_ohm=resistance_beside(limit, known.usual.low_ohm),
        )
        for reading, limit in limits
        if limit < known.usual.low_ohm
    )


def copper_ohm(length_m: Decimal, area_m2: Decimal) -> Decimal:
    """Resistance of a wire or a track of copper at 20 °C.

    Units: metre and square metre in; ohm out. Errors: ZeroDivisionError for no area.
    Source: R = rho l / A, rho from IEC 60028.
    """
    return twelve(COPPER_OHM_MM2_M.scaleb(-6) * length_m / area_m2)


def track_figures(width_mm: Decimal) -> TrackFigures:
    """What a track of the usual foil drops along its length.

    Units: millimetre in; ohm and volt a centimetre, millimetre out. Errors: ZeroDivisionError for no width.
    Source: R = rho l / A and U = I R, with foil, current and meter from `standards`.
    """
    centimetre = copper_ohm(Decimal("0.01"), width_mm / 1000 * FOIL_M)
    drop = centimetre * HUNTING_A
    return TrackFigures(
        width_mm=width_mm,
        ohm_a_cm=centimetre,
        drop_a_cm_v=twelve(drop),
        step_mm=twelve(METER_STEP_V / drop * 10),
    )
