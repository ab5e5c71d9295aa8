"""The manual and what is missing: every field has its entry, every example is right, every code stands once."""

import ast
import re
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import html5lib
import pytest

from benchsheaf import urls
from benchsheaf.conformity import conformed
from benchsheaf.documents import Entry, text_and_mistakes
from benchsheaf.fields import Field, absences, all_fields, built_in_schemas, worked_example
from benchsheaf.pages.manual_codes import FAMILIES
from benchsheaf.pages.manual_map import field_place, long_sections
from benchsheaf.pages.sheets import SHEETS
from benchsheaf.quantities import MEASURES, spellings
from benchsheaf.site import Edition, edition, judgement, mistaken_edition
from expected import rows, written

SCHEMAS = built_in_schemas()
KINDS = list(SCHEMAS.kinds)


class Written:
    """A page written: its text, and the elements that have a name."""

    def __init__(self, whole: Edition, address: str) -> None:
        page = next(page for page in whole.pages if page.address == address)
        self.html = whole.html(page)
        self.tree = html5lib.parseFragment(self.html, namespaceHTMLElements=False)
        self.named = {each.get("id"): each for each in self.tree.iter() if each.get("id")}

    @property
    def text(self) -> str:
        """What a visitor reads."""
        return words_of(self.tree)

    def blocks(self) -> Iterator[tuple[str, str]]:
        """Each example of a data file with the words above it."""
        for figure in self.tree.iter("figure"):
            if figure.get("class") == "written":
                yield words_of(figure.find("figcaption")), "".join(figure.find("pre").itertext())


def words_of(element: Any) -> str:
    """The words of an element, blanks made single."""
    return " ".join("".join(element.itertext()).split())


@pytest.fixture(scope="module")
def whole(repository: Path) -> Edition:
    """The edition of the demonstration."""
    return edition(judgement(repository / "machines"), "https://forge.example/edit/")


@pytest.fixture(scope="module")
def manual(whole: Edition) -> dict[str, Written]:
    """Every page of the manual by its address."""
    return {page.address: Written(whole, page.address) for page in whole.pages if page.address.startswith("manual/")}


def told_of(kind: str) -> list[tuple[tuple[str, ...], Field]]:
    """Every field of a kind; `source`, which any group may carry, is told of once a page."""
    return [(path, field) for path, field in all_fields(SCHEMAS.kinds[kind]) if field.points_at != "source"]


@pytest.mark.parametrize("kind", KINDS)
def test_every_field_has_its_entry(kind: str, manual: dict[str, Written]) -> None:
    """A field's label, sentence, name, example and words stand at its own place in the manual."""
    assert len(told_of(kind)) >= 5
    for path, field in told_of(kind):
        address, anchor = field_place(kind, path)
        entry = manual[address].named[anchor]
        if len(path) == 1 and (field.fields or (field.item and field.item.fields)):
            assert field.label in manual[address].text
            continue
        words = words_of(entry)
        wanted = [path[-1], field.label, field.help, *field.allowed, *(field.item.allowed if field.item else ())]
        assert [each for each in wanted if " ".join(each.split()) not in words] == [], (kind, path)
        assert ("must be there" in words) == field.required
        if isinstance(field.example, str):
            assert "Example: " in words
            assert " ".join(field.example.split()) in words.replace('"', "")
        if field.unit:
            assert MEASURES[field.unit].noun in words.lower()


def test_a_pointer_leads_to_where_such_names_are_given(manual: dict[str, Written]) -> None:
    """A field that points at a rail links to the field in which rails get their names, one at a supply to its page."""
    address, anchor = field_place("machine", ("boards", "parts", "across"))
    (way,) = [each.get("href") for each in manual[address].named[anchor].iter("a")]
    assert way == "rails.html#rails.name"
    address, anchor = field_place("machine", ("supply",))
    (way,) = [each.get("href") for each in manual[address].named[anchor].iter("a")]
    assert way == "supply.html"


