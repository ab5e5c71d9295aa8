"""What can be found of new parts: by their values, by what is printed on them, and by the designators they are for."""

from collections.abc import Iterator

from benchsheaf.model.machine import Machine
from benchsheaf.pages.finding.entry import Entry
from benchsheaf.pages.new_parts import NewPartsSheet, new_parts_sheet
from benchsheaf.pages.sheets import SHEETS
from benchsheaf.pages.shelf import Desk

SHEET = "new-parts"
TITLE = next(sheet.title for sheet in SHEETS if sheet.name == SHEET)


def new_part_entries(desk: Desk, machine: Machine) -> Iterator[Entry]:
    """Each new part with a value, and the sections of the sheet that people ask for."""
    if not machine.boards:
        return
    sheet = new_parts_sheet(desk, machine)
    for part in sheet.capacitors:
        marking = part.marking
        way = f"plus to {part.plus}, minus to {part.minus}" if part.plus else ""
        more = " ".join([marking.printed, *marking.digits, *marking.letters, marking.chip or "", *part.refs])
        yield _entry(desk, machine, "New part", part.title, part.anchor, way, more)
    for each in sheet.resistors:
        rings = "; ".join(words for _, words, _ in each.pictures)
        more = " ".join([*each.marking.letters, *each.marking.digits, each.marking.short or "", each.ref])
        yield _entry(desk, machine, "New part", each.title, each.anchor, rings, more)
    for fragment, title in _sections(sheet):
        yield _entry(desk, machine, "Section", title, fragment)


def _sections(sheet: NewPartsSheet) -> Iterator[tuple[str, str]]:
    sections = (
        ("shopping", "What to buy", bool(sheet.table)),
        (
            "marking",
            "What a new part looks like, and which way round it goes",
            bool(sheet.capacitors or sheet.resistors),
        ),
        ("ratings", "Which rating is enough", bool(sheet.ratings)),
        ("limits", "What a good aluminium electrolytic measures", bool(sheet.limits)),
    )
    yield from ((fragment, title) for fragment, title, is_there in sections if is_there)


def _entry(desk: Desk, machine: Machine, kind: str, title: str, fragment: str, text: str = "", more: str = "") -> Entry:
    return Entry(
        kind=kind,
        title=title,
        where=f"{machine.name}, {TITLE}",
        way=desk.sheet(SHEET, fragment),
        text=text,
        more=more,
        machines=(machine.slug,),
    )
