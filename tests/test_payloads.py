"""Nothing that a contributor writes is born as markup: every kind of payload, in every text, on every page."""

import json
import random
import re
import shutil
from collections import Counter
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from html.parser import HTMLParser
from pathlib import Path
from xml.etree.ElementTree import Element

import html5lib
import pytest

import payloads
from benchsheaf.links import FOLDERS
from benchsheaf.rules.mentions import LABELS
from benchsheaf.site import Edition, edition, judgement
from benchsheaf.wording import as_text
from building import build, checkout
from payloads import Spot

ROUNDS = payloads.rounds(3)
ADDRESSES = ("href", "src", "xlink:href", "action", "formaction", "srcset", "style")
MARKED = re.compile(r"q(\d+)q (?:(?!q\1q ).)*? z\1z", re.DOTALL)
DATA = re.compile(rb'benchsheafSearch\("[0-9a-f]+","[a-z]+(-\d+)?",(?P<json>.*)\);?\n?', re.DOTALL)


@dataclass(slots=True)
class Seen:
    """What a parser finds on a page: elements with the names of their attributes, addresses, places, and the text.

    In pictures a label is left out or set in lines as it fits, so of their elements only the kinds are compared.
    """

    elements: Counter[tuple[object, ...]] = field(default_factory=Counter)
    drawn: Counter[tuple[object, ...]] = field(default_factory=Counter)
    addresses: Counter[str] = field(default_factory=Counter)
    places: list[str] = field(default_factory=list)
    text: str = ""

    def take(self, name: str, attributes: Mapping[str, str], *, drawn: bool) -> None:
        """An element; letters of names count alike, as parsers write them in different ways."""
        name, attributes = name.lower(), {key.rpartition("}")[2].lower(): value for key, value in attributes.items()}
        (self.drawn if drawn else self.elements)[name, *sorted(attributes)] += 1
        for key in ADDRESSES:
            if key in attributes:
                # The width of a picture follows from the words in it.
                address = re.sub(r"\d+", "0", attributes[key]) if key == "style" else attributes[key]
                self.addresses[f"{key}={address}"] += 1
        if "id" in attributes:
            self.places.append(attributes["id"])

    def more_than(self, other: "Seen") -> list[object]:
        """What is here and is not on another page."""
        return [
            *(self.elements - other.elements).items(),
            *(self.drawn.keys() - other.drawn.keys()),
            *(self.addresses - other.addresses).items(),
        ]


class Reader(HTMLParser):
    """The parser of the standard library, which is not ours."""

    def __init__(self, markup: str) -> None:
        """Read a whole page."""
        super().__init__()
        self.seen = Seen()
        self._texts: list[str] = []
        self._pictures = 0
        self.feed(markup)
        self.close()
        self.seen.text = "".join(self._texts)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        """An element begins."""
        self._pictures += tag == "svg"
        self.seen.take(tag, {name: value or "" for name, value in attrs}, drawn=self._pictures > 0)

    def handle_endtag(self, tag: str) -> None:
        """An element ends."""
        self._pictures -= tag == "svg"

    def handle_startendtag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        """An element without content."""
        self.handle_starttag(tag, attrs)
        self.handle_endtag(tag)

    def handle_data(self, data: str) -> None:
        """Text."""
        self._texts.append(data)

    def handle_comment(self, data: str) -> None:
        """A comment counts as an element."""
        self.seen.take("<!-- -->", {}, drawn=False)

    def handle_decl(self, decl: str) -> None:
        """So does a declaration."""
        self.handle_comment(decl)

    def handle_pi(self, data: str) -> None:
        """So does an instruction."""
        self.handle_comment(data)

    def unknown_decl(self, data: str) -> None:
        """So does a section."""
        self.handle_comment(data)


def by_the_standard(markup: str) -> Seen:
    """The same by a parser that follows the standard of browsers step by step."""
    seen = Seen()
    tree = html5lib.parse(markup, namespaceHTMLElements=False)
    texts: list[str] = []

    def walk(element: Element, drawn: bool) -> None:
        tag = str(element.tag).rpartition("}")[2]
        drawn = drawn or tag == "svg"
        seen.take(tag, dict(element.attrib), drawn=drawn)
        texts.append(element.text or "")
        for inner in element:
            walk(inner, drawn)
            texts.append(inner.tail or "")

    walk(tree, False)
    seen.text = "".join(texts)
    return seen


def built(folder: Path) -> Edition:
    """The edition of descriptions that must be without a mistake."""
    judged = judgement(folder)
    assert judged.mistakes == (), as_text(list(judged.mistakes))[:2000]
    return edition(judged)


