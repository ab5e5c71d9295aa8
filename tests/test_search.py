"""What the look-up finds, as the build lays it down: words, entries, pieces, and ways that are followed."""

import json
import re
import shutil
from collections.abc import Mapping
from decimal import Decimal
from pathlib import Path
from random import Random
from typing import Any

import pytest
import yaml

from benchsheaf.pages.finding import Entry, found_entries, shard_files
from benchsheaf.pages.finding.shards import BLOCK_BYTES, WORDS_BYTES
from benchsheaf.pages.finding.spelling import UNITS, spellings, words
from benchsheaf.pages.shelf import Shelf
from benchsheaf.quantities import SUFFIX, printed
from benchsheaf.quantities.measures import MEASURES
from benchsheaf.site import Judgement, edition, judgement, mistaken_edition
from benchsheaf.urls import SEARCH, Link

CASES = Path(__file__).parent / "cases" / "finding"
SHARD = re.compile(r'benchsheafSearch\("([0-9a-f]{8})","([a-z]+(?:-[0-9]+)?)",(.*)\);\n', re.DOTALL)
MACHINE = "machines/ostervane-bureau-8"


def cases(name: str) -> list[dict[str, Any]]:
    """The cases of a file."""
    found: list[dict[str, Any]] = yaml.safe_load((CASES / f"{name}.yml").read_text(encoding="utf-8"))
    return found


@pytest.fixture(scope="module")
def demonstration(repository: Path) -> Judgement:
    """The descriptions that travel with the program."""
    return judgement(repository / "machines")


def shelf_of(judged: Judgement) -> Shelf:
    """What pages, and the look-up, draw from."""
    return Shelf(collection=judged.collection, workup=judged.workup, links=judged.links, things=judged.things)


def data_of(files: Mapping[str, bytes]) -> dict[str, Any]:
    """The data of each piece by its name; every piece has the form that scripts rely on, and one stamp."""
    told = {}
    stamps = set()
    for address, content in files.items():
        call = SHARD.fullmatch(content.decode())
        assert call is not None, address
        assert address == f"search/{call[2]}.js"
        stamps.add(call[1])
        told[call[2]] = json.loads(call[3])
    assert len(stamps) == 1
    return told


def postings(told: Mapping[str, Any]) -> dict[str, list[set[int]]]:
    """For each word the numbers of the entries that have it in their title, text and place."""
    found = {}
    for name in (f"words-{k}" for k in range(len(told["manifest"]["words"]))):
        for word, *lists in told[name]:
            assert word not in found
            found[word] = [{sum(each[: k + 1]) for k in range(len(each))} for each in lists]
    return found


@pytest.mark.parametrize("case", cases("words"), ids=lambda case: case["why"])
def test_what_is_written_becomes_words(case: dict[str, Any]) -> None:
    """A value, a sign or a name is the same word however it is written."""
    assert list(words(case["text"])) == case["words"]


@pytest.mark.parametrize("case", cases("spellings"), ids=lambda case: case["why"])
def test_what_is_said_otherwise_is_found_too(case: dict[str, Any]) -> None:
    """The build adds the ways of the trade to say the same, and nothing that means something else."""
    found = spellings(case["text"])
    assert set(case.get("has", ())) <= found
    assert not set(case.get("not", ())) & found


@pytest.mark.parametrize("unit", [unit for unit in SUFFIX if "/" not in unit])
def test_a_quantity_in_print_is_one_word(unit: str) -> None:
    """Whatever unit a figure has on a page, typing it without the space finds it."""
    for power in range(-12, 8):
        if MEASURES[unit].whole and power < 0:
            continue
        shown = printed(Decimal(12).scaleb(power), unit)
        assert len(words(shown)) == 1, shown
        assert words(shown) == words(shown.replace("\u00a0", "").replace(",", "")), shown


def test_a_unit_is_no_word_of_its_own_behind_a_number() -> None:
    """Each spelling of a unit joins its number, and without one stays a word."""
    for spelled, unit in UNITS.items():
        assert words(f"10 {spelled}") == (f"10{unit}",)
        assert words(f"of {spelled}") == (("of", spelled) if spelled != "%" else ("of",))


