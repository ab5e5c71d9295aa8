"""What measurements are made with: a collection without a mistake, and the Markdown form of a page."""

import re
import sys
from collections import Counter
from html.parser import HTMLParser
from pathlib import Path

import pytest

HOUSE = Path(__file__).resolve().parent.parent
sys.path.append(str(HOUSE / "benchmarks"))

from collection import DATA, MODEL, write_collection  # noqa: E402
from markdown_form import markdown  # noqa: E402

from benchsheaf.site import judgement  # noqa: E402


class _Words(HTMLParser):
    """The words of the article of a page, without its list of sheets."""

    def __init__(self) -> None:
        super().__init__(convert_charrefs=True)
        self.found: list[str] = []
        self._inside = self._aside = 0

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        """Note what begins."""
        self._inside += tag == "article"
        self._aside += tag in ("script", "style", "template", "nav", "form")

    def handle_endtag(self, tag: str) -> None:
        """Note what ends."""
        self._inside -= tag == "article"
        self._aside -= tag in ("script", "style", "template", "nav", "form")

    def handle_data(self, data: str) -> None:
        """Keep what can be read."""
        if self._inside and not self._aside:
            self.found += re.findall(r"\w+", data)


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
    """Each file has other words in each machine; or memory and the look-up would be measured too small."""
    for path in sorted((DATA / MODEL).rglob("*.yml")):
        varied = [collection / f"sample-00{number}" / path.relative_to(DATA / MODEL) for number in (1, 2, 3)]
        texts = {path.read_text("utf-8"), *(each.read_text("utf-8") for each in varied)}
        # A file in which nothing is prose, a name or a figure that moves is the same in all.
        assert len(texts) in (1, 4), path.name
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
        "<nav><p>Sheets</p></nav><article><h1>Power</h1><p>Watch <b>this</b> | now.</p><ul><li>One</li><li>Two</li></ul>"
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
    there = _Words()
    there.feed(page)
    kept = Counter(re.findall(r"\w+", markdown(page)))
    lost = Counter(there.found) - kept
    assert len(there.found) > 100
    assert sum(lost.values()) <= len(there.found) / 100, lost.most_common(20)
