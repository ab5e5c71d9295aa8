"""What can be found of the words of the trade."""

from collections.abc import Iterator

from benchsheaf import urls
from benchsheaf.pages.finding.entry import Entry
from benchsheaf.pages.shelf import Desk
from benchsheaf.pages.terms import TITLE


def term_entries(desk: Desk) -> Iterator[Entry]:
    """Each word, to be found by itself and by what it means."""
    for term in desk.shelf.collection.terms.values():
        way = desk.href(urls.TERMS, f"term-{term.id}")
        yield Entry(kind="Term", title=term.term, where=TITLE, way=way, text=term.means)
