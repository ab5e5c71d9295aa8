"""Words of the trade, in the order of the alphabet, and what they mean at a bench."""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

from benchsheaf import urls
from benchsheaf.model.displays import Term
from benchsheaf.model.sources import SourceEntry
from benchsheaf.pages.frame import loose_frame
from benchsheaf.pages.page import Page
from benchsheaf.pages.shelf import Desk, Shelf

TITLE = "Words of the trade"
OTHERS = "0–9"
"""Where words stand that begin with no letter."""


@dataclass(frozen=True, kw_only=True, slots=True)
class Letter:
    """All words that begin with a letter; what begins with none stands under `0–9`."""

    letter: str
    anchor: str
    terms: Sequence[Term]


@dataclass(frozen=True, kw_only=True, slots=True)
class TermsPage:
    """All words, letter by letter, and where they are from."""

    letters: Sequence[Letter]
    sources: Sequence[SourceEntry]


def terms_pages(shelf: Shelf) -> Iterator[Page]:
    """The page of words, if there are any."""
    if shelf.collection.terms:
        path = shelf.edit_path(("terms", "terms"), "terms")
        yield Page(address=urls.TERMS, title=TITLE, written=lambda: _terms(shelf.desk(urls.TERMS)), edit=path)


def letters(terms: Iterable[Term]) -> list[Letter]:
    """Words in the order of the alphabet, without regard to capitals, under the letters that they begin with."""
    found: dict[str, list[Term]] = {}
    for term in sorted(terms, key=lambda each: (each.term.casefold(), each.id)):
        first = term.term[0].upper()
        found.setdefault(first if "A" <= first <= "Z" else OTHERS, []).append(term)
    return [Letter(letter=letter, anchor=_anchor(letter), terms=several) for letter, several in found.items()]


def _anchor(letter: str) -> str:
    return "letter-others" if letter == OTHERS else f"letter-{letter.lower()}"


def _terms(desk: Desk) -> str:
    page = TermsPage(letters=letters(desk.shelf.collection.terms.values()), sources=desk.shelf.collection.term_sources)
    return desk.printed("terms.html", frame=loose_frame(desk, "All machines", TITLE), page=page)
