"""What contributors write in words, put into print: designators become links, `[[…]]` a figure, nothing else markup."""

import re
from collections.abc import Callable
from typing import NamedTuple

from benchsheaf.links.mentions import MENTION
from benchsheaf.markup import Markup, escaped


class Lead(NamedTuple):
    """A designator in a text: the address and the place on it to which it leads."""

    token: str
    there: str
    place: str


Way = Callable[[str], Lead | None]
"""From an exact token of a text to where it leads, if it is a designator."""
Figure = Callable[[str], str | None]
"""From the path of a figure to the figure in print, if there is one."""

Pieces = tuple[str | Lead, ...]
MOST_KEPT = 4096
"""How many cut texts are kept: those of some machines and what they hold; all at once would fill the memory."""


class Cut:
    """Texts that are cut already: several pages of a machine, and its sisters, tell the same ones."""

    def __init__(self) -> None:
        """Begin with none."""
        self._kept: dict[object, Pieces] = {}

    def of(self, key: object, made: Callable[[], Pieces]) -> Pieces:
        """The pieces of a text, which are made only if they are not known."""
        if key not in self._kept:
            if len(self._kept) >= MOST_KEPT:
                self._kept.clear()
            self._kept[key] = made()
        return self._kept[key]


# A token runs from a space to a space; what opens and closes a phrase around it is not part of it. It has the form of a
# designator, perhaps with the slug of what it belongs to, perhaps with a contact: so few words are looked up in vain.
_BETWEEN = r"\s\u2013\u2014"
_TOKEN = re.compile(
    rf"(?<![^{_BETWEEN}(\[\"'\u201c\u2018\u00ab])"
    r"(?P<token>(?:[a-z0-9-]+/)?[A-Z]{1,4}[0-9]{0,4}[A-Z]?(?:-[A-Za-z0-9]+)?)"
    rf"(?=(?:['\u2019]s)?[)\]\"'\u201d\u2019\u00bb.,;:!?\u2026]*(?:$|[{_BETWEEN}]))"
)


def pieces(text: str, way: Way, figure: Figure) -> Pieces:
    """A text cut where a designator stands; what is between them is escaped.

    It is the same on every page, while the link itself depends on where the page is.
    """
    words = worded(text, figure) if "[[" in text else text
    found: list[str | Lead] = []
    end = 0
    for each in _TOKEN.finditer(words):
        if lead := way(each["token"]):
            found += escaped(words[end : each.start()]), lead
            end = each.end()
    return (*found, escaped(words[end:]))


def told(cut: Pieces, href: Callable[[str, str], str]) -> Markup:
    """The pieces of a text as it may stand inside a sentence of a page."""
    return Markup("".join([_link(each, href) if isinstance(each, Lead) else each for each in cut]))


def _link(lead: Lead, href: Callable[[str, str], str]) -> str:
    return f'<a class="mono" href="{escaped(href(lead.there, lead.place))}">{escaped(lead.token)}</a>'


def worded(text: str, figure: Figure) -> str:
    """A text with its figures in print and no links, for lists in which it is looked for."""

    def shown(found: re.Match[str]) -> str:
        known = figure(found["path"])
        return found[0] if known is None else known

    return MENTION.sub(shown, text)
