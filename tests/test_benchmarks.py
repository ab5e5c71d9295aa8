"""What measurements are made with: a collection without a mistake, and the Markdown form of a page."""

import re
from collections import Counter
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import html5lib
import pytest

from benchsheaf.site import judgement
from collection import MODEL, write_collection
from markdown_form import SKIPPED_CLASSES, SKIPPED_TAGS, markdown


def words_of(element: Any) -> Iterator[str]:
    """The words of an element of a page, without what the Markdown form leaves to the theme."""
    if element.tag in SKIPPED_TAGS or SKIPPED_CLASSES.intersection(element.get("class", "").split()):
        return
    yield from re.findall(r"\w+", element.text or "")
    for inner in element:
        if isinstance(inner.tag, str):
            yield from words_of(inner)
        yield from re.findall(r"\w+", inner.tail or "")


@pytest.fixture(scope="module")
def collection(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Three machines, two of which share what they hold."""
    folder = tmp_path_factory.mktemp("collection") / "machines"
    write_collection(folder, machines=3, machines_a_family=2)
    return folder


def test_the_measured_collection_has_no_mistakes(collection: Path) -> None:
    """What is measured is what is published: every name of the varied machines still leads somewhere."""
    judged = judgement(collection)
    assert [mistake.sentence for mistake in judged.mistakes] == []
    assert list(judged.collection.machines) == ["sample-001", "sample-002", "sample-003"]
    assert len(judged.collection.supplies) == 2


def test_no_two_machines_are_described_in_the_same_words(collection: Path) -> None:
    """Texts have other words in each machine; or memory and the look-up would be measured too small."""
    lines = [
        line for file in (collection / "sample-001").rglob("*.yml") for line in file.read_text("utf-8").split("\n")
    ]
    others = {
        line for file in (collection / "sample-002").rglob("*.yml") for line in file.read_text("utf-8").split("\n")
    }
    prose = [line for line in lines if len(line.split()) > 12 and not line.lstrip().startswith(("#", "- {"))]
    assert len(prose) > 20
    assert sum(line in others for line in prose) < len(prose) / 10


def test_a_collection_is_the_same_at_every_run(collection: Path, tmp_path: Path) -> None:
    """Two measurements measure the same files."""
    write_collection(tmp_path / "again", machines=3, machines_a_family=2)
    for path in sorted(collection.rglob("*.yml")):
        assert (tmp_path / "again" / path.relative_to(collection)).read_bytes() == path.read_bytes()


def test_nothing_else_is_overwritten(tmp_path: Path) -> None:
    """A folder that holds no collection is left as it is."""
    (tmp_path / "letter.txt").write_text("Dear Ann", "utf-8")
    with pytest.raises(FileExistsError):
        write_collection(tmp_path, machines=1)
    assert (tmp_path / "letter.txt").read_text("utf-8") == "Dear Ann"


def test_the_markdown_form_has_blocks_as_a_person_writes_them() -> None:
    """Headings, paragraphs, lists, pipe tables, a link to another page, a picture as raw SVG; nothing else."""
    page = (
        "<nav><p>Sheets</p></nav><article><h1>Power</h1>"
        "<p>Watch <b>this</b> | now.</p><ul><li>One</li><li>Two</li></ul>"
        '<p><a href="../a/boards.html#C61">Boards</a> <a href="#here">Here</a></p>'
        "<table><tr><th>Rail</th><th>A</th></tr><tr><td>+5 V</td><td>1.2</td></tr></table>"
        '<figure><svg viewBox="0 0 1 1"><text>C61</text></svg><figcaption>Seen from above</figcaption></figure>'
        "</article><p>Foot</p>"
    )
    # Source: the syntax description of Markdown and the tables extension of Python-Markdown, from memory.
    assert markdown(page) == (
        "# Power\n\nWatch **this** \\| now.\n\n- One\n- Two\n\n[Boards](../a/boards.md) Here\n\n"
        "| Rail | A |\n| --- | --- |\n| +5 V | 1.2 |\n\n"
        '<figure>\n<svg viewBox="0 0 1 1"><text>C61</text></svg>\n</figure>\n\nSeen from above\n'
    )


@pytest.mark.parametrize("name", ["index", "power", "boards", "memory", "drives"])
def test_the_markdown_form_of_a_page_holds_its_words(built_site: Path, name: str) -> None:
    """The peer publishes what we publish: no more than one word in a hundred of a sheet is left out."""
    page = (built_site / "machines" / MODEL / f"{name}.html").read_text("utf-8")
    (article,) = html5lib.parse(page, namespaceHTMLElements=False).iter("article")
    there = list(words_of(article))
    lost = Counter(there) - Counter(re.findall(r"\w+", markdown(page)))
    assert len(there) > 100
    assert sum(lost.values()) <= len(there) / 100, lost.most_common(20)