def pages_of(whole: Edition) -> dict[str, Seen]:
    """Every page, read by a parser that is not ours."""
    seen = {page.address: Reader("".join(whole.html(page))).seen for page in whole.pages}
    assert list(whole.astray()) == []
    return seen


@pytest.fixture(scope="module")
def plain(repository: Path, tmp_path_factory: pytest.TempPathFactory) -> dict[str, Seen]:
    """The pages of the same descriptions with harmless words in every text, as long as the payloads are."""
    folder = tmp_path_factory.mktemp("plain")
    payloads.written(repository / "machines", folder, lambda spot: spot.marked("plain words of some length " * 20))
    return with_all_drawn(pages_of(built(folder)))


def with_all_drawn(pages: dict[str, Seen], *more: Mapping[str, Seen]) -> dict[str, Seen]:
    """Pages whose pictures may hold what those of all pages hold, and of others: it depends on what fits."""
    drawn = Counter(kind for several in (pages, *more) for seen in several.values() for kind in seen.drawn)
    for seen in pages.values():
        seen.drawn = drawn
    return pages


def assert_nothing_is_born(found: Mapping[str, Seen], plain: Mapping[str, Seen], same_places: bool = True) -> None:
    """No page has an element, an attribute or an address more than the harmless one has."""
    assert found.keys() == plain.keys()
    assert {address: more for address, seen in found.items() if (more := seen.more_than(plain[address]))} == {}
    if same_places:
        assert {name for name, seen in found.items() if seen.places != plain[name].places} == set()


@pytest.mark.parametrize("number", range(len(ROUNDS)))
def test_every_kind_in_every_text(number: int, plain: dict[str, Seen], repository: Path, tmp_path: Path) -> None:
    """Nothing is born, every text stands on some page as it was written, and all data keeps it as data."""
    spots = payloads.written(repository / "machines", tmp_path, ROUNDS[number])
    whole = built(tmp_path)
    found = pages_of(whole)
    assert_nothing_is_born(found, plain)
    shown = {payloads.in_form(each[0]) for seen in found.values() for each in MARKED.finditer(seen.text)}
    assert lost(spots, shown) == []
    assert_data_is_data(whole, spots)


def lost(spots: list[Spot], shown: set[str]) -> list[str]:
    """The fields of texts that are not shown."""
    names = set()
    for each in spots:
        marked = MARKED.search(each.words)
        if marked is None or payloads.in_form(marked[0]) not in shown:
            names.add(re.sub(r"\[\d+\]", "", each.path))
    return sorted(names)


def assert_data_is_data(whole: Edition, spots: list[Spot]) -> None:
    """Scripts of the look-up are one call with data; files of figures are JSON with every text as it was written."""
    kept: set[str] = set()
    for address, content in whole.files.items():
        if address.endswith(".js"):
            assert b"<" not in content, address
            call = DATA.fullmatch(content)
            assert call, address
            json.loads(call["json"])
        elif address.endswith(".json"):
            kept |= set(strings(json.loads(content)))
    assert [each.path for each in spots if each.words not in kept and not each.file.startswith("_shared/")] == []


def strings(value: object) -> Iterator[str]:
    """Every text of plain values."""
    if isinstance(value, str):
        yield value
    elif isinstance(value, dict | list):
        for inner in value.values() if isinstance(value, dict) else value:
            yield from strings(inner)


def test_every_kind_comes_to_every_text() -> None:
    """The rounds together write each payload into each text."""
    spot = Spot(number=1, file="x.yml", path="a.b", words="")
    joined = "  ".join(put(spot) for put in ROUNDS)
    assert [kind for kind, payload in payloads.PAYLOADS.items() if payload not in joined] == []


def test_a_few_texts_of_the_demonstration(plain: dict[str, Seen], repository: Path, tmp_path: Path) -> None:
    """The same where most of the texts stay as they are, with their links and figures."""
    chosen = random.Random(payloads.SEED)

    def put(spot: Spot) -> str:
        is_label = re.sub(r".*\.", "", spot.path) in LABELS  # like names are told in one row
        is_chosen = chosen.random() < 0.03 and not is_label
        # The parts that a step's own words name are not listed again behind them.
        payload = "  ".join(payloads.PAYLOADS.values())
        return f"{spot.words} {spot.marked(payload)}" if is_chosen else spot.words

    spots = payloads.written(repository / "machines", tmp_path, put)
    assert sum(bool(MARKED.search(each.words)) for each in spots) > 10
    real = with_all_drawn(pages_of(built(repository / "machines")), plain)
    assert_nothing_is_born(pages_of(built(tmp_path)), real, same_places=False)


