"""Every address of the site, and every link from one page to another."""

from collections.abc import Iterator
from dataclasses import dataclass, field
from posixpath import dirname, relpath
from urllib.parse import quote

HOME = "index.html"
CAUTIONS = "cautions.html"
INDEX_DATA = "data/index.json"

PART_FOLDERS = {"supply": "supplies", "drive": "drives", "card": "cards", "keyboard": "keyboards", "bus": "buses"}


def sheet(slug: str, name: str) -> str:
    """The address of one sheet of a machine; the first, `glance`, is the machine's own."""
    return f"machines/{slug}/{'index' if name == 'glance' else name}.html"


def part(kind: str, slug: str) -> str:
    """The address of the page of something shared."""
    return f"parts/{PART_FOLDERS[kind]}/{slug}.html"


def machine_data(slug: str) -> str:
    """The address of a machine's figures."""
    return f"data/machines/{slug}.json"


def part_data(kind: str, slug: str) -> str:
    """The address of the figures of something shared."""
    return f"data/parts/{kind}/{slug}.json"


def relative(here: str, there: str, fragment: str = "") -> str:
    """The way from one page of the site to another, as an attribute may hold it."""
    way = "" if there == here and fragment else quote(relpath(there, dirname(here) or "."))
    return way + (f"#{quote(fragment)}" if fragment else "")


@dataclass(frozen=True, slots=True)
class Link:
    """A link that a page has made."""

    here: str
    there: str
    fragment: str


@dataclass(slots=True)
class Trail:
    """All links that were made while pages were written, so that each can be followed before publishing."""

    links: set[Link] = field(default_factory=set)
    anchors: dict[str, frozenset[str]] = field(default_factory=dict)

    def href(self, here: str, there: str, fragment: str = "") -> str:
        """A link from a page, noted."""
        self.links.add(Link(here, there, fragment))
        return relative(here, there, fragment)

    def astray(self, files: frozenset[str]) -> Iterator[Link]:
        """Links that lead to no page or file of the site, or to no such place on a page that was written."""
        for link in sorted(self.links, key=lambda each: (each.here, each.there, each.fragment)):
            anchors = self.anchors.get(link.there)
            if link.there not in files or (link.fragment and anchors is not None and link.fragment not in anchors):
                yield link
