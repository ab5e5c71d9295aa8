"""What can be found in the manual: its pages, every field, every mistake."""

from collections.abc import Iterator

from benchsheaf import urls
from benchsheaf.fields import all_fields, built_in_schemas
from benchsheaf.pages.finding.entry import Entry
from benchsheaf.pages.manual import NAME, manual_pages
from benchsheaf.pages.manual_codes import all_codes
from benchsheaf.pages.manual_map import field_place
from benchsheaf.pages.shelf import Desk


def manual_entries(desk: Desk) -> Iterator[Entry]:
    """The pages of the manual, then fields and codes of mistakes; a field that several kinds share once."""
    for page in manual_pages(desk.shelf, alone=True):
        title = page.title.removeprefix(f"{NAME}: ")
        yield Entry(kind=NAME, title=title, where=NAME, way=desk.href(page.address), more=NAME, aside=True)
    told = set()
    for kind, whole in built_in_schemas().kinds.items():
        for path, described in all_fields(whole):
            place = field_place(kind, path)
            # Everything may have a source; the manual tells of it once.
            if place in told or described.points_at == "source":
                continue
            told.add(place)
            text = f"{'.'.join(path)}: {described.help}"
            way = desk.href(*place)
            yield Entry(kind="Field", title=described.label, where=f"{NAME}, {kind}", way=way, text=text, aside=True)
    for code in all_codes():
        way = desk.href(urls.MANUAL_MISTAKES, code.id)
        yield Entry(kind="Mistake", title=code.id, where=NAME, way=way, text=code.meaning, designator=True, aside=True)
