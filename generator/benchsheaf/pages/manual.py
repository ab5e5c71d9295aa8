"""The manual: how a description is written, what may stand in it, what units and mistakes there are."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from benchsheaf import urls
from benchsheaf.drawing.sheaf import sheaf_edge
from benchsheaf.fields import all_fields, built_in_schemas, worked_example
from benchsheaf.links.mentions import MENTION
from benchsheaf.pages.frame import Frame, SheetRow, with_list
from benchsheaf.pages.manual_codes import mistakes_page
from benchsheaf.pages.manual_fields import kind_page, section_page
from benchsheaf.pages.manual_map import LongSection, file_of, kinds_in_order, long_sections
from benchsheaf.pages.manual_units import units_page
from benchsheaf.pages.page import Page
from benchsheaf.pages.shelf import Desk, Shelf

NAME = "Manual"


@dataclass(frozen=True, kw_only=True, slots=True)
class KindRow:
    """A kind of description and where its files stand."""

    name: str
    file: str
    way: str


@dataclass(frozen=True, kw_only=True, slots=True)
class ManualPage:
    """How to add a machine: the kinds there are, and the shortest files that have no mistake."""

    kinds: Sequence[KindRow]
    example: Mapping[str, str]
    text_field: tuple[str, str]
    units: str
    mistakes: str
    missing: str | None
    can_edit: bool


def manual_pages(shelf: Shelf, *, alone: bool = False) -> Iterator[Page]:
    """All pages of the manual; they come from the schemas and know nothing of what is described.

    `alone` for a site whose data is wrong, so that there are no sheets beside them.
    """
    for number, (address, title) in enumerate(_leaves(), 1):
        yield _page(shelf, address, title, number, alone=alone)
    for section in long_sections():
        yield _page(shelf, urls.manual_section(section.name), _section_title(section), 0, alone=alone)


def _leaves() -> list[tuple[str, str]]:
    """The leaves of the manual that its list names: the address and the title of each."""
    kinds = [(urls.manual_kind(kind), f"Fields of {_spoken(kind)}") for kind in kinds_in_order()]
    return [
        (urls.MANUAL, "Add a machine"),
        *kinds,
        (urls.MANUAL_UNITS, "Quantities and units"),
        (urls.MANUAL_MISTAKES, "Mistakes and what to do"),
    ]


def _spoken(kind: str) -> str:
    return kind if kind.endswith("s") and kind != "bus" else f"a {kind}"


def _section_title(section: LongSection) -> str:
    several = "" if len(section.kinds) > 1 else f" of {_spoken(section.kinds[0])}"
    return f"{section.described.label}{several}"


def _page(shelf: Shelf, address: str, title: str, number: int, *, alone: bool) -> Page:
    def frame() -> Frame:
        return shelf.kept("frame", address, lambda: _frame(shelf.desk(address), title, number))

    def written() -> str:
        return _written(shelf.desk(address), frame(), alone=alone)

    def column() -> str:
        return shelf.desk(address).printed("column.html", frame=frame())

    return Page(address=address, title=f"{NAME}: {title}", written=written, column=column)


def _written(desk: Desk, frame: Frame, *, alone: bool) -> str:
    here = desk.here
    if here == urls.MANUAL:
        return desk.printed("manual.html", frame=frame, page=_manual_page(desk, alone=alone))
    if here == urls.MANUAL_UNITS:
        return desk.printed("manual-units.html", frame=frame, page=units_page(desk.href(urls.MANUAL_MISTAKES)))
    if here == urls.MANUAL_MISTAKES:
        return desk.printed("manual-mistakes.html", frame=frame, page=mistakes_page())
    for section in long_sections():
        if here == urls.manual_section(section.name):
            return desk.printed("manual-section.html", frame=frame, page=section_page(desk, section))
    kind = next(kind for kind in kinds_in_order() if here == urls.manual_kind(kind))
    return desk.printed("manual-kind.html", frame=frame, page=kind_page(desk, kind))


def _manual_page(desk: Desk, *, alone: bool) -> ManualPage:
    return ManualPage(
        kinds=[
            KindRow(name=kind, file=file_of(kind), way=desk.href(urls.manual_kind(kind))) for kind in kinds_in_order()
        ],
        example=worked_example(built_in_schemas()),
        text_field=_text_field(),
        units=desk.href(urls.MANUAL_UNITS),
        mistakes=desk.href(urls.MANUAL_MISTAKES),
        missing=None if alone else desk.href(urls.MISSING),
        can_edit=desk.shelf.edit_base is not None,
    )


def _text_field() -> tuple[str, str]:
    """A field whose example asks for a figure: its path and the example."""
    return next(
        (".".join(path), each.example)
        for kind in built_in_schemas().kinds.values()
        for path, each in all_fields(kind)
        if isinstance(each.example, str) and MENTION.search(each.example)
    )


def _frame(desk: Desk, title: str, number: int) -> Frame:
    leaves = _leaves()
    rows = tuple(
        SheetRow(number=place, title=name, way=desk.href(address), wanted=False)
        for place, (address, name) in enumerate(leaves, 1)
    )
    frame = Frame(
        above=NAME,
        title=title,
        imprint=(("Sheet", f"{number} of {len(leaves)}"),) if number else (),
        edge=sheaf_edge(len(leaves), max(number, 1), "edge"),
        home=desk.href(urls.HOME),
        first=desk.href(urls.MANUAL),
        number=number,
        count=len(leaves),
        rows=(("Writing it down", rows),),
        list_name=NAME,
    )
    return with_list(desk, frame)