def test_no_page_is_endless(manual: dict[str, Written]) -> None:
    """Long sections stand on pages of their own, so that no page of fields has more than 80 entries."""
    for address, page in manual.items():
        if address != urls.MANUAL_MISTAKES:
            assert sum(each.get("class") == "field" for each in page.tree.iter("div")) <= 80, address


def mistakes_in(text: str, kind: str, *, whole: bool) -> list[str]:
    """What is told of an example as a file of a kind; with `whole` what is missing at the top is told too."""
    read, mistakes = text_and_mistakes(text.encode(), "a.yml")
    assert read is not None
    entry = Entry(kind, "a", (read,), dict.fromkeys(read.values, read))
    told = [*mistakes, *conformed(entry, SCHEMAS.kinds[kind], whole=whole).mistakes]
    return [f"{each.code.id} {each.path}" for each in told]


@pytest.mark.parametrize("kind", KINDS)
def test_every_example_of_a_kind_is_right(kind: str, manual: dict[str, Written]) -> None:
    """Each example on the page of a kind is read back without a mistake: first a whole one, then its sections."""
    (_, first), *others = manual[urls.manual_kind(kind)].blocks()
    assert mistakes_in(first, kind, whole=True) == []
    short_and_long = sum(
        1 for each in SCHEMAS.kinds[kind].fields.values() if each.fields or (each.item and each.item.fields)
    )
    long = sum(1 for each in long_sections() if kind in each.kinds)
    assert len(others) == 2 * (short_and_long - long)
    for _, text in others:
        assert mistakes_in(text, kind, whole=False) == [], text


@pytest.mark.parametrize("section", long_sections(), ids=[each.name for each in long_sections()])
def test_every_example_of_a_long_section_is_right(section: Any, manual: dict[str, Written]) -> None:
    """Each example of a section with a page of its own is read back without a mistake, for every kind that has it."""
    blocks = list(manual[urls.manual_section(section.name)].blocks())
    assert len(blocks) == 2
    for kind in section.kinds:
        for _, text in blocks:
            assert mistakes_in(text, kind, whole=False) == [], text
    for path, field in told_of(section.kinds[0]):
        if path[0] == section.described.name and not field.fields and not field.item:
            assert f"{path[-1]}: " in blocks[1][1], path


def test_the_worked_example_is_right(manual: dict[str, Written], tmp_path: Path) -> None:
    """The files shown on the first page, written down as they stand there, make a folder without a mistake."""
    blocks = list(manual[urls.MANUAL].blocks())
    assert len(blocks) >= 2
    for name, text in blocks:
        path = tmp_path / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text, encoding="utf-8")
    judged = judgement(tmp_path / "machines")
    assert judged.mistakes == ()
    assert len(judged.collection.machines) == 1


def codes_in_source(repository: Path) -> list[str]:
    """The id of every code that is made anywhere in the program, as its text has it."""
    found: list[str] = []
    for path in (repository / "generator").rglob("*.py"):
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            if isinstance(node, ast.Call) and isinstance(node.func, ast.Name) and node.func.id == "Code":
                ids = [each.value for each in node.keywords if each.arg == "id"]
                found += [str(each.value) for each in ids if isinstance(each, ast.Constant)]
    return found


def test_every_code_stands_once(manual: dict[str, Written], repository: Path) -> None:
    """Each code that the program can tell is on the page of mistakes, once, as it looks in a terminal."""
    page = manual[urls.MANUAL_MISTAKES]
    wanted = codes_in_source(repository)
    assert len(wanted) >= 90
    assert sorted(re.findall(r'<div class="field" id="([A-Z]+-[0-9]+)"', page.html)) == sorted(wanted)
    for code in wanted:
        terminal = words_of(page.named[code].find("dd").find("pre"))
        assert re.match(rf"machines/sketch-1/machine\.yml(:12:9)?: \[{code}\] \S", terminal), terminal


