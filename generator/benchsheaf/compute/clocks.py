"""How fast each clock runs, from its crystal down, and whether memory is refreshed in time."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from decimal import Decimal

from benchsheaf.compute.laws import rounded_up, twelve
from benchsheaf.model.memory import Refresh
from benchsheaf.model.signals import Clock


@dataclass(frozen=True, kw_only=True, slots=True)
class ClockFigures:
    """A clock: its frequency, the clock at the head of its chain, and what that is divided by in all."""

    id: str
    frequency_hz: Decimal | None
    root: str
    divided_by: int


@dataclass(frozen=True, kw_only=True, slots=True)
class RefreshFigures:
    """Memory chips kept alive: from row to row, all rows, and whether that is within the limit."""

    interval_s: Decimal
    all_rows_s: Decimal = rounded_up()
    holds: bool


def clock_figures(clocks: Sequence[Clock], crystals_hz: Mapping[str, Decimal]) -> tuple[ClockFigures, ...]:
    """Every clock in the order of its file; the frequency is None where the head of its chain has no crystal.

    Units: hertz; the crystals by their designators.
    Errors: KeyError for a clock that is not known; links have seen to that, and to circles.
    Source: a divider by n gives one pulse for n.
    """
    known = {clock.id: clock for clock in clocks}
    heads: dict[str, tuple[str, int]] = {}
    for clock in clocks:
        chain = [clock]
        while chain[-1].of is not None and chain[-1].of not in heads:
            chain.append(known[chain[-1].of])
        root, divided = heads.get(chain[-1].of or "", (chain[-1].id, 1))
        for each in reversed(chain):
            divided *= each.divided_by or 1
            heads[each.id] = root, divided
    return tuple(
        _figures(clock.id, *heads[clock.id], crystals_hz.get(known[heads[clock.id][0]].part or "")) for clock in clocks
    )


def _figures(ident: str, root: str, divided: int, crystal_hz: Decimal | None) -> ClockFigures:
    frequency = twelve(crystal_hz / divided) if crystal_hz is not None else None
    return ClockFigures(id=ident, frequency_hz=frequency, root=root, divided_by=divided)


def refresh_figures(refresh: Refresh, frequencies: Mapping[str, Decimal | None]) -> RefreshFigures | None:
    """How often a row is refreshed, and how long all rows take; None where the clock's frequency is not known.

    Units: hertz by clock in; second out.
    Errors: KeyError for a clock that is not known; links have seen to that.
    Source: clocks between two rows / frequency; times the rows.
    """
    frequency_hz = frequencies[refresh.clock]
    if frequency_hz is None:
        return None
    all_rows_s = twelve(refresh.every * refresh.rows / frequency_hz)
    return RefreshFigures(
        interval_s=twelve(refresh.every / frequency_hz), all_rows_s=all_rows_s, holds=all_rows_s <= refresh.within_s
    )
