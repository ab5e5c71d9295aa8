"""What contributors' words become on a page: designators are links, figures are printed, nothing else is markup."""

import shutil
from collections.abc import Mapping
from html.parser import HTMLParser
from pathlib import Path
from typing import Any

import pytest

from benchsheaf.pages.shelf import Desk, Shelf
from benchsheaf.site import judgement
from expected import written

CASES = written("cases/telling.yml")
SLUG = "ostervane-bureau-8"


def named(name: str) -> pytest.MarkDecorator:
    """Parameters for a test: cases under the words of their `why`."""
    return pytest.mark.parametrize("case", CASES[name], ids=[case["why"] for case in CASES[name]])


@pytest.fixture(scope="module")
def desk(repository: Path) -> Desk:
    """A desk at which a sheet of the demonstration machine is written."""
    judged = judgement(repository / "machines")
    shelf = Shelf(collection=judged.collection, workup=judged.workup, links=judged.links, things=judged.things)
    return shelf.desk(f"machines/{SLUG}/checks.html", judged.collection.machines[SLUG])


class Told(HTMLParser):
    """The links of a piece of markup, and its text."""

    def __init__(self, markup: str) -> None:
        """Read the whole piece."""
        super().__init__()
        self.links: dict[str, str] = {}
        self.text = ""
        self._href: str | None = None
        self.feed("".join(markup))
        self.close()

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        """Only links may be there."""
        assert tag == "a"
        assert dict(attrs).keys() == {"class", "href"}
        self._href = dict(attrs)["href"]

    def handle_endtag(self, tag: str) -> None:
        """A link ends."""
        self._href = None

    def handle_data(self, data: str) -> None:
        """Text, in a link or not."""
        self.text += data
        if self._href is not None:
            self.links[data] = self._href


def of(case: Mapping[str, Any]) -> tuple[str, str] | None:
    """Whose text it is."""
    return (case["of"][0], case["of"][1]) if "of" in case else None


@named("links")
def test_designators_are_links(case: Mapping[str, Any], desk: Desk) -> None:
    """Exactly the designators of the text's own description are links, and the text stays as it was written."""
    told = Told(desk.told(case["text"], of(case)))
    assert told.links == case["links"]
    assert told.text == case["text"]


@named("figures")
def test_figures_are_printed(case: Mapping[str, Any], desk: Desk) -> None:
    """A path in double brackets becomes the figure in its own form; in lists of what can be found as well."""
    assert Told(desk.told(case["text"], of(case))).text.replace("\u00a0", " ") == case["shows"]
    assert desk.worded(case["text"], of(case)).replace("\u00a0", " ") == case["shows"]


@named("astray")
def test_a_figure_that_is_not_there_is_told(case: Mapping[str, Any], repository: Path, tmp_path: Path) -> None:
    """The mistake stands at the text's own line, and names the nearest figure or what may stand there."""
    root = Path(shutil.copytree(repository / "machines", tmp_path / "machines"))
    path = root / SLUG / "identity.yml"
    text = path.read_text(encoding="utf-8")
    assert "separate keyboard;" in text
    path.write_text(text.replace("separate keyboard;", f"[[{case['path']}]];"), encoding="utf-8")
    (told,) = judgement(root).mistakes
    assert told.code.id == "LINK-06"
    assert told.found == f"[[{case['path']}]]"
    assert told.nearest == (f"[[{case['nearest']}]]" if "nearest" in case else None)
    assert told.fills["known"] == case.get("known", "")


def test_the_place_where_it_stands_is_no_link(desk: Desk) -> None:
    """A text at the row of a part does not lead to that row again."""
    assert Told(desk.told("C61 or C62", at="C61")).links == {"C62": "boards.html#C62"}


def test_blank_lines_make_paragraphs(desk: Desk) -> None:
    """Single line ends do not."""
    assert desk.told_paragraphs("One\ntwo.\n\n\n<i>\n\n") == "<p>One\ntwo.</p><p>&lt;i&gt;</p>"


def test_words_are_no_links_where_nothing_is_declared(desk: Desk) -> None:
    """On a page of all machines a designator means nothing."""
    assert Told(desk.shelf.desk("index.html").told("C61 [[reservoir.wait_minutes]]")).links == {}
