"""Repair records: what was found on one machine, round by round, so that the next person is faster."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from benchsheaf import urls
from benchsheaf.compute.repairs import RepairFigures
from benchsheaf.model.bench import Entry, Outcome, ReadingTaken, Repair
from benchsheaf.model.inherited import OwnedCheck
from benchsheaf.model.machine import Machine
from benchsheaf.pages.bench.check_views import LIMITS, rail_limits
from benchsheaf.pages.bench.ways import Led, OwnerView, Ways, anchor, machine_ways
from benchsheaf.pages.frame import Frame, sheet_frame, with_list
from benchsheaf.pages.glance import sheet_cautions
from benchsheaf.pages.page import Page
from benchsheaf.pages.printing import rail_name
from benchsheaf.pages.sheets import REPAIRS, SHEETS
from benchsheaf.pages.shelf import Desk, Shelf
from benchsheaf.pages.views import CautionView

SHEET = next(each for each in SHEETS if each.rests_on == REPAIRS)


@dataclass(frozen=True, kw_only=True, slots=True)
class ReadingRow:
    """A figure that was written down, beside the limits that hold on this machine."""

    name: str
    was: str
    limits: Sequence[tuple[str, str]]


@dataclass(frozen=True, kw_only=True, slots=True)
class EntryRow:
    """A check as it was done, and what it showed."""

    entry: Entry
    check: Led
    owner: OwnerView | None
    outcome: Outcome
    says: str
    healthy: bool
    readings: Sequence[ReadingRow]


@dataclass(frozen=True, kw_only=True, slots=True)
class RepairRow:
    """A record in the list of them."""

    repair: Repair
    led: Led
    symptom: Led
    found: Sequence[Led]


@dataclass(frozen=True, kw_only=True, slots=True)
class RepairsSheet:
    """All repair records of a machine, the oldest first."""

    cautions: Sequence[CautionView]
    rows: Sequence[RepairRow]


@dataclass(frozen=True, kw_only=True, slots=True)
class RepairPage:
    """One repair record, with what it takes by the tables and what was fixed in vain."""

    row: RepairRow
    tried: Sequence[Led]
    figures: RepairFigures
    rounds: Sequence[tuple[int, Sequence[EntryRow]]]
    data: str
    back: str


def repairs_sheet(desk: Desk, machine: Machine) -> RepairsSheet:
    """What the sheet says."""
    ways = machine_ways(desk, machine)
    repairs = desk.shelf.collection.repairs_of.get(machine.slug, ())
    return RepairsSheet(
        cautions=sheet_cautions(desk, machine, "repairs"), rows=[_row(ways, machine, each) for each in repairs]
    )


def repair_pages(shelf: Shelf, machine: Machine) -> Iterator[Page]:
    """A page for each record of a machine."""
    for repair in shelf.collection.repairs_of.get(machine.slug, ()):
        yield _page(shelf, machine, repair)


def _page(shelf: Shelf, machine: Machine, repair: Repair) -> Page:
    here = urls.repair(repair.slug)

    def frame() -> Frame:
        return shelf.kept("frame", here, lambda: _frame(shelf.desk(here, machine), machine, repair))

    def written() -> str:
        desk = shelf.desk(here, machine)
        return desk.printed("repair.html", frame=frame(), page=_repair(desk, machine, repair))

    def column() -> str:
        return shelf.desk(here, machine).printed("column.html", frame=frame())

    return Page(
        address=here,
        title=f"{machine.name}: {repair.owner}",
        written=written,
        column=column,
        edit=shelf.edit_path(("repair", repair.slug), "date"),
    )


def _frame(desk: Desk, machine: Machine, repair: Repair) -> Frame:
    """A record lies in the sheaf under the sheet of all records."""
    frame = sheet_frame(desk, machine, SHEET)
    imprint = (("Record", repair.date), *frame.imprint[:1])
    return with_list(desk, replace(frame, title=f"“{desk.worded(repair.owner)}”", imprint=imprint, within=True))


def _row(ways: Ways, machine: Machine, repair: Repair) -> RepairRow:
    desk = ways.desk
    says = next(each.says for each in machine.symptoms if each.id == repair.symptom)
    return RepairRow(
        repair=repair,
        led=Led(words=desk.worded(repair.owner), way=desk.repair(repair.slug)),
        symptom=Led(words=desk.worded(says), way=desk.sheet("finding", anchor("symptom", repair.symptom))),
        found=[ways.fault(name) for name in repair.found],
    )


def _repair(desk: Desk, machine: Machine, repair: Repair) -> RepairPage:
    ways = machine_ways(desk, machine)
    rounds: dict[int, list[EntryRow]] = {}
    for entry in repair.entries:
        rounds.setdefault(entry.round, []).append(_entry(ways, machine, entry))
    figures = desk.shelf.workup.machines[machine.slug].bench.repairs
    return RepairPage(
        row=_row(ways, machine, repair),
        tried=[ways.fault(name) for name in repair.tried],
        figures=next(each for each in figures if each.slug == repair.slug),
        rounds=sorted(rounds.items()),
        data=desk.href(urls.machine_data(machine.slug)),
        back=desk.sheet("repairs"),
    )


def _entry(ways: Ways, machine: Machine, entry: Entry) -> EntryRow:
    each = ways.bench.checks[entry.check]
    outcome = each.outcome(entry.outcome)
    return EntryRow(
        entry=entry,
        check=ways.check(entry.check),
        owner=ways.owner(each.owner),
        outcome=outcome,
        says=ways.says(entry.check, entry.outcome),
        healthy=outcome is each.check.outcomes[0],
        readings=[_reading(machine, each, taken) for taken in entry.readings],
    )


def _reading(machine: Machine, each: OwnedCheck, taken: ReadingTaken) -> ReadingRow:
    reading = next(one for one in each.check.readings if one.id == taken.reading)
    rail = next((rail for rail in machine.rails if rail.name == reading.of), None)
    return ReadingRow(
        name=f"{rail_name(reading.of)}, {LIMITS[reading.limit]}",
        was=taken.was,
        limits=list(rail_limits(rail, reading.limit)) if rail else (),
    )
