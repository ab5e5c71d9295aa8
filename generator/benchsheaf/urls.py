"""Every address of the site, and every link from one page to another."""

from collections.abc import Iterator
from dataclasses import dataclass, field
from typing import NamedTuple
from urllib.parse import quote

HOME = "index.html"
CAUTIONS = "cautions.html"
MISSING = "missing.html"
MANUAL = "manual/index.html"
MANUAL_MISTAKES = "manual/mistakes.html"
MANUAL_UNITS = "manual/units.html"
INDEX_DATA = "data/index.json"
SEARCH = "search"
"""Where the ways of the look-up begin: the site's own folder."""

PART_FOLDERS = {"supply": "supplies", "drive": "drives", "card": "cards", "keyboard": "keyboards", "bus": "buses"}


def sheet(slug: str, name: str) -> str:
    """The address of one sheet of a machine; the first, `glance`, is the machine's own."""
    return f"machines/{slug}/{'index' if name == 'glance' else name}.html"


def part(kind: str, slug: str) -> str:
    """The address of the page of something shared."""
    return f"parts/{PART_FOLDERS[kind]}/{slug}.html"


def manual_kind(kind: str) -> str:
    """The address of the manual's page about one kind of description."""
    return f"manual/{kind}.html"


def manual_section(name: str) -> str:
    """The address of the manual's page about a section that is too long to stand with its kind."""
    return f"manual/sections/{name}.html"


def machine_data(slug: str) -> str:
    """The address of a machine's figures."""
    return f"data/machines/{slug}.json"


def part_data(kind: str, slug: str) -> str:
    """The address of the figures of something shared."""
    return f"data/parts/{kind}/{slug}.json"


def relative(here: str, there: str, fragment: str = "") -> str:
    """The way from one page of the site to another, as an attribute may hold it."""
    place = f"#{quote(fragment)}" if fragment else ""
    if there == here and fragment:
        return place
    folder, target = here.split("/")[:-1], there.split("/")
    shared = 0
    while shared < min(len(folder), len(target) - 1) and folder[shared] == target[shared]:
        shared += 1
    return quote("/".join([*[".."] * (len(folder) - shared), *target[shared:]])) + place


def search_data(name: str) -> str:
    """The address of one piece of what the look-up reads."""
    return f"{SEARCH}/{name}.js"


class Link(NamedTuple):
    """A link that a page has made."""

    here: str
    there: str
    fragment: str


@dataclass(slots=True)
class Trail:
    """All places that were linked to while pages were written, so that each link can be followed before publishing.

    Of several links to one place the first is kept: `links` gives for a place the page that led there.
    """

    links: dict[tuple[str, str], str] = field(default_factory=dict)
    anchors: dict[str, frozenset[str]] = field(default_factory=dict)

    def href(self, here: str, there: str, fragment: str = "") -> str:
        """A link from a page, noted."""
        self.links.setdefault((there, fragment), here)
        return relative(here, there, fragment)

    def astray(self, files: frozenset[str]) -> Iterator[Link]:
        """Links that lead to no page or file of the site, or to no such place on a page that was written."""
        for (there, fragment), here in sorted(self.links.items(), key=lambda each: (each[1], *each[0])):
            anchors = self.anchors.get(there)
            if there not in files or (fragment and anchors is not None and fragment not in anchors):
                yield Link(here, there, fragment)
