"""What can be found in the handbook: its questions, what each section answers, errors, and what a workshop goes by."""

from collections.abc import Iterator

from benchsheaf import urls
from benchsheaf.pages.finding.entry import Entry
from benchsheaf.pages.handbook.book import content_of, leaves_of
from benchsheaf.pages.handbook.leaves import NAME, Leaf
from benchsheaf.pages.handbook.shape import Point, Section
from benchsheaf.pages.shelf import Desk


def handbook_entries(desk: Desk) -> Iterator[Entry]:
    """Each page, each section with the words of its table, and each point."""
    for leaf in leaves_of(desk.shelf):
        here = urls.handbook(leaf.name)
        yield Entry(kind=NAME, title=leaf.title, where=NAME, way=desk.href(here), text=leaf.says)
        if leaf.name != "index":
            for section in content_of(desk, leaf).sections:
                yield from _section(desk, leaf, section)


def _section(desk: Desk, leaf: Leaf, section: Section) -> Iterator[Entry]:
    here = urls.handbook(leaf.name)
    rows = section.table.rows if section.table else ()
    yield Entry(
        kind=NAME,
        title=section.title,
        where=leaf.title,
        way=desk.href(here, section.anchor),
        text=" ".join(section.told),
        more=" ".join(" ".join(row) for row in rows),
    )
    for point in section.points:
        yield _point(desk, leaf, section, point)


def _point(desk: Desk, leaf: Leaf, section: Section, point: Point) -> Entry:
    return Entry(
        kind=NAME,
        title=point.title or f"{section.title}: {point.mark.partition('.')[0].lower()}",
        where=leaf.title,
        way=desk.href(urls.handbook(leaf.name), point.anchor),
        text=point.plain or f"{point.right} {point.wrong}",
    )
