"""How hard a capacitor is driven, what rating it needs, which way round it goes, and what a good one measures."""

from dataclasses import dataclass
from decimal import ROUND_CEILING, Decimal
from math import pi

from benchsheaf.component_standards import (
    E6,
    LEAKAGE_PER_S,
    LEAST_LEAKAGE_A,
    LOSS_HZ,
    OLD_LEAKAGE,
    OLD_LEAKAGE_A,
    RATED_VOLTS,
    RMS_OF_TRIANGLE,
    TAN_DELTA_STEP,
    TAN_DELTA_STEP_F,
    USED_SHARES,
    USUAL_TAN_DELTA,
)
from benchsheaf.compute.laws import rounded_down, rounded_up, smallest_at_least, standard_at_least, twelve
from benchsheaf.model.boards import Part, Volts
from benchsheaf.model.supply import Output

GROUND = "ground"
POLARISED = ("tantalum", "electrolytic")
THREE_LEGS = 3


@dataclass(frozen=True, kw_only=True, slots=True)
class StressFigures:
    """The share of its rated voltage that a part sees: at the rail's nominal voltage, and at its high end."""

    ref: str
    rail: str
    stress_share: Decimal
    worst_stress_share: Decimal


@dataclass(frozen=True, kw_only=True, slots=True)
class RatingFigures:
    """The rating that a capacitor of a kind needs on a rail: by its nominal voltage, and by its high end.

    `rated_v` and `worst_rated_v` are the next that are sold; None where none is enough. `stress_share` is what the
    first of them sees at nominal volts. Volts are sizes, without the sign of the rail.
    """

    used_share: Decimal
    nominal_v: Decimal
    least_v: Decimal = rounded_up()
    rated_v: Decimal | None
    stress_share: Decimal | None
    worst_v: Decimal
    worst_least_v: Decimal = rounded_up()
    worst_rated_v: Decimal | None


@dataclass(frozen=True, kw_only=True, slots=True)
class WayRound:
    """Where the two ends of a polarised capacitor go; of three holes the middle one is that of plus."""

    plus_on: str
    minus_on: str
    three_holes: bool


@dataclass(frozen=True, kw_only=True, slots=True)
class LimitFigures:
    """What a good one measures: its resistance in series at 120 Hz, and its leakage.

    `usual_tan_delta` says that the loss is not told, and was taken from the table of usual ones.
    """

    tan_delta_share: Decimal | None
    usual_tan_delta: bool
    esr_ohm: Decimal | None
    leakage_a: Decimal = rounded_down()
    old_leakage_a: Decimal | None


@dataclass(frozen=True, kw_only=True, slots=True)
class SmoothingFigures:
    """What the capacitors of a switching output must do at its own frequency: all together, and each."""

    rail: str
    parts: tuple[str, ...]
    choke_ripple_a: Decimal
    ripple_v: Decimal
    esr_ohm: Decimal = rounded_down()
    esr_each_ohm: Decimal = rounded_down()
    ripple_a: Decimal = rounded_up()
    ripple_each_a: Decimal = rounded_up()


def high_end_v(window: Volts) -> Decimal:
    """The largest magnitude of a rail's window, in volt: 13.20 V of one from -13.20 V to -10.80 V."""
    return max(abs(window.low_v), abs(window.high_v))


def stress_figures(part: Part, nominal_v: Decimal, window: Volts) -> StressFigures | None:
    """The stress of a part on its rail; None where its rating or its rail is not known.

    Units: volt in; shares of the rated voltage out.
    Source: stress = volts across it / rated volts; high end of a rail means its largest magnitude.
    """
    if part.rated_v is None or part.across is None:
        return None
    return StressFigures(
        ref=part.ref,
        rail=part.across,
        stress_share=twelve(abs(nominal_v) / part.rated_v),
        worst_stress_share=twelve(high_end_v(window) / part.rated_v),
    )


def rating_figures(kind: str, nominal_v: Decimal, window: Volts) -> RatingFigures | None:
    """The rating after derating; None for a kind of which no share is known to us.

    Units: volt. Source: rating = volts / share of it that is used; shares and ratings that are sold from `standards`.
    """
    share = USED_SHARES.get(kind)
    if share is None:
        return None
    least, worst = twelve(abs(nominal_v) / share), twelve(high_end_v(window) / share)
    rated = smallest_at_least(least, RATED_VOLTS[kind])
    return RatingFigures(
        used_share=share,
        nominal_v=abs(nominal_v),
        least_v=least,
        rated_v=rated,
        stress_share=None if rated is None else twelve(abs(nominal_v) / rated),
        worst_v=high_end_v(window),
        worst_least_v=worst,
        worst_rated_v=smallest_at_least(worst, RATED_VOLTS[kind]),
    )


