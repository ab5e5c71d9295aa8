"""How long a repaired machine must run, or how often it must start, before it counts as repaired."""

from dataclasses import dataclass
from decimal import Decimal
from math import ceil, log

from benchsheaf.compute.laws import rounded_up, twelve
from benchsheaf.standards import CLEAN_TIMES, SURELY_SHARE


@dataclass(frozen=True, kw_only=True, slots=True)
class HoursFigures:
    """A fault that came once in so many hours: how long it must stay away."""

    between_hours: Decimal
    clean_hours: Decimal = rounded_up()


@dataclass(frozen=True, kw_only=True, slots=True)
class StartsFigures:
    """A fault that came at a share of cold starts: how many must go well one after the other."""

    fails_share: Decimal
    exact_starts: Decimal
    clean_starts: int
    left_share: Decimal


def hours_figures(between_hours: Decimal) -> HoursFigures:
    """Clean running that leaves at most a risk of 5 % that the fault is still there.

    Units: hours between failures in, hours of clean running out.
    Errors: ValueError unless the time is above zero.
    Source: the rule of three: failures that come by chance stay away for 3 T with e^-3 = 4.98 %.
    """
    if between_hours <= 0:
        raise ValueError(f"a time must be above zero, not {between_hours}")
    return HoursFigures(between_hours=between_hours, clean_hours=twelve(between_hours * CLEAN_TIMES))


def starts_figures(fails_share: Decimal) -> StartsFigures:
    """Clean starts that leave at most a risk of 5 % that the fault is still there.

    Units: the share of cold starts that failed in; starts out, whole ones upwards, and the risk that they leave.
    Errors: ValueError unless the share lies between 0 and 1.
    Source: the binomial: all of n starts go well with (1 - p)^n, so n = ln 0.05 / ln(1 - p).
    """
    if not 0 < fails_share < 1:
        raise ValueError(f"a share must lie between 0 and 1, not {fails_share}")
    exact = twelve(log(float(SURELY_SHARE)) / log(1 - float(fails_share)))
    starts = ceil(exact)
    return StartsFigures(
        fails_share=fails_share,
        exact_starts=exact,
        clean_starts=starts,
        left_share=twelve((1 - fails_share) ** starts),
    )
