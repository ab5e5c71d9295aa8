"""What can be found of new parts: by their values, by what is printed on them, and by the designators they are for."""

from collections.abc import Iterator

from benchsheaf.compute.workup.new_parts import NewParts
from benchsheaf.model.machine import Machine
from benchsheaf.pages.finding.entry import Entry
from benchsheaf.pages.new_part_words import alike, capacitor_title, new_anchor, resistor_title
from benchsheaf.pages.printing import rail_name
from benchsheaf.pages.sheets import SHEETS
from benchsheaf.pages.shelf import Desk

SHEET = "new-parts"
TITLE = next(sheet.title for sheet in SHEETS if sheet.name == SHEET)


def new_part_entries(desk: Desk, machine: Machine) -> Iterator[Entry]:
    """Each new part with a value, and the sections of the sheet that people ask for."""
    if not machine.boards:
        return
    new = desk.shelf.workup.machines[machine.slug].new_parts
    for several in alike(new.capacitors):
        first, marking, way = several[0], several[0].marking, several[0].way_round
        text = f"plus to {rail_name(way.plus_on)}, minus to {rail_name(way.minus_on)}" if way else ""
        refs = [each.ref for each in several]
        more = " ".join([marking.printed, *marking.digits, *marking.letters, marking.chip or "", *refs])
        yield _entry(desk, machine, "New part", capacitor_title(desk, first), new_anchor(first.ref), text, more)
    for each in new.resistors:
        rings = "; ".join(", ".join(one.rings) for one in each.marking.coloured)
        more = " ".join([*each.marking.letters, *each.marking.digits, each.marking.short or "", each.ref])
        yield _entry(desk, machine, "New part", resistor_title(each), new_anchor(each.ref), rings, more)
    for fragment, title in _sections(new):
        yield _entry(desk, machine, "Section", title, fragment)


def _sections(new: NewParts) -> Iterator[tuple[str, str]]:
    rated = any(each.rating and each.stress for each in new.capacitors)
    sections = (
        ("shopping", "What to buy", bool(new.shopping)),
        ("marking", "What a new part looks like, and which way round it goes", bool(new.capacitors or new.resistors)),
        ("ratings", "Which rating is enough", rated),
        ("limits", "What a good aluminium electrolytic measures", any(each.limits for each in new.capacitors)),
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