def test_everything_of_the_demonstration_can_be_found(demonstration: Judgement) -> None:
    """Each entry stands in a block as it was told, and its words lead to it."""
    shelf = shelf_of(demonstration)
    entries = sorted(found_entries(shelf), key=lambda each: each.rank)
    told = data_of(shard_files(entries, {slug: each.name for slug, each in demonstration.collection.machines.items()}))
    found = postings(told)
    assert told["manifest"]["entries"] == len(entries)
    firsts = told["manifest"]["blocks"]
    for number, entry in enumerate(entries):
        block = sum(first <= number for first in firsts) - 1
        places, kinds, rows = told[f"entries-{block}"]
        title, text, place, fragment, kind, *designator = rows[number - firsts[block]]
        assert (title, text, kinds[kind], bool(designator)) == (entry.title, entry.text, entry.kind, entry.designator)
        where, page = places[place]
        assert (where, f"{page}#{fragment}" if fragment else page) == (entry.where, entry.way)
        for word in words(entry.title):
            assert number in found[word][entry.aside], (entry.title, word)
        for word in words(entry.text):
            assert any(number in each for each in found[word]), (entry.title, word)
        for slug in entry.machines:
            assert number in found[f"@{slug}"][2]


# Designators, values, addresses and signs as the notes of the demonstration machine and of its shared parts have them.
KNOWN = (
    ("c61", "Weak part", f"{MACHINE}/boards.html#C61"),
    ("10uf", "Weak part", f"{MACHINE}/boards.html#C61"),
    ("-12v", "Rail", f"{MACHINE}/power.html#rail-minus-12"),
    ("e0", "Memory bank", f"{MACHINE}/memory.html#bank-e0"),
    ("store", "Memory bank", f"{MACHINE}/memory.html#bank-e0"),
    ("040000", "Memory area", f"{MACHINE}/memory.html#map"),
    ("s1-3", "Switch", f"{MACHINE}/switches.html#S1-3"),
    ("n45", "Part", f"{MACHINE}/boards.html#N45"),
    ("sp96", "Supply", "parts/supplies/sp-96.html"),
    ("220n", "Weak part", "parts/supplies/sp-96.html#CX1"),
    ("squeals", "Weak part", "parts/supplies/sp-96.html#CO1"),
    ("6mhz", "Clock", f"{MACHINE}/display.html#clock-processor"),
    ("15.625khz", "Picture mode", f"{MACHINE}/display.html#mode-ov-tx2-television"),
    ("bureau-8", "Mark", f"{MACHINE}/index.html#mark-badge"),
    ("rings", "Mark", f"{MACHINE}/index.html#view-back"),
    ("ov-test-1", "Medium", "parts/media/m130.html"),
    ("19.2", "Display", "parts/displays/ov-vd20.html"),
    ("stripes", "Section", "parts/displays/ov-vd20.html#rates"),
    ("reset", "Plug", "parts/buses/l-bus.html#contacts"),
    ("p100", "Port", "parts/cards/ov-dk1.html#ports"),
    ("q4", "Line", f"{MACHINE}/slots.html#lines"),
    ("e20a6870", "Firmware", f"{MACHINE}/firmware.html#image-start-even"),
    ("w3", "Switch", "parts/cards/ov-dk1.html#setting-W3"),
    ("ov31-o", "Firmware", f"{MACHINE}/firmware.html#image-start-odd"),
    ("lithium", "Caution", "cautions.html#lithium-cell"),
    ("short", "Sound", f"{MACHINE}/beeps.html#beep-rom-sum"),
    ("checkbit", "Message", f"{MACHINE}/beeps.html#message-check-bit"),
    ("o1", "Message", f"{MACHINE}/beeps.html#message-store"),
    ("slow", "Message", f"{MACHINE}/beeps.html#message-disk-slow"),
    ("esr", "Term", "terms.html#term-esr"),
)


@pytest.mark.parametrize("word,kind,way", KNOWN, ids=[word for word, _, _ in KNOWN])
def test_what_people_ask_for_is_there(demonstration: Judgement, word: str, kind: str, way: str) -> None:
    """What stands on a board, a plate or a meter leads to its place."""
    entries = [each for each in found_entries(shelf_of(demonstration)) if (each.kind, each.way) == (kind, way)]
    assert entries
    assert any(word in spellings(f"{each.title} {each.text} {each.more}") for each in entries)


def test_every_way_is_followed(demonstration: Judgement) -> None:
    """Each way of the look-up is in the trail of the edition, so that one that leads nowhere stops the build."""
    shelf = shelf_of(demonstration)
    ways = {entry.way for entry in found_entries(shelf)}
    noted = {f"{there}#{fragment}".rstrip("#") for there, fragment in shelf.trail.waiting}
    assert ways == noted
    whole = edition(demonstration)
    assert shelf.trail.waiting <= whole.trail.waiting
    for page in whole.pages:
        whole.html(page)
    assert list(whole.astray()) == []
    whole.trail.href(SEARCH, f"{MACHINE}/boards.html", "C9999")
    assert list(whole.astray()) == [Link(SEARCH, f"{MACHINE}/boards.html", "C9999")]


