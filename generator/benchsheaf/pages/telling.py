"""What contributors write in words, put into print: designators become links, `[[…]]` a figure, nothing else markup."""

import re
from collections.abc import Callable

from benchsheaf.links.mentions import MENTION
from benchsheaf.markup import Markup, escaped

Way = Callable[[str], str | None]
"""From an exact token of a text to the address that it leads to, if it is a designator."""
Figure = Callable[[str], str | None]
"""From the path of a figure to the figure in print, if there is one."""

# A token runs from a space to a space; what opens and closes a phrase around it is not part of it. It has the form of a
# designator, perhaps with the slug of what it belongs to, perhaps with a contact: so few words are looked up in vain.
_BETWEEN = r"\s\u2013\u2014"
_TOKEN = re.compile(
    rf"(?<![^{_BETWEEN}(\[\"'\u201c\u2018\u00ab])"
    r"(?P<token>(?:[a-z0-9-]+/)?[A-Z]{1,4}[0-9]{0,4}[A-Z]?(?:-[A-Za-z0-9]+)?)"
    rf"(?=(?:['\u2019]s)?[)\]\"'\u201d\u2019\u00bb.,;:!?\u2026]*(?:$|[{_BETWEEN}]))"
)


def told(text: str, way: Way, figure: Figure) -> Markup:
    """A text as it may stand inside a sentence of a page."""
    words = worded(text, figure) if "[[" in text else text
    pieces: list[str] = []
    end = 0
    for found in _TOKEN.finditer(words):
        token = found["token"]
        if there := way(token):
            pieces.append(escaped(words[end : found.start()]))
            pieces.append(f'<a class="mono" href="{escaped(there)}">{escaped(token)}</a>')
            end = found.end()
    return Markup("".join([*pieces, escaped(words[end:])]))


def told_paragraphs(text: str, way: Way, figure: Figure) -> Markup:
    """A text in which blank lines make paragraphs."""
    blocks = [block.strip() for block in text.split("\n\n") if block.strip()]
    return Markup("").join(Markup("<p>{}</p>").format(told(block, way, figure)) for block in blocks)


def worded(text: str, figure: Figure) -> str:
    """A text with its figures in print and no links, for lists in which it is looked for."""

    def shown(found: re.Match[str]) -> str:
        known = figure(found["path"])
        return found[0] if known is None else known

    return MENTION.sub(shown, text)