def test_codes_say_their_exact_words(manual: dict[str, Written]) -> None:
    """The words that were written for each code by hand are those of the manual."""
    page = manual[urls.MANUAL_MISTAKES]
    by_hand = written("cases/words.yml")
    assert len(by_hand) >= 40
    for code, words in by_hand.items():
        assert words.replace("`", "") in words_of(page.named[code]), code


def test_every_family_says_what_to_do(manual: dict[str, Written]) -> None:
    """The nine families of the house's style have a heading and a sentence each."""
    families = ("FILE", "YAML", "FIELD", "KIND", "UNIT", "RANGE", "ID", "LINK", "SENSE")
    assert tuple(FAMILIES) == families
    for family in families:
        section = manual[urls.MANUAL_MISTAKES].named[f"family-{family.lower()}"]
        assert section.find("h2") is not None
        assert words_of(section.find("p")).endswith(".")


def test_every_unit_and_spelling_is_told(manual: dict[str, Written]) -> None:
    """The page of units has every unit of the table, with every spelling that looks different in print."""
    text = manual[urls.MANUAL_UNITS].text
    for unit in MEASURES:
        for name, several in spellings(unit).items():
            for word in (name, *several):
                assert word.replace("\u03bc", "µ").replace("\u2126", "Ω").replace("\u2103", "°C") in text, (unit, word)


# Source: the SI brochure (metric prefixes) and IEC 80000-13 (binary prefixes); a minute has 60 seconds.
@pytest.mark.parametrize(
    "unit,worth",
    [
        ("kΩ", "1,000 Ω"),
        ("MΩ", "1,000,000 Ω"),
        ("µF", "0.000001 F"),
        ("pF", "0.000000000001 F"),
        ("KiB", "1,024 B"),
        ("kB", "1,000 B"),
        ("MiB", "1,048,576 B"),
        ("min", "60 s"),
        ("h", "3,600 s"),
        ("cm", "10 mm"),
        ("Ah", "1,000 mAh"),
    ],
)
def test_a_unit_is_worth_what_it_is(unit: str, worth: str, manual: dict[str, Written]) -> None:
    """What a unit with its prefix is worth in the bare one."""
    assert (unit, worth) in worths(manual)


@pytest.mark.parametrize("row", [row for row in rows("prefix") if row["written"].startswith("1 ")])
def test_sizes_are_worth_what_the_reference_says(row: dict[str, str], manual: dict[str, Written]) -> None:
    """The sizes of the reference table that begin with one stand on the page of units with the same worth."""
    assert (row["written"].removeprefix("1 "), f"{int(row['bytes']):,} B") in worths(manual)


def worths(manual: dict[str, Written]) -> list[tuple[str, str]]:
    """Unit and worth of each row of the tables of units."""
    lines = [[words_of(cell) for cell in row] for row in manual[urls.MANUAL_UNITS].tree.iter("tr")]
    return [(cells[0], cells[-1]) for cells in lines]


def test_every_way_of_going_wrong_is_shown(manual: dict[str, Written]) -> None:
    """What is refused of quantities is shown by a text for each of its codes, in the words of the code."""
    section = manual[urls.MANUAL_UNITS].named["refused"]
    text = words_of(section)
    assert [f"UNIT-0{number}" in text for number in range(1, 10)] == [True] * 9
    assert "4k7 UNIT-04" in text
    # Words of tests/cases/quantities and of the house's style.
    assert "A voltage needs its unit, for example 16 V." in text
    assert "KB can mean 1000 or 1024. Write 64 KiB for 1024 or 64 kB for 1000." in text


def test_pages_lead_to_each_other(whole: Edition, manual: dict[str, Written]) -> None:
    """From home to the manual, from its list to each of its pages, and no link leads astray."""
    assert 'href="manual/index.html"' in Written(whole, urls.HOME).html
    first = next(page for page in whole.pages if page.address == urls.MANUAL)
    column = first.column()
    assert all(f'href="{kind}.html"' in column for kind in KINDS)
    for page in whole.pages:
        whole.html(page)
        page.column()
    assert list(whole.astray()) == []


