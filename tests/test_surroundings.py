"""What stands around a page is printed once for a folder, and the page is the same as if it were printed for itself."""

from collections.abc import Mapping
from html import escape
from typing import Any

import pytest

from benchsheaf.surroundings import Own, Surroundings


class Theme:
    """A theme that asks a page for what ours asks, and counts how often it prints."""

    def __init__(self) -> None:
        """Nothing printed yet."""
        self.times = 0

    def printed(self, context: Mapping[str, Any]) -> str:
        """A whole page; titles are escaped as the template does it."""
        self.times += 1
        page = context["page"]
        column = f"<nav>{page.column}</nav>" if page.column else ""
        edit = f'<a href="{escape(page.edit_url)}">edit</a>' if page.edit_url else ""
        canonical = f'<link href="{escape(page.canonical_url)}">' if page.canonical_url else ""
        heading = "" if "<h1" in page.content else "<h1>none</h1>"
        return (
            f"{context['base_url']}<title>{escape(page.title)}</title>{canonical}{column}{heading}{page.content}{edit}"
        )


def own(**other: str) -> Own:
    """A page of a machine."""
    given = {"title": "C61 & <R2>", "column": "<ol></ol>", "content": "<h1>A</h1>", "edit_url": "e?a=1&b=2"}
    return Own(**{"url": "machines/a/power.html", "canonical_url": "", **given, **other})  # type: ignore[arg-type]


PAGES = [
    own(),
    own(title="<quoted>", content="<h1>B</h1><p>C & D"),
    own(column=""),
    own(edit_url=""),
    own(canonical_url="https://a.example/?b=1&c=2"),
]


@pytest.mark.parametrize("base_url", [".", ".."])
@pytest.mark.parametrize("page", PAGES)
def test_a_page_in_pieces_is_the_page(page: Own, base_url: str) -> None:
    """After another page of the folder it has nothing of that one."""
    theme, context = Theme(), {"base_url": base_url}
    around = Surroundings(theme.printed)
    for each in [*PAGES, page]:
        last = "".join(around.whole(each, context))
    assert last == theme.printed({**context, "page": page})


def test_like_pages_of_a_folder_are_printed_around_once() -> None:
    """One that lacks something is printed around for itself, and so is another folder."""
    theme = Theme()
    around = Surroundings(theme.printed)
    for page in PAGES[:2]:
        around.whole(page, {"base_url": "."})
    assert theme.times == 1
    around.whole(own(edit_url=""), {"base_url": "."})
    around.whole(PAGES[0], {"base_url": ".."})
    assert theme.times == 3
