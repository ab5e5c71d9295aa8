"""The handbook: its pages, the list beside them, and the ways between them and the sheets of machines."""

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass

from benchsheaf import urls
from benchsheaf.drawing.sheaf import sheaf_edge
from benchsheaf.markup import Markup
from benchsheaf.pages.frame import Frame, SheetRow, with_list
from benchsheaf.pages.handbook.cautions import BURNS, PLUG_OUT, TRAINED
from benchsheaf.pages.handbook.codes_page import codes
from benchsheaf.pages.handbook.disks_page import disks
from benchsheaf.pages.handbook.errors_page import errors
from benchsheaf.pages.handbook.leaves import GROUPS, LEAVES, NAME, Leaf
from benchsheaf.pages.handbook.practice_page import practice
from benchsheaf.pages.handbook.proof_page import proof
from benchsheaf.pages.handbook.rings_page import rings
from benchsheaf.pages.handbook.series_page import series
from benchsheaf.pages.handbook.shape import Content, Used
from benchsheaf.pages.handbook.sums_page import sums
from benchsheaf.pages.handbook.touch_page import touch
from benchsheaf.pages.handbook.units_page import units
from benchsheaf.pages.handbook.wires_page import wires
from benchsheaf.pages.page import Page
from benchsheaf.pages.sheets import SHEETS
from benchsheaf.pages.shelf import Desk, Shelf
from benchsheaf.pages.views import CautionView, Named

CONTENTS: Mapping[str, Callable[[], Content]] = {
    "touch": touch,
    "rings": rings,
    "codes": codes,
    "series": series,
    "wires": wires,
    "units": units,
    "disks": disks,
    "sums": sums,
    "errors": errors,
    "proof": proof,
}


@dataclass(frozen=True, kw_only=True, slots=True)
class IndexPage:
    """All questions in their groups."""

    groups: Sequence[tuple[str, Sequence[Named]]]
    cautions: Sequence[CautionView]


def leaves_of(shelf: Shelf) -> Sequence[Leaf]:
    """The pages that there are: that of practice only where a collection tells of it."""
    return [leaf for leaf in LEAVES if leaf.name != "practice" or shelf.collection.practice]


def handbook_pages(shelf: Shelf) -> Iterator[Page]:
    """Every page of the handbook."""
    for number, leaf in enumerate(leaves_of(shelf), 1):
        yield _page(shelf, leaf, number)


def _page(shelf: Shelf, leaf: Leaf, number: int) -> Page:
    here = urls.handbook(leaf.name)

    def frame() -> Frame:
        return shelf.kept("frame", here, lambda: _frame(shelf.desk(here), leaf, number))

    def written() -> str:
        return _written(shelf.desk(here), leaf, frame())

    def column() -> str:
        return shelf.desk(here).printed("column.html", frame=frame())

    edit = shelf.edit_path(("practice", "practice"), "practice") if leaf.name == "practice" else None
    return Page(address=here, title=f"{NAME}: {leaf.title}", written=written, column=column, edit=edit)


def _written(desk: Desk, leaf: Leaf, frame: Frame) -> str:
    if leaf.name == "index":
        return desk.printed("handbook-index.html", frame=frame, page=_index(desk))
    return desk.printed("handbook.html", frame=frame, page=content_of(desk, leaf), used=list(_used(desk, leaf)))


def content_of(desk: Desk, leaf: Leaf) -> Content:
    """What a page says; that of the list of pages is none of these."""
    return practice(desk) if leaf.name == "practice" else CONTENTS[leaf.name]()


def _index(desk: Desk) -> IndexPage:
    leaves = leaves_of(desk.shelf)
    return IndexPage(
        cautions=(PLUG_OUT, TRAINED, BURNS),
        groups=[
            (
                group,
                [
                    Named(name=leaf.title, way=desk.href(urls.handbook(leaf.name)), summary=Markup(leaf.says))
                    for leaf in leaves
                    if leaf.group == group and leaf.name != "index"
                ],
            )
            for group in GROUPS
        ],
    )


def _used(desk: Desk, leaf: Leaf) -> Iterator[Used]:
    """The sheets of each machine that lead to a page."""
    collection = desk.shelf.collection
    for slug, machine in collection.machines.items():
        sheets = [
            Named(name=sheet.title, way=desk.sheet(sheet.name, slug=slug))
            for sheet in SHEETS
            if sheet.name in leaf.sheets and not sheet.wanted(machine, collection)
        ]
        if sheets:
            yield Used(machine=machine.name, sheets=sheets)


def questions(desk: Desk) -> list[Named]:
    """Every page but the list of them, for those who come in by a question."""
    return [
        Named(name=leaf.title, way=desk.href(urls.handbook(leaf.name)))
        for leaf in leaves_of(desk.shelf)
        if leaf.name != "index"
    ]


def in_handbook(desk: Desk, sheet: str) -> str:
    """The line at the foot of a machine's sheet that leads to the questions which come up there."""
    rows = [
        Named(name=leaf.title, way=desk.href(urls.handbook(leaf.name)))
        for leaf in leaves_of(desk.shelf)
        if sheet in leaf.sheets
    ]
    return desk.printed("in-handbook.html", rows=rows)


def _frame(desk: Desk, leaf: Leaf, number: int) -> Frame:
    leaves = leaves_of(desk.shelf)
    rows = [
        (
            group,
            tuple(
                SheetRow(number=place, title=each.title, way=desk.href(urls.handbook(each.name)), wanted=False)
                for place, each in enumerate(leaves, 1)
                if each.group == group
            ),
        )
        for group in GROUPS
    ]
    frame = Frame(
        above=NAME,
        title=leaf.title,
        imprint=(("Sheet", f"{number} of {len(leaves)}"),),
        edge=sheaf_edge(len(leaves), number, "edge"),
        home=desk.href(urls.HOME),
        first=desk.href(urls.HANDBOOK),
        number=number,
        count=len(leaves),
        rows=tuple(rows),
        list_name=NAME,
    )
    return with_list(desk, frame)