def test_while_data_is_wrong_codes_lead_to_the_manual(tmp_path: Path) -> None:
    """The page of mistakes links each code to what the manual says of it, and no link leads to what is not there."""
    folder = tmp_path / "machines" / "sketch-1"
    folder.mkdir(parents=True)
    (folder / "machine.yml").write_text("name: Sketch-1\nbuilt: long ago\n", encoding="utf-8")
    mistaken = mistaken_edition(judgement(tmp_path / "machines"))
    texts = {page.address: mistaken.html(page) + page.column() for page in mistaken.pages}
    assert 'href="manual/mistakes.html#KIND-01"' in texts[urls.HOME]
    assert 'href="manual/mistakes.html#FIELD-02"' in texts[urls.HOME]
    assert list(mistaken.astray()) == []


def sketch(tmp_path: Path, changes: dict[str, str]) -> Path:
    """The worked example as a folder, with lines added to its files."""
    for file, text in worked_example(SCHEMAS).items():
        path = tmp_path / "machines" / file
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text + changes.get(file, ""), encoding="utf-8")
    return tmp_path / "machines"


BOARD = """\
boards:
  - id: main
    name: Main board
    size: {x: 100 mm, y: 80 mm}
    print: SK-1
    draws: [{rail: +5 V, run: 0.1 A}]
    parts:
      - {ref: C1, kind: tantalum, across: +5 V, at: {x: 10 mm, y: 10 mm}, body: {x: 5 mm, y: 5 mm}}
      - {ref: C2, kind: tantalum, across: +5 V, at: {x: 30 mm, y: 10 mm}, body: {x: 5 mm, y: 5 mm}}
      - {ref: N1, kind: chip, at: {x: 60 mm, y: 40 mm}, body: {x: 20 mm, y: 10 mm}}
"""


def test_absences_are_counted_by_record() -> None:
    """By hand: of four lamps one lacks its colour, two that are lit lack a watt; what is not asked for is not told."""
    colour = Field(name="colour", shape="text", wanted="yes")
    watts = Field(name="watts", shape="text", wanted="safety", wanted_where={"lit": ("yes", "True")})
    name = Field(name="name", shape="text", names_item="lamp", required=True, wanted="yes")
    fields = {each.name: each for each in (name, colour, watts, Field(name="note", shape="text"))}
    lamp = Field(name="lamps", shape="record", fields=fields | {"lit": Field(name="lit", shape="boolean")})
    room = Field(name="room", shape="record", fields={"lamps": Field(name="lamps", shape="list", item=lamp)})
    lamps = [
        {"name": "A", "colour": "red", "lit": True},
        {"name": "B", "lit": True, "watts": "5"},
        {"colour": "red", "lit": False},
        {"name": "D", "colour": "blue", "lit": True},
    ]
    found = [(each.path, each.places, each.count) for each in absences(room, {"lamps": lamps})]
    assert found == [(("lamps", "colour"), ("B",), 1), (("lamps", "watts"), ("A", "D"), 2)]
    assert absences(room, {}) == []


def test_what_is_missing_is_what_is_asked_for(tmp_path: Path) -> None:
    """Absent facts of records that are there, each once, with the records that lack it; a chip lacks no capacitance."""
    judged = judgement(sketch(tmp_path, {"sketch-1/machine.yml": BOARD}))
    assert judged.mistakes == ()
    thing = judged.things["machine", "sketch-1"]
    found = {".".join(each.path): each for each in absences(thing.kind, thing.values)}
    # By hand from the example and the marks in the schemas.
    assert found["rails.to_ground"].places == ("+5 V",)
    assert found["rails.to_ground"].described.wanted == "safety"
    assert found["boards.parts.capacitance"].places == ("C1", "C2")
    assert found["boards.parts.plus"].places == ("C1", "C2")
    assert "weak_parts" in found
    assert "boards.parts.across" not in found
    assert "boards.print" not in found
    assert "boards.parts.legs" not in found
    assert not any(path.startswith("memory.") for path in found)


