"""The forms of mistakes: lines for people, JSON for programs, and nothing of a contributor's that could act."""

import json
import re
from dataclasses import replace

from hypothesis import given
from hypothesis import strategies as st

from benchsheaf.mistakes import Code, Mistake, Place
from benchsheaf.sharing import narrowed, told_once
from benchsheaf.wording import as_json, as_text, shown, summary

UNIT = Code(id="UNIT-01", meaning="A unit is missing.", words="A voltage needs its unit, for example `{wanted}`.")
LINK = Code(
    id="LINK-01",
    meaning="Nothing there.",
    words="No part `{name}` on any board of this machine.",
    shares=("points at it", "point at it"),
)
FILE = Code(id="FILE-09", meaning="Empty.", words="This file is empty.")

MISTAKES = [
    LINK.at(Place(file="machines/a/faults.yml", line=88, column=9), "faults.no-clock.part", "X2", "X1", name="X2"),
    UNIT.at(Place(file="machines/a/boards.yml", line=41, column=14), "boards.main.parts.C7.rated", "16", wanted="16 V"),
    FILE.at(Place(file="machines/a/drives.yml")),
    UNIT.at(Place(file="machines/a/boards.yml", line=9, column=14), "boards.main.parts.C1.rated", "5", wanted="16 V"),
]

# Written by hand after the two examples of the house's style.
AS_TEXT = """\
machines/a/boards.yml:9:14: [UNIT-01] boards.main.parts.C1.rated: found `5`
    A voltage needs its unit, for example `16 V`.
machines/a/boards.yml:41:14: [UNIT-01] boards.main.parts.C7.rated: found `16`
    A voltage needs its unit, for example `16 V`.
machines/a/drives.yml: [FILE-09]
    This file is empty.
machines/a/faults.yml:88:9: [LINK-01] faults.no-clock.part: found `X2`
    No part `X2` on any board of this machine. Did you mean `X1`?
4 mistakes in 3 files.
"""


def test_mistakes_as_text() -> None:
    """File, line, column, code, field, what was found; then what to do; in file order, with their number at the end."""
    assert as_text(MISTAKES) == AS_TEXT


def test_mistakes_as_json() -> None:
    """The same, in the same order, with fixed names."""
    told = json.loads(as_json(MISTAKES))
    assert list(told) == ["mistakes"]
    assert told["mistakes"][3] == {
        "file": "machines/a/faults.yml",
        "line": 88,
        "column": 9,
        "code": "LINK-01",
        "path": "faults.no-clock.part",
        "found": "X2",
        "says": "No part `X2` on any board of this machine.",
        "nearest": "X1",
    }
    assert told["mistakes"][2] == {
        "file": "machines/a/drives.yml",
        "line": 0,
        "column": 0,
        "code": "FILE-09",
        "path": "",
        "found": None,
        "says": "This file is empty.",
        "nearest": None,
    }
    assert [each["line"] for each in told["mistakes"]] == [9, 41, 0, 88]


def test_no_mistakes() -> None:
    """Nothing wrong is said too."""
    assert as_text([]) == "No mistakes.\n"
    assert json.loads(as_json([])) == {"mistakes": []}


def test_the_number_of_mistakes() -> None:
    """One is not two."""
    assert summary(MISTAKES[:1]) == "1 mistake in 1 file."
    assert summary(MISTAKES[:2]) == "2 mistakes in 2 files."


def test_what_reads_the_same_is_told_once() -> None:
    """Two checks that come upon the same mistake are one mistake; another place is another."""
    assert as_text([*MISTAKES, *MISTAKES]) == AS_TEXT


def test_order_does_not_hang_on_who_found_it_first() -> None:
    """The same mistakes are told the same way."""
    assert as_text(reversed(MISTAKES)) == AS_TEXT
    assert as_json(reversed(MISTAKES)) == as_json(MISTAKES)


def test_what_cannot_be_seen_is_written_as_its_number() -> None:
    """No sign of a contributor turns a line round, moves the cursor or forges a line of its own."""
    assert shown("a\u202eb") == "a\\u202eb"
    assert shown("a\nb\tc\rd\x1b[2J") == "a\\nb\\tc\\rd\\u001b[2J"
    assert shown("\ud800") == "\\ud800"
    assert shown("\u2028\u0085\ufeff\u200b") == "\\u2028\\u0085\\ufeff\\u200b"
    assert shown("\U000e0041") == "\\U000e0041"
    assert shown("10 µF, 4.7 kΩ, −12 V") == "10 µF, 4.7 kΩ, −12 V"