def test_with_wrong_data_the_manual_can_still_be_found(repository: Path, tmp_path: Path) -> None:
    """The page of mistakes has a field too, and a code that it names leads into the manual."""
    shutil.copytree(repository / "machines", tmp_path / "machines")
    path = tmp_path / MACHINE / "identity.yml"
    path.write_text(path.read_text(encoding="utf-8").replace("built: 1985", "built: soon"), encoding="utf-8")
    judged = judgement(tmp_path / "machines")
    assert judged.mistakes
    whole = mistaken_edition(judged)
    for page in whole.pages:
        whole.html(page)
    assert list(whole.astray()) == []
    told = data_of({address: content for address, content in whole.files.items() if address.startswith("search/")})
    found = postings(told)
    assert found["unit-01"][1]
    assert "c61" not in found


def an_entry(title: str, text: str = "", kind: str = "Part", way: str = "index.html", **more: Any) -> Entry:
    """Something to find, made for a test."""
    return Entry(kind=kind, title=title, where="Somewhere", way=way, text=text, **more)


def test_the_same_bytes_whatever_the_order() -> None:
    """Entries that come in another order make the same files."""
    entries = [an_entry(f"C{k}", f"Bead of {k} µF, hiss {k % 7}") for k in range(900)]
    before = shard_files(entries, {})
    Random(3).shuffle(entries)
    assert shard_files(entries, {}) == before


def test_pieces_stay_small_and_each_word_is_in_one() -> None:
    """Words are cut into pieces by their first letters; the manifest tells which piece a word would be in."""
    told = data_of(shard_files([an_entry(f"C{k}", f"Bead {k * 37} of {k * 91:x}") for k in range(6000)], {}))
    starts = told["manifest"]["words"]
    assert len(starts) > 5
    assert starts == sorted(starts)
    for k, start in enumerate(starts):
        last = starts[k + 1] if k + 1 < len(starts) else "\uffff"
        assert all(start <= row[0] < last for row in told[f"words-{k}"])
        # A word that very many have is longer than a piece by itself.
        own = [row for row in told[f"words-{k}"] if len(json.dumps(row)) < WORDS_BYTES]
        assert len(json.dumps(own, separators=(",", ":"))) < 1.5 * WORDS_BYTES
    for k, first in enumerate(told["manifest"]["blocks"]):
        assert len(json.dumps(told[f"entries-{k}"], separators=(",", ":"))) < 1.5 * BLOCK_BYTES, first


def test_pieces_follow_the_order_of_a_browser() -> None:
    """Beyond the basic plane a browser orders text by units of sixteen bits, and so are the words."""
    entries = [an_entry(each) for each in ("\ufa0e", "\U00020000", "z")]
    order = [row[0] for row in data_of(shard_files(entries, {}))["words-0"]]
    assert order.index("z") < order.index("\U00020000") < order.index("\ufa0e")


PAYLOADS = (
    "</script><script>alert(1)</script>",
    "<!--<script>",
    "\u2028alert(1)\u2029",
    '");alert(1);("',
    "\\u003cimg src=x onerror=alert(1)>",
    "{{ 7 * 7 }} ${7 * 7}",
)


@pytest.mark.parametrize("payload", PAYLOADS)
def test_data_cannot_leave_its_script(payload: str) -> None:
    """Whatever a title says, the file is one call with that text in it, and cannot end a script that it is put into."""
    files = shard_files([an_entry(payload, payload)], {})
    for content in files.values():
        assert not set("<\u2028\u2029") & set(content.decode())
    assert data_of(files)["entries-0"][2][0][:2] == [payload, payload]


def test_names_of_contributors_are_data(repository: Path, tmp_path: Path) -> None:
    """A machine whose name is markup is found under its words, and its files are still single calls."""
    shutil.copytree(repository / "machines", tmp_path / "machines")
    path = tmp_path / MACHINE / "identity.yml"
    payload = "</script><img src=x onerror=alert(1)>"
    named = path.read_text(encoding="utf-8").replace("name: Ostervane Bureau-8", f"name: {json.dumps(payload)}")
    path.write_text(named, encoding="utf-8")
    judged = judgement(tmp_path / "machines")
    assert judged.mistakes == ()
    files = {address: content for address, content in edition(judged).files.items() if address.startswith("search/")}
    told = data_of(files)
    assert not any(b"<" in content for content in files.values())
    assert postings(told)["onerror"][0]
