"""Every address of the site, and every link from one page to another."""

import re
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field
from functools import lru_cache
from typing import NamedTuple
from urllib.parse import quote

HOME = "index.html"
CAUTIONS = "cautions.html"
TERMS = "terms.html"
MISSING = "missing.html"
MARKINGS = "markings.html"
HANDBOOK = "handbook/index.html"
MANUAL = "manual/index.html"
MANUAL_MISTAKES = "manual/mistakes.html"
MANUAL_UNITS = "manual/units.html"
INDEX_DATA = "data/index.json"
SEARCH = "search"
"""Where the ways of the look-up begin: the site's own folder."""

PART_FOLDERS = {
    "supply": "supplies",
    "drive": "drives",
    "card": "cards",
    "keyboard": "keyboards",
    "bus": "buses",
    "display": "displays",
    "medium": "media",
}


def sheet(slug: str, name: str) -> str:
    """The address of one sheet of a machine; the first, `glance`, is the machine's own."""
    return f"machines/{slug}/{'index' if name == 'glance' else name}.html"


def repair(slug: str) -> str:
    """The address of one repair record, by its slug `MACHINE/NAME`."""
    machine, _, name = slug.partition("/")
    return f"machines/{machine}/repairs/{name}.html"


def part(kind: str, slug: str) -> str:
    """The address of the page of something shared."""
    return f"parts/{PART_FOLDERS[kind]}/{slug}.html"


def handbook(name: str) -> str:
    """The address of one page of the handbook; the first, `index`, lists the others."""
    return f"handbook/{name}.html"


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


def shopping_data(slug: str) -> str:
    """The address of a machine's list of new parts, for a spreadsheet."""
    return f"data/shopping/{slug}.csv"


def relative(here: str, there: str, fragment: str = "") -> str:
    """The way from one page of the site to another, as an attribute may hold it."""
    place = f"#{_quoted(fragment)}" if fragment else ""
    if there == here and fragment:
        return place
    return _way(here.rpartition("/")[0], there) + place


@lru_cache(maxsize=1 << 10)
def _way(folder: str, there: str) -> str:
    """The way from a folder; pages of one folder, which come one after the other, lead to the same places."""
    above, target = folder.split("/") if folder else [], there.split("/")
    shared = 0
    while shared < min(len(above), len(target) - 1) and above[shared] == target[shared]:
        shared += 1
    return _quoted("/".join([*[".."] * (len(above) - shared), *target[shared:]]))


def _quoted(text: str) -> str:
    return text if _PLAIN.fullmatch(text) else quote(text)


# What a quote leaves as it is; to see that is quicker than to quote.
_PLAIN = re.compile(r"[\w.~/-]*", re.ASCII)


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
    """All links that were made while pages were written, each followed as soon as both its ends are known.

    What has been followed is forgotten, and the places of a page are kept as one text: so a large site needs little.
    """

    _waiting: dict[str, dict[str, str]] = field(default_factory=dict)  # to come → who leads there → places in lines
    _places: dict[str, str] = field(default_factory=dict)  # page → its places, a space around each
    _lost: list[Link] = field(default_factory=list)

    @property
    def waiting(self) -> set[tuple[str, str]]:
        """What was linked to and is not written yet: pages or files, and places on them."""
        return {(there, place) for there, leading in self._waiting.items() for _, place in _each(leading)}

    def href(self, here: str, there: str, fragment: str = "") -> str:
        """A link from a page, noted."""
        places = self._places.get(there)
        if places is None:
            leading = self._waiting.setdefault(there, {})
            line = f"\n{fragment}\n"
            if not any(line in places for places in leading.values()):
                leading[here] = f"{leading.get(here, _BEGUN)}{fragment}\n"
        elif fragment and f" {fragment} " not in places:
            self._lost.append(Link(here, there, fragment))
        return relative(here, there, fragment)

    def arrive(self, page: str, places: Iterable[str]) -> None:
        """A page was written, and these places are on it."""
        self._places[page] = joined = f" {' '.join(places)} "
        for here, fragment in _each(self._waiting.pop(page, {})):
            if fragment and f" {fragment} " not in joined:
                self._lost.append(Link(here, page, fragment))

    def astray(self, files: frozenset[str]) -> Iterator[Link]:
        """Links that lead to no page or file of the site, or to no such place on a page that was written."""
        nowhere = {there: leading for there, leading in self._waiting.items() if there not in files}
        unknown = [Link(here, there, place) for there, leading in nowhere.items() for here, place in _each(leading)]
        yield from sorted([*self._lost, *unknown])


_BEGUN = "\n"
"""Places in lines, before there is one."""


def _each(leading: Mapping[str, str]) -> Iterator[tuple[str, str]]:
    """Who leads somewhere, and to which place, as places in lines tell it."""
    for here, places in leading.items():
        for place in places[1:-1].split("\n"):
            yield here, place
