"""How the memory of a machine is kept alive, in the words of its sheet."""

from dataclasses import dataclass

from benchsheaf.compute.clocks import RefreshFigures
from benchsheaf.model.machine import Machine
from benchsheaf.model.memory import Refresh
from benchsheaf.pages.rates import clock_words
from benchsheaf.pages.shelf import Desk
from benchsheaf.quantities import printed


@dataclass(frozen=True, kw_only=True, slots=True)
class RefreshView:
    """How the chips are kept alive: the clock that counts, the rate of it in print, all rows in print."""

    refresh: Refresh
    figures: RefreshFigures
    clock: str
    rate: str
    way: str
    all_rows: str


def refresh_view(desk: Desk, machine: Machine) -> RefreshView | None:
    """The refresh of the memory; None where it, or the frequency of its clock, is not described."""
    workup = desk.shelf.workup.machines[machine.slug]
    refresh = machine.memory.refresh if machine.memory else None
    if refresh is None or workup.refresh is None:
        return None
    rates = {each.id: each.frequency_hz for each in workup.clocks}
    return RefreshView(
        refresh=refresh,
        figures=workup.refresh,
        clock=next(each.name for each in machine.clocks if each.id == refresh.clock),
        rate=clock_words(rates[refresh.clock]),
        way=desk.sheet("display", f"clock-{refresh.clock}"),
        all_rows=printed(workup.refresh.all_rows_s, "s", 2, "up"),
    )
