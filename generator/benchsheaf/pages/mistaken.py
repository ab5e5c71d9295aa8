"""The page that stands in the place of a site while its data is wrong."""

from collections.abc import Sequence
from dataclasses import dataclass

from benchsheaf import urls
from benchsheaf.markup import templates
from benchsheaf.mistakes import Mistake
from benchsheaf.pages.page import Page
from benchsheaf.pages.printing import FILTERS, TEMPLATES
from benchsheaf.pages.views import Named
from benchsheaf.urls import Trail
from benchsheaf.wording import as_text


@dataclass(frozen=True, kw_only=True, slots=True)
class MistakenPage:
    """Mistakes in the words of the command, and the way to each of their codes in the manual."""

    count: int
    words: str
    codes: Sequence[Named]


def mistaken_page(mistakes: Sequence[Mistake], trail: Trail) -> Page:
    """One page with every mistake, as text."""

    def written() -> str:
        codes = sorted({each.code.id for each in mistakes})
        ways = [Named(name=code, way=trail.href(urls.HOME, urls.MANUAL_MISTAKES, code)) for code in codes]
        page = MistakenPage(count=len(mistakes), words=as_text(list(mistakes)), codes=ways)
        return templates(TEMPLATES, filters=FILTERS).rendered("mistaken.html", page=page)

    return Page(address=urls.HOME, title="Mistakes in the data", written=written)
