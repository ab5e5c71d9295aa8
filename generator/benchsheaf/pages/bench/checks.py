"""The sheet of checks: all of the machine and of what it holds, in an order that keeps every gate."""

from collections.abc import Sequence
from dataclasses import dataclass

from benchsheaf.compute.laws import stable_order
from benchsheaf.model.inherited import Bench
from benchsheaf.model.machine import Machine
from benchsheaf.model.signals import Switching
from benchsheaf.pages.bench.check_views import CheckView, check_view
from benchsheaf.pages.bench.ways import Led, Ways, machine_ways
from benchsheaf.pages.glance import sheet_cautions
from benchsheaf.pages.shelf import Desk
from benchsheaf.pages.views import CautionView


@dataclass(frozen=True, kw_only=True, slots=True)
class CheckGroup:
    """Checks that stand together, and when they are done."""

    anchor: str
    title: str
    says: str
    checks: Sequence[CheckView]


@dataclass(frozen=True, kw_only=True, slots=True)
class ChecksSheet:
    """The sheet about checks; `guards` are those that must be healthy before any power."""

    cautions: Sequence[CautionView]
    guards: Sequence[Led]
    switching: Switching | None
    groups: Sequence[CheckGroup]


GROUPS = (
    ("guards", "Before any power", "They guard against what running cannot prove. All must be healthy first."),
    ("free", "Plug out, with nothing before them", "No other check stands before these."),
    ("gated", "Only after others", "Each says what must have shown healthy before it."),
)


def checks_sheet(desk: Desk, machine: Machine) -> ChecksSheet:
    """What the sheet says."""
    ways = machine_ways(desk, machine)
    reach = {each.name: each for each in desk.shelf.workup.machines[machine.slug].bench.checks}
    grouped: dict[str, list[CheckView]] = {}
    for name in ordered_checks(ways.bench):
        each = ways.bench.checks[name]
        grouped.setdefault(group_of(ways.bench, name), []).append(check_view(ways, each, reach[name]))
    return ChecksSheet(
        cautions=sheet_cautions(desk, machine, "checks"),
        guards=guards(ways),
        switching=machine.switching,
        groups=[
            CheckGroup(anchor=place, title=title, says=says, checks=grouped[place])
            for place, title, says in GROUPS
            if place in grouped
        ],
    )


def guards(ways: Ways) -> list[Led]:
    """The checks that must be healthy before any power."""
    return [ways.check(name) for name in ways.bench.before_power]


def group_of(bench: Bench, name: str) -> str:
    """Whether a check guards the power, is free to be done with the plug out, or comes after others."""
    if name in bench.before_power:
        return "guards"
    return "gated" if bench.gates(name) or bench.checks[name].check.power == "on" else "free"


def ordered_checks(bench: Bench) -> tuple[str, ...]:
    """All checks: first what guards the power, then what is free, then the rest; none before what gates it."""
    places = [place for place, _, _ in GROUPS]
    names = sorted(bench.checks, key=lambda name: places.index(group_of(bench, name)))
    return stable_order(names, {name: (*bench.gates(name), *bench.checks[name].means_after) for name in names})
