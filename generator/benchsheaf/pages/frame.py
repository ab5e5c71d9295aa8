"""What stands around a page: its head, its imprint, and the list of sheets it belongs to."""

from collections.abc import Mapping
from dataclasses import dataclass

from benchsheaf import urls
from benchsheaf.drawing.picture import Picture
from benchsheaf.drawing.sheaf import sheaf_edge
from benchsheaf.model.machine import Machine
from benchsheaf.pages.sheets import GROUPS, SHEETS, Sheet
from benchsheaf.pages.shelf import Desk


@dataclass(frozen=True, kw_only=True, slots=True)
class SheetRow:
    """A sheet in the list of sheets."""

    number: int
    title: str
    way: str | None
    wanted: bool


@dataclass(frozen=True, kw_only=True, slots=True)
class Frame:
    """The head of a page and the list beside it; a page outside a sheaf has no rows."""

    above: str
    title: str
    imprint: tuple[tuple[str, str], ...]
    edge: Picture
    home: str
    first: str = ""
    number: int = 1
    count: int = 1
    rows: tuple[tuple[str, tuple[SheetRow, ...]], ...] = ()
    designator: bool = False  # the title is one, and never stands in the heading face


def sheet_frame(desk: Desk, machine: Machine, sheet: Sheet) -> Frame:
    """The frame of one sheet of a machine."""
    number = SHEETS.index(sheet) + 1
    count = len(SHEETS)
    return Frame(
        above=machine.name,
        title=sheet.title,
        imprint=(("Sheet", f"{number} of {count}"), ("Outfit", machine.configurations[0].name)),
        edge=sheaf_edge(count, number, "edge"),
        home=desk.href(urls.HOME),
        first=desk.sheet("glance"),
        number=number,
        count=count,
        rows=tuple(_rows(desk, machine).items()),
    )


def _rows(desk: Desk, machine: Machine) -> Mapping[str, tuple[SheetRow, ...]]:
    rows: dict[str, list[SheetRow]] = {group: [] for group in GROUPS}
    for number, sheet in enumerate(SHEETS, 1):
        wanted = sheet.wanted(machine)
        way = _edit(desk, machine, sheet) if wanted else desk.sheet(sheet.name)
        rows[sheet.group].append(SheetRow(number=number, title=sheet.title, way=way, wanted=wanted))
    return {group: tuple(each) for group, each in rows.items()}


def _edit(desk: Desk, machine: Machine, sheet: Sheet) -> str | None:
    """The way to the file in which what is wanted would be written; none where the site knows no forge."""
    base = desk.shelf.edit_base
    return base + desk.shelf.edit_path(("machine", machine.slug), sheet.rests_on) if base else None


def loose_frame(desk: Desk, above: str, title: str, *, designator: bool = False) -> Frame:
    """The frame of a page that belongs to no machine."""
    return Frame(
        above=above,
        title=title,
        imprint=(),
        edge=sheaf_edge(len(SHEETS), 1, "edge"),
        home=desk.href(urls.HOME),
        designator=designator,
    )