def test_long_text_is_cut() -> None:
    """A mistake never prints a whole file."""
    assert shown("a" * 60) == "a" * 60
    assert shown("a" * 61) == "a" * 59 + "…"
    assert shown("a" * 1_000_000) == "a" * 59 + "…"
    assert len(shown("\u202e" * 100)) <= 60


def test_a_forged_line_stays_in_its_place() -> None:
    """A new line in a file's name, a path, a value, a name or a sentence's gap is no new line in a log."""
    forged = "x\n::error::all is well"
    mistake = LINK.at(Place(file=forged, line=1, column=1), forged, forged, forged, name=forged)
    assert not re.search(r"^\s*::", as_text([mistake]), re.MULTILINE)
    assert len(as_json([mistake]).splitlines()) == len(as_json(MISTAKES[:1]).splitlines())


def test_no_line_is_a_command_of_a_log() -> None:
    """Logs of forges obey lines that begin with two colons, and `##[` anywhere; lines are broken at spaces."""
    for length in range(40, 70):
        name = "a" * length + " ::stop::b ##[error]c"
        text = as_text([LINK.at(Place(file="a.yml", line=1, column=1), name=name)])
        assert not re.search(r"^\s*::|##\[", text, re.MULTILINE)


HARD = st.text(max_size=300)


@given(HARD, HARD, HARD, HARD)
def test_no_text_breaks_the_form(file: str, path: str, found: str, name: str) -> None:
    """Whatever is in a mistake, it takes at most four lines, its sentence a hundred columns, and can be seen."""
    mistake = LINK.at(Place(file=file, line=3, column=2), path, found, name, name=name)
    text = as_text([mistake])
    lines = text.split("\n")[:-2]
    assert 2 <= len(lines) <= 4
    assert all(len(line) <= 100 for line in lines[1:])
    assert re.sub(r"\s", " ", text).isprintable()
    assert as_json([mistake]).isascii()
    assert json.loads(as_json([mistake]))["mistakes"][0]["line"] == 3


def test_mistakes_with_and_without_found_text_can_stand_at_one_place() -> None:
    """Sorting does not stumble over what is not there."""
    place = Place(file="a.yml", line=1, column=1)
    both: list[Mistake] = [FILE.at(place, "a", "b"), FILE.at(place, "a")]
    assert as_text(both).count("[FILE-09]") == 2


def pointing(file: str, line: int, about: str = "X2") -> Mistake:
    """A pointer to a name that is gone."""
    told = LINK.at(Place(file=file, line=line, column=3), "faults.no-clock.part", about, name=about)
    return replace(told, about=("name", about))


def test_what_many_share_is_told_once() -> None:
    """Of pointers to one name the first in order is told, with the number of other lines; other names stay apart."""
    gone = [pointing("machines/a/b.yml", line) for line in (44, 9, 12, 12)]
    (told,) = told_once(gone)
    assert (told.place.line, [each.place.line for each in told.others]) == (9, [12, 44])
    assert as_text([told]) == (
        "machines/a/b.yml:9:3: [LINK-01] faults.no-clock.part: found `X2`\n"
        "    No part `X2` on any board of this machine. 2 more lines point at it, the next is\n"
        "    machines/a/b.yml:12.\n"
        "1 mistake in 1 file.\n"
    )
    one = as_text(told_once(gone[:2]))
    assert "    No part `X2` on any board of this machine. One more line points at it: machines/a/b.yml:44.\n" in one
    assert json.loads(as_json([told]))["mistakes"][0]["says"].endswith("the next is machines/a/b.yml:12.")
    assert (
        len(told_once([*gone, pointing("machines/a/b.yml", 50, "X3"), UNIT.at(Place(file="c.yml"), wanted="1 V")])) == 3
    )


def test_a_shared_mistake_is_told_where_it_is_asked_for() -> None:
    """Where only some files are judged, the first of the lines in them is told with the others in them."""
    shared = told_once([pointing("a.yml", 1), pointing("b.yml", 2), pointing("b.yml", 7), pointing("c.yml", 3)])
    (told,) = narrowed(shared, lambda mistake: mistake.place.file == "b.yml")
    assert (told.place.line, [each.place.line for each in told.others]) == (2, [7])
    (alone,) = narrowed(shared, lambda mistake: mistake.place.file == "c.yml")
    assert (alone.place.file, alone.others) == ("c.yml", ())
    assert narrowed(shared, lambda mistake: mistake.place.file == "d.yml") == []
