"""What a rail gives while things start: first all but the late ones, then these while the others run."""

from collections.abc import Sequence
from decimal import Decimal

from benchsheaf.compute.laws import twelve
from benchsheaf.compute.power.figures import Load, StartMoment
from benchsheaf.model.boards import Draw

LoadRows = Sequence[tuple[Load, Draw]]
"""The loads of one rail, each with what it draws there."""


def most_drawn(draw: Draw) -> Decimal:
    """What a load takes at its most, in ampere."""
    return max(draw.run_a, draw.start_a or Decimal(0))


def start_sum(own: LoadRows, *, late: bool) -> Decimal:
    """The sum at the beginning of one of the two phases of a start, in ampere.

    First all but the late ones start, and these draw nothing yet; then the others run and the late ones start.
    """
    total = Decimal(0)
    for load, draw in own:
        starts = load.late == late
        total += most_drawn(draw) if starts else (draw.run_a if late else Decimal(0))
    return total


def start_moments(own: LoadRows, steady_a: Decimal) -> tuple[StartMoment, ...]:
    """What a rail gives from moment to moment, resistors with it; nothing where no load takes more as it starts.

    Units: ampere and second. Errors: none. Source: sums; a start whose end nobody gives lasts to the end of its phase.
    """
    moments: list[StartMoment] = []
    for late in (False, True):
        if any(load.late == late and most_drawn(draw) > draw.run_a for load, draw in own):
            moments += _phase(own, steady_a, late=late)
    return tuple(moments)


def _phase(own: LoadRows, steady_a: Decimal, *, late: bool) -> list[StartMoment]:
    sum_a, since = start_sum(own, late=late) + steady_a, Decimal(0)
    phase, moments = "late" if late else "first", []
    for seconds, relief in _reliefs(own, late=late):
        if seconds > since:
            moments.append(StartMoment(phase=phase, from_s=since, until_s=seconds, sum_a=twelve(sum_a)))
            since = seconds
        sum_a -= relief
    return [*moments, StartMoment(phase=phase, from_s=since, until_s=None, sum_a=twelve(sum_a))]


def _reliefs(own: LoadRows, *, late: bool) -> list[tuple[Decimal, Decimal]]:
    """When each start of a phase ends, and how much less it takes from then on, the first first."""
    return sorted(
        (draw.start_for_s, most_drawn(draw) - draw.run_a)
        for load, draw in own
        if load.late == late and draw.start_for_s is not None and most_drawn(draw) > draw.run_a
    )


def seconds_over(own: LoadRows, most_a: Decimal) -> Decimal | None:
    """How long the start stays over a limit; None where some start has no known end and keeps it over."""
    longest: Decimal = Decimal(0)
    for late in (False, True):
        sum_a, ends, seconds = start_sum(own, late=late), _reliefs(own, late=late), Decimal(0)
        while sum_a > most_a:
            if not ends:
                return None
            seconds, relief = ends.pop(0)
            sum_a -= relief
        longest = max(longest, seconds)
    return longest