def test_the_most_useful_comes_first(tmp_path: Path) -> None:
    """What keeps from harm stands before wanted sheets, these before other facts, and each names the file to mend."""
    whole = edition(judgement(sketch(tmp_path, {"sketch-1/machine.yml": BOARD})), "https://forge.example/edit/")
    page = Written(whole, "machines/sketch-1/missing.html")
    marks = [
        "machine-sketch-1-rails.to_ground",
        "supply-sp-96-reservoir",
        "sheet-memory",
        "machine-sketch-1-rails.ripple",
    ]
    places = [page.html.index(f'id="{mark}"') for mark in marks]
    assert places == sorted(places)
    assert "sheet-boards" not in page.named
    assert 'href="https://forge.example/edit/_parts/supplies/sp-96.yml"' in page.html
    ways = [each.get("href") for each in page.named["machine-sketch-1-rails.to_ground"].iter("a")]
    assert ways == [
        "https://forge.example/edit/sketch-1/machine.yml",
        "../../manual/sections/rails.html#rails.to_ground",
    ]
    assert words_of(page.named["machine-sketch-1-boards.parts.plus"]).startswith("Boards: Where plus is (C1, C2).")


def test_without_a_forge_the_file_is_named(tmp_path: Path) -> None:
    """Where nobody knows at what address data is edited, the file's name is told instead."""
    page = Written(edition(judgement(sketch(tmp_path, {}))), "machines/sketch-1/missing.html")
    assert "It would stand in sketch-1/machine.yml" in page.text
    assert "https://" not in page.html


def test_many_records_are_counted(tmp_path: Path) -> None:
    """Of many records that lack the same, eight are named and the others counted."""
    part = "      - {{ref: C{0}, kind: tantalum, at: {{x: {0} mm, y: 9 mm}}, body: {{x: 0.5 mm, y: 5 mm}}}}\n"
    head = BOARD.partition("      - {ref: C1")[0]
    lines = "".join(part.format(number) for number in range(1, 13))
    whole = edition(judgement(sketch(tmp_path, {"sketch-1/machine.yml": head + lines})))
    page = Written(whole, "machines/sketch-1/missing.html")
    assert "C7, C8 and 4 more)" in words_of(page.named["machine-sketch-1-boards.parts.plus"])


def test_the_count_is_the_same_everywhere(tmp_path: Path) -> None:
    """Home, the page across and the page of the only machine tell one number: all that is absent, each sheet once."""
    judged = judgement(sketch(tmp_path, {"sketch-1/machine.yml": BOARD}))
    whole = edition(judged)
    facts = sum(each.count for thing in judged.things.values() for each in absences(thing.kind, thing.values))
    page = Written(whole, "machines/sketch-1/missing.html")
    sheets = [name for name in page.named if name.startswith("sheet-")]
    # A section that is asked for as a fact and as a sheet is told of as a sheet.
    asked = built_in_schemas().kinds["machine"].fields
    told = [each for each in SHEETS if f"sheet-{each.name}" in sheets and each.rests_on in asked]
    twice = [each for each in told if asked[each.rests_on].wanted]
    assert twice
    number = facts + len(sheets) - len(twice)
    assert f"{number} facts and sheets are missing" in page.text
    assert f"{number} facts and sheets are missing" in Written(whole, urls.MISSING).text
    assert f"{number} facts and sheets are missing" in Written(whole, urls.HOME).text


def test_a_wanted_sheet_leads_to_what_is_missing(tmp_path: Path) -> None:
    """In the list of sheets one that is only wanted links to what is said of it; so does the line at the end."""
    whole = edition(judgement(sketch(tmp_path, {})))
    column = next(page for page in whole.pages if page.address == "machines/sketch-1/index.html").column()
    assert 'href="missing.html#sheet-memory"' in column
    assert '<a href="missing.html">What is missing</a>' in column