def test_names_that_are_written_freely(repository: Path, tmp_path: Path) -> None:
    """Rails, switches and positions may be called anything; their names come into addresses and places too."""

    def pages(name: str, more: str) -> dict[str, Seen]:
        folder = tmp_path / name
        payloads.written(
            repository / "machines", folder, lambda spot: spot.marked("plain words"), lambda old: old + more
        )
        return pages_of(built(folder))

    found, plain = pages("payload", " \"'><b onclick=x>&amp;{{7*7}}"), pages("plain", " with a longer name of it")
    assert found.keys() == plain.keys()
    for address, seen in found.items():
        assert not seen.elements - plain[address].elements, address
        assert sum(seen.addresses.values()) == sum(plain[address].addresses.values()), address
        assert len(set(seen.places)) == len(seen.places) == len(plain[address].places), address
        assert [each for each in seen.places if re.search(r"[^\w.-]", each)] == []
    drawn = [{kind for seen in each.values() for kind in seen.drawn} for each in (found, plain)]
    assert drawn[0] <= drawn[1]
    assert any("onclick=x>&amp;{{7*7}}" in seen.text for seen in found.values())


def test_a_hidden_sign_is_a_named_mistake_everywhere(repository: Path, tmp_path: Path) -> None:
    """What turns the direction of text, or cannot be seen, is told at each text that holds it, and nothing else is."""
    signs = list(payloads.HIDDEN.values())
    spots = payloads.written(
        repository / "machines", tmp_path, lambda spot: spot.marked(signs[spot.number % len(signs)])
    )
    told = judgement(tmp_path).mistakes
    assert {each.code.id for each in told} == {"FILE-07"}
    assert len({each.place for each in told}) == len(spots)


FIGURES = {"supply": "together_w", "drive": "turns_rpm", "display": "line"}


def test_a_figure_is_printed_wherever_it_may_be_asked_for(repository: Path, tmp_path: Path) -> None:
    """In every text but names and inscriptions, on every page and in what the look-up finds."""

    def put(spot: Spot) -> str:
        name = next((figure for kind, figure in FIGURES.items() if FOLDERS[kind] in spot.file), "built")
        described = spot.file.startswith(("_parts/supplies", "_parts/drives", "_parts/displays", "ostervane"))
        is_label = re.sub(r".*\.", "", spot.path) in LABELS
        return spot.marked("plain" if is_label or not described else f"[[{name}]]")

    payloads.written(repository / "machines", tmp_path, put)
    whole = built(tmp_path)
    pages = {page.address: Reader("".join(whole.html(page))).seen.text for page in whole.pages}
    asked = re.compile(r"q\d+q \[\[")
    assert {name: asked.findall(text) for name, text in pages.items() if asked.search(text)} == {}
    assert [name for name, content in whole.files.items() if name.endswith(".js") and b"q [[" in content] == []
    assert any(re.search(r"q\d+q 96\s?W z", text) for text in pages.values())
    assert any(re.search(r"q\d+q 1985 z", text) for text in pages.values())


def test_a_figure_that_is_not_there_is_a_named_mistake_everywhere(repository: Path, tmp_path: Path) -> None:
    """Every text is looked through for figures."""
    spots = payloads.written(repository / "machines", tmp_path, lambda spot: spot.marked("[[constructor.prototype]]"))
    told = judgement(tmp_path).mistakes
    assert {each.code.id for each in told} == {"LINK-06", "LINK-07"}
    # What many share is told once, with the rest of the places.
    assert len({one.place for each in told for one in (each, *each.others)}) == len(spots)


def test_the_whole_site_as_it_is_published(
    plain: dict[str, Seen], repository: Path, built_site: Path, tmp_path: Path
) -> None:
    """With the theme around them, read as browsers read them, the pages have nothing that the real ones have not."""

    def put(spot: Spot) -> str:
        is_label = re.sub(r".*\.", "", spot.path) in LABELS
        return spot.words if is_label else f"{spot.words} {ROUNDS[0](spot)}"

    folder = checkout(tmp_path / "house")
    shutil.rmtree(folder / "machines")
    payloads.written(repository / "machines", folder / "machines", put)
    build(folder)
    names = [path.relative_to(built_site).as_posix() for path in built_site.rglob("*.html")]
    # The manual knows nothing of what is described; it is the same.
    names = [name for name in names if not name.startswith("manual/")]
    real = {name: Reader((built_site / name).read_text(encoding="utf-8")).seen for name in names}
    for name, seen in with_all_drawn(real, plain).items():
        found = by_the_standard((folder / "site" / name).read_text(encoding="utf-8"))
        assert found.more_than(seen) == [], name
