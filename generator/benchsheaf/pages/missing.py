"""What is missing: sheets that are only wanted, and facts that somebody with the thing on the bench could look up."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from benchsheaf import urls
from benchsheaf.fields import SAFETY, Absence
from benchsheaf.links import Thing
from benchsheaf.model.machine import Machine
from benchsheaf.pages.frame import Frame, loose_frame, missing_frame
from benchsheaf.pages.manual_map import field_place
from benchsheaf.pages.page import Page
from benchsheaf.pages.sheets import REPAIRS, SHEETS, Sheet
from benchsheaf.pages.shelf import Desk, Shelf

TITLE = "What is missing"
MOST_PLACES = 8
"""So many records are named; of more it is said how many they are."""


@dataclass(frozen=True, kw_only=True, slots=True)
class MissingRow:
    """A fact that is missing: what it is, of which records, why it matters, and the file in which it would stand.

    `way` opens that file where the site knows where it can be edited; `manual` leads to what may be written.
    """

    anchor: str
    label: str
    help: str
    file: str
    way: str | None
    manual: str
    within: str = ""
    count: int = 1
    places: Sequence[str] = ()
    others: int = 0


@dataclass(frozen=True, kw_only=True, slots=True)
class MissingThing:
    """A thing and what it lacks: what keeps people from harm, sheets, all else."""

    anchor: str
    kind: str
    name: str
    page: str
    safety: Sequence[MissingRow]
    sheets: Sequence[MissingRow]
    rest: Sequence[MissingRow]

    @property
    def count(self) -> int:
        """How many facts and sheets are missing."""
        return sum(row.count for row in (*self.safety, *self.sheets, *self.rest))


@dataclass(frozen=True, kw_only=True, slots=True)
class MissingPage:
    """What one machine and all that it holds lack; `urgent` are those of them that lack what keeps from harm."""

    urgent: Sequence[MissingThing]
    own: MissingThing
    held: Sequence[MissingThing]
    count: int


@dataclass(frozen=True, kw_only=True, slots=True)
class MissingAcross:
    """Everything that is missing: machines, each with a page of its own, and shared things in full."""

    urgent: Sequence[MissingThing]
    machines: Sequence[MissingThing]
    shared: Sequence[MissingThing]
    count: int
    described: int
    add: str


def missing_pages(shelf: Shelf) -> Iterator[Page]:
    """A page for each machine, and one across."""
    yield Page(address=urls.MISSING, title=TITLE, written=lambda: _across(shelf.desk(urls.MISSING)))
    for machine in shelf.collection.machines.values():
        yield _machine_page(shelf, machine)


def missing_count(shelf: Shelf) -> int:
    """How many facts and sheets are missing in all."""
    return sum(len(_sheets(shelf, thing)) + sum(each.count for each in _facts(shelf, thing)) for thing in shelf.things)


def _sheets(shelf: Shelf, thing: Thing) -> list[Sheet]:
    if thing[0] != "machine":
        return []
    return [sheet for sheet in SHEETS if sheet.wanted(shelf.collection.machines[thing[1]], shelf.collection)]


def _facts(shelf: Shelf, thing: Thing) -> list[Absence]:
    """Absent facts, without the sections whose sheet is told of as wanted."""
    told = {(sheet.rests_on,) for sheet in _sheets(shelf, thing)}
    return [each for each in shelf.absences(thing) if each.path not in told]


def _machine_page(shelf: Shelf, machine: Machine) -> Page:
    here = urls.sheet(machine.slug, "missing")

    def frame() -> Frame:
        return shelf.kept("frame", here, lambda: missing_frame(shelf.desk(here, machine), machine, TITLE))

    def written() -> str:
        desk = shelf.desk(here, machine)
        return desk.printed("missing.html", frame=frame(), page=_machine_lacks(desk, machine))

    def column() -> str:
        return shelf.desk(here, machine).printed("column.html", frame=frame())

    return Page(address=here, title=f"{machine.name}: {TITLE}", written=written, column=column)


def _machine_lacks(desk: Desk, machine: Machine) -> MissingPage:
    thing = ("machine", machine.slug)
    things = [_thing(desk, each) for each in (thing, *desk.shelf.held_by(thing))]
    return MissingPage(
        urgent=[each for each in things if each.safety],
        own=things[0],
        held=[each for each in things[1:] if each.rest],
        count=sum(each.count for each in things),
    )


def _across(desk: Desk) -> str:
    things = [_thing(desk, thing) for thing in desk.shelf.things]
    page = MissingAcross(
        urgent=[each for each in things if each.safety],
        machines=[each for each in things if each.kind == "machine" and each.count],
        shared=[each for each in things if each.kind != "machine" and each.rest],
        count=sum(each.count for each in things),
        described=len(things),
        add=desk.href(urls.MANUAL),
    )
    return desk.printed("missing-across.html", frame=loose_frame(desk, "All machines", TITLE), page=page)


def _thing(desk: Desk, thing: Thing) -> MissingThing:
    kind, slug = thing
    facts = _facts(desk.shelf, thing)
    return MissingThing(
        anchor=f"{kind}-{slug}",
        kind=kind,
        name=desk.shelf.things[thing].name or kind.capitalize(),
        page=_way_to(desk, thing),
        safety=[_row(desk, thing, each) for each in facts if each.described.wanted == SAFETY],
        sheets=[_sheet_row(desk, thing, sheet) for sheet in _sheets(desk.shelf, thing)],
        rest=[_row(desk, thing, each) for each in facts if each.described.wanted != SAFETY],
    )


def _way_to(desk: Desk, thing: Thing) -> str:
    kind, slug = thing
    if kind == "machine":
        return desk.sheet("missing", slug=slug)
    if kind in urls.PART_FOLDERS:
        return desk.thing(kind, slug)
    shared = {"terms": urls.TERMS, "practice": urls.handbook("practice")}
    return desk.href(shared.get(kind, urls.CAUTIONS))


def _row(desk: Desk, thing: Thing, absence: Absence) -> MissingRow:
    kind = desk.shelf.things[thing].kind
    places = [place for place in absence.places if place]
    return MissingRow(
        anchor=f"{thing[0]}-{thing[1]}-{'.'.join(absence.path)}",
        label=absence.described.label,
        help=absence.described.help,
        file=desk.shelf.edit_path(thing, absence.path[0]),
        way=_edit(desk, thing, absence.path[0]),
        manual=desk.href(*field_place(thing[0], absence.path)),
        within=kind.fields[absence.path[0]].label if len(absence.path) > 1 else "",
        count=absence.count,
        places=places[:MOST_PLACES],
        others=len(places[MOST_PLACES:]),
    )


def _sheet_row(desk: Desk, thing: Thing, sheet: Sheet) -> MissingRow:
    if sheet.rests_on == REPAIRS:
        return MissingRow(
            anchor=f"sheet-{sheet.name}",
            label=sheet.title,
            help="What was done and found on one machine, so that the next person is faster.",
            file=f"{thing[1]}/repairs/NAME.yml",
            way=None,
            manual=desk.href(urls.manual_kind("repair")),
        )
    return MissingRow(
        anchor=f"sheet-{sheet.name}",
        label=sheet.title,
        help=desk.shelf.things[thing].kind.fields[sheet.rests_on].help,
        file=desk.shelf.edit_path(thing, sheet.rests_on),
        way=_edit(desk, thing, sheet.rests_on),
        manual=desk.href(*field_place("machine", (sheet.rests_on,))),
    )


def _edit(desk: Desk, thing: Thing, key: str) -> str | None:
    base = desk.shelf.edit_base
    return base + desk.shelf.edit_path(thing, key) if base else None