def way_round(part: Part, nominal_v: Decimal) -> WayRound | None:
    """Where plus and minus go; None for what has no polarity or stands on no known rail.

    Source: plus is the higher potential; on a negative rail that is ground. Three legs: common practice.
    """
    if part.kind not in POLARISED or part.across is None or not nominal_v:
        return None
    ends = (part.across, GROUND) if nominal_v > 0 else (GROUND, part.across)
    return WayRound(plus_on=ends[0], minus_on=ends[1], three_holes=part.legs == THREE_LEGS)


def sold_value(capacitance_f: Decimal) -> Decimal:
    """The smallest preferred value that is not under a capacitance.

    Units: farad. Errors: ValueError unless it is above zero. Source: IEC 60063, E6.
    """
    return standard_at_least(capacitance_f, E6)


def limit_figures(part: Part) -> LimitFigures | None:
    """The limits of an aluminium electrolytic; None for other kinds, or where value or rating is not known.

    Units: ohm, ampere out. Source: ESR = tan δ / (2 π f C); leakage and, where no tan δ is given, the usual one from
    `standards`.
    """
    if part.kind != "electrolytic" or part.capacitance_f is None or part.rated_v is None:
        return None
    farad, volt = part.capacitance_f, part.rated_v
    loss = usual_tan_delta(farad, volt) if part.tan_delta_share is None else part.tan_delta_share
    return LimitFigures(
        tan_delta_share=loss,
        usual_tan_delta=part.tan_delta_share is None and loss is not None,
        esr_ohm=None if loss is None else series_resistance(loss, LOSS_HZ, farad),
        leakage_a=twelve(max(LEAKAGE_PER_S * farad * volt, LEAST_LEAKAGE_A)),
        old_leakage_a=old_leakage(farad, volt),
    )


def series_resistance(tan_delta_share: Decimal, at_hz: Decimal, capacitance_f: Decimal) -> Decimal:
    """The resistance in series that a loss stands for.

    Units: hertz, farad in; ohm out. Source: ESR = tan δ / (2 π f C), definition of tan δ.
    """
    return twelve(float(tan_delta_share) / (2 * pi * float(at_hz) * float(capacitance_f)))


def usual_tan_delta(capacitance_f: Decimal, rated_v: Decimal) -> Decimal | None:
    """The loss that catalogues allow a general aluminium electrolytic; None above 100 V, where they differ.

    Units: farad, volt in; a share out. Source: the table in `standards`.
    """
    loss = next((loss for volt, loss in USUAL_TAN_DELTA if rated_v <= volt), None)
    if loss is None:
        return None
    started = ((capacitance_f - TAN_DELTA_STEP_F) / TAN_DELTA_STEP_F).to_integral_value(ROUND_CEILING)
    return twelve(loss + TAN_DELTA_STEP * max(started, Decimal(0)))


def old_leakage(capacitance_f: Decimal, rated_v: Decimal) -> Decimal | None:
    """What old papers let a part leak; None above 450 V.

    Units: farad, volt in; ampere out. Source: K C + 0.3 mA, K from `standards`.
    """
    factor = next((factor for volt, factor in OLD_LEAKAGE if rated_v <= volt), None)
    return None if factor is None else twelve(factor * 1000 * capacitance_f + OLD_LEAKAGE_A)


def smoothing_figures(output: Output, ripple_v: Decimal | None) -> SmoothingFigures | None:
    """What the capacitors behind a choke must do; None where the choke or the limit of the ripple is not known.

    Units: volt in; ohm and ampere out, the current as rms.
    Source: ESR = ripple voltage / ripple current of the choke, which is a triangle wave; alike parts share evenly.
    """
    if output.choke_ripple_share is None or not output.smoothed_by or ripple_v is None:
        return None
    swing = output.most_a * output.choke_ripple_share
    several, rms = len(output.smoothed_by), swing / RMS_OF_TRIANGLE
    return SmoothingFigures(
        rail=output.rail,
        parts=output.smoothed_by,
        choke_ripple_a=twelve(swing),
        ripple_v=ripple_v,
        esr_ohm=twelve(ripple_v / swing),
        esr_each_ohm=twelve(ripple_v / swing * several),
        ripple_a=twelve(rms),
        ripple_each_a=twelve(rms / several),
    )
