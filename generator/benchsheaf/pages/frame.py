"""What stands around a page: its head, its imprint, and the list of sheets it belongs to."""

from collections.abc import Mapping
from dataclasses import dataclass, replace

from benchsheaf import urls
from benchsheaf.drawing.picture import Picture
from benchsheaf.drawing.sheaf import sheaf_edge
from benchsheaf.model.machine import Machine
from benchsheaf.pages.sheets import GROUPS, REPAIRS, SHEETS, Sheet
from benchsheaf.pages.shelf import Desk


@dataclass(frozen=True, kw_only=True, slots=True)
class SheetRow:
    """A sheet in the list of sheets; `more` leads to what is said of one that is only wanted."""

    number: int
    title: str
    way: str | None
    wanted: bool
    more: str = ""


@dataclass(frozen=True, kw_only=True, slots=True)
class Frame:
    """The head of a page and the list beside it; a page outside a sheaf has no rows, one beside its sheets number 0."""

    above: str
    title: str
    imprint: tuple[tuple[str, str], ...]
    edge: Picture
    home: str
    first: str = ""
    number: int = 1
    count: int = 1
    rows: tuple[tuple[str, tuple[SheetRow, ...]], ...] = ()
    missing: str = ""
    list_name: str = "Sheets"
    designator: bool = False  # the title is one, and never stands in the heading face
    within: bool = False  # the page lies under the sheet that is marked in the list, and is not that sheet
    listed: str = ""  # the list as markup, which stands in the head and in the column


def sheet_frame(desk: Desk, machine: Machine, sheet: Sheet) -> Frame:
    """The frame of one sheet of a machine."""
    return with_list(desk, _bare_frame(desk, machine, sheet))


def with_list(desk: Desk, frame: Frame) -> Frame:
    """The frame with its list printed, once a page."""
    return replace(frame, listed=desk.printed("sheets.html", frame=frame))


def _bare_frame(desk: Desk, machine: Machine, sheet: Sheet) -> Frame:
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
        missing=desk.sheet("missing"),
    )


def missing_frame(desk: Desk, machine: Machine, title: str) -> Frame:
    """The frame of the page about what a machine's sheaf lacks: it lies beside the sheets and is none of them."""
    return with_list(desk, replace(_bare_frame(desk, machine, SHEETS[0]), title=title, number=0, imprint=()))


def _rows(desk: Desk, machine: Machine) -> Mapping[str, tuple[SheetRow, ...]]:
    rows: dict[str, list[SheetRow]] = {group: [] for group in GROUPS}
    for number, sheet in enumerate(SHEETS, 1):
        wanted = sheet.wanted(machine, desk.shelf.collection)
        way = _edit(desk, machine, sheet) if wanted else desk.sheet(sheet.name)
        more = desk.sheet("missing", f"sheet-{sheet.name}") if wanted else ""
        rows[sheet.group].append(SheetRow(number=number, title=sheet.title, way=way, wanted=wanted, more=more))
    return {group: tuple(each) for group, each in rows.items()}


def _edit(desk: Desk, machine: Machine, sheet: Sheet) -> str | None:
    """The way to the file in which what is wanted would be written; none where the site knows no forge."""
    base = desk.shelf.edit_base
    if base is None or sheet.rests_on == REPAIRS:
        return None  # a record is a file of its own, which is not there yet
    return base + desk.shelf.edit_path(("machine", machine.slug), sheet.rests_on)


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
