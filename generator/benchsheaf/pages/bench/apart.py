"""Taking it apart: what comes off, after what, with which fasteners, and what it frees."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from benchsheaf.compute.removal import RemovalFigures, removal_order
from benchsheaf.drawing.picture import Both
from benchsheaf.drawing.removal_graph import removal_graph
from benchsheaf.markup import Markup
from benchsheaf.model.bench import Removal
from benchsheaf.model.machine import Machine
from benchsheaf.pages.bench.ways import Led, Ways, anchor, machine_ways
from benchsheaf.pages.glance import sheet_cautions
from benchsheaf.pages.shelf import Desk
from benchsheaf.pages.views import CautionView


@dataclass(frozen=True, kw_only=True, slots=True)
class RemovalRow:
    """One removal in the list: the way to it, and what wants it off."""

    anchor: str
    removal: Removal
    figures: RemovalFigures
    after: Sequence[Led]
    way: Sequence[Led]
    frees: Sequence[Markup]
    wanted_by: Sequence[Led]


@dataclass(frozen=True, kw_only=True, slots=True)
class ApartSheet:
    """The sheet about taking it apart, its rows in an order that works."""

    cautions: Sequence[CautionView]
    drawing: Both
    rows: Sequence[RemovalRow]


def apart_sheet(desk: Desk, machine: Machine) -> ApartSheet:
    """What the sheet says."""
    ways = machine_ways(desk, machine)
    figures = {each.id: each for each in desk.shelf.workup.machines[machine.slug].bench.removals}
    by_name = {each.id: each for each in machine.removals}
    order = removal_order(machine.removals)
    hrefs = {name: desk.sheet("apart", anchor("removal", name)) for name in order}
    wanted_by = _wanted_by(ways)
    return ApartSheet(
        cautions=sheet_cautions(desk, machine, "apart"),
        drawing=removal_graph(machine.removals, list(figures.values()), order, hrefs),
        rows=[
            RemovalRow(
                anchor=anchor("removal", name),
                removal=by_name[name],
                figures=figures[name],
                after=ways.removals(by_name[name].after),
                way=ways.removals(figures[name].way),
                frees=[desk.part(part) for part in by_name[name].frees],
                wanted_by=wanted_by.get(name, ()),
            )
            for name in order
        ],
    )


def _wanted_by(ways: Ways) -> Mapping[str, Sequence[Led]]:
    """The checks and procedures that ask for each removal themselves."""
    found: dict[str, list[Led]] = {}
    for name, check in ways.bench.checks.items():
        for removal in check.check.removed:
            found.setdefault(removal, []).append(ways.check(name))
    for name, procedure in ways.bench.procedures.items():
        for removal in procedure.procedure.removed:
            found.setdefault(removal, []).append(ways.procedure(name))
    return found
