"""Reading data files: what is kept, where it stands, and the words for everything that is refused."""

import random
import re
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
import yaml
from hypothesis import given
from hypothesis import strategies as st

from benchsheaf import documents
from benchsheaf.documents import (
    Document,
    Spot,
    Value,
    characters,
    files,
    folders,
    plain,
    read_document,
    read_text,
    refusals,
    shape,
    strays,
    syntax,
    text_and_mistakes,
    tree,
)
from benchsheaf.mistakes import Code, Mistake
from benchsheaf.wording import as_json, as_text

CASES = Path(__file__).parent / "cases" / "documents"
ROOMS = (characters, files, folders, refusals, shape, strays, syntax)
CODES = {code.id: code for room in ROOMS for code in vars(room).values() if isinstance(code, Code)}


def cases(name: str) -> Any:
    """The cases of a file."""
    return yaml.safe_load((CASES / f"{name}.yml").read_text(encoding="utf-8"))


def as_bytes(text: str) -> bytes:
    """The bytes of a case: `%` and two hexadecimal digits stand for one byte."""
    parts = re.split("%([0-9A-F]{2})", text)
    return b"".join(bytes.fromhex(part) if at % 2 else part.encode() for at, part in enumerate(parts))


def told(mistakes: list[Mistake]) -> list[str]:
    """Mistakes in the short form of the cases."""
    return [f"{each.place.line}:{each.place.column} {each.code.id} {each.found or ''}".rstrip() for each in mistakes]


WORDS = cases("words")


def test_every_code_has_its_words() -> None:
    """No code is without a hand-written sentence, and no sentence without a code."""
    assert sorted(WORDS) == sorted(CODES)


@pytest.mark.parametrize("name", sorted(WORDS))
def test_the_words_of_a_code(name: str) -> None:
    """A code's sentence, filled as its example says, is the one that was written for it by hand."""
    code = CODES[name]
    assert code.words.format_map(code.example) == WORDS[name]
    assert code.meaning.endswith(".")


@pytest.mark.parametrize("case", cases("refused"), ids=lambda case: case["why"])
def test_what_is_refused(case: dict[str, Any]) -> None:
    """A bad text is told of once, by its cause, at its own place."""
    found = read_text(as_bytes(case["text"]), "a.yml")
    assert isinstance(found, list)
    assert told(found) == case["told"]


@pytest.mark.parametrize("case", cases("refused"), ids=lambda case: case["why"])
def test_what_is_refused_without_the_library_in_c(case: dict[str, Any], monkeypatch: pytest.MonkeyPatch) -> None:
    """An installation that lacks the fast parser refuses the same with the same words."""
    monkeypatch.setattr(plain, "Parser", yaml.SafeLoader)
    monkeypatch.setattr(tree, "Parser", yaml.SafeLoader)
    _, mistakes = text_and_mistakes(as_bytes(case["text"]), "a.yml")
    assert told(mistakes) == case.get("also", case["told"])


def test_the_fast_parser_is_there() -> None:
    """What is locked for this project brings the parser in C."""
    assert plain.Parser.__name__ == "CParser"


@pytest.mark.parametrize("case", cases("kept"), ids=lambda case: case["why"])
def test_what_is_kept(case: dict[str, Any]) -> None:
    """A good text is read as it was written."""
    document = read_text(as_bytes(case["text"]), "a.yml")
    assert isinstance(document, Document)
    assert document.values == case["holds"]


@pytest.mark.parametrize("case", cases("kept"), ids=lambda case: case["why"])
def test_what_is_kept_agrees_with_the_base_loader(case: dict[str, Any]) -> None:
    """The YAML library's own loader of plain text, which keeps no places, finds the same values."""
    text = as_bytes(case["text"]).decode("utf-8-sig")
    assert case["holds"] == yaml.load(text, Loader=yaml.BaseLoader)


def test_depth_is_bounded() -> None:
    """The twenty-fifth list in another is refused where it stands; five hundred are no more than twenty-five."""
    within = b"a: " + b"[" * 23 + b"b" + b"]" * 23
    assert isinstance(read_text(within, "a.yml"), Document)
    # The parser's own bound, a thousand, is met first where it looks that far ahead.
    for deep, place in ((24, "1:27"), (500, "1:27"), (100_000, "1:1003")):
        found = read_text(b"a: " + b"[" * deep + b"b" + b"]" * deep, "a.yml")
        assert isinstance(found, list)
        assert told(found) == [f"{place} YAML-10"]


def test_size_is_bounded() -> None:
    """A file of 512 KiB is read, one byte more is not."""
    full = b"a: " + b"b" * (512 * 1024 - 3)
    assert isinstance(read_text(full, "a.yml"), Document)
    found = read_text(full + b"b", "a.yml")
    assert isinstance(found, list)
    assert told(found) == ["0:0 FILE-04"]


def test_mistaken_values_are_left_out_and_the_rest_is_kept() -> None:
    """What can be read beside a mistake can still be judged."""
    text = b'a: b\na: c\nd: null\ne: {f: ~, g: h}\ni: [j, ~]\nk: 16 # V\nl: "\\u202e"\nm: [~]\n'
    document, mistakes = text_and_mistakes(text, "a.yml")
    assert len(mistakes) == 7
    assert document is not None
    assert document.values == {"a": "b", "e": {"g": "h"}, "i": ["j"]}
    assert parallel(document.values, document.spots)


def test_the_path_of_a_mistake_is_made_of_keys() -> None:
    """The way to the mistake is told as the contributor wrote it."""
    found = read_text(b"boards:\n  - id: main\n    parts: [{ref: C7, rated: null}]\n", "a.yml")
    assert isinstance(found, list)
    assert [each.path for each in found] == ["boards.parts.rated"]


def test_the_first_of_two_keys_is_named() -> None:
    """Whoever wrote a key twice is told where the first one stands."""
    found = read_text(b"\na: b\nc: d\na: e\n", "a.yml")
    assert isinstance(found, list)
    assert (
        found[0].sentence
        == "`a` already stands in line 2. Keep one of the two, or begin a new item with `- ` above this."
    )


def test_every_value_has_its_spot() -> None:
    """Lines and columns of keys and values, counted by hand in signs, not bytes."""
    document = read_text('a: b\n"µΩ😀": c\nd:\n  - {e: "f", g: [h]}\n  - i: >-\n      j\n'.encode(), "a.yml")
    assert isinstance(document, Document)
    inner = [
        Spot(4, 5, 0, 0, {"e": Spot(4, 9, 4, 6, None), "g": Spot(4, 17, 4, 14, [Spot(4, 18, 0, 0, None)])}),
        Spot(5, 5, 0, 0, {"i": Spot(5, 8, 5, 5, None)}),
    ]
    assert document.spots == {
        "a": Spot(1, 4, 1, 1, None),
        "µΩ😀": Spot(2, 8, 2, 1, None),
        "d": Spot(4, 3, 3, 1, inner),
    }


def parallel(values: Value, spots: Any) -> bool:
    """Whether spots have the very shape of the values."""
    if isinstance(values, dict):
        return list(values) == list(spots) and all(parallel(values[key], spots[key].inner) for key in values)
    if isinstance(values, list):
        return len(values) == len(spots) and all(map(parallel, values, (spot.inner for spot in spots)))
    return spots is None


def texts(values: Value, spots: Any) -> Iterator[tuple[str, Spot]]:
    """Every text of a document and its spot."""
    inside = (values.values(), spots.values()) if isinstance(values, dict) else (values, spots)
    for value, spot in zip(*inside, strict=True):
        if isinstance(value, str):
            yield value, spot
        else:
            yield from texts(value, spot.inner)


def hold_together(content: bytes) -> None:
    """What must be true of any bytes whatever."""
    document, mistakes = text_and_mistakes(content, "a.yml")
    assert document is not None or mistakes
    lines = content.decode("utf-8", "replace").removeprefix("\ufeff").replace("\t", " ").split("\n")
    lines.append("")
    for mistake in mistakes:
        line = lines[mistake.place.line - 1] if mistake.place.line else ""
        assert 0 <= mistake.place.column <= len(line) + 2
    assert len({(each.place, each.code.id) for each in mistakes}) == len(mistakes)
    assert re.sub(r"\s", " ", as_text(mistakes)).isprintable()
    assert as_json(mistakes).isascii()
    decoded, _ = characters.text_of(content, "a.yml")
    values = plain.plain_values(decoded) if decoded is not None else None
    if decoded is not None and values is not None:
        closely, found = tree.close_look(decoded, "a.yml")
        assert (closely and closely.values, found) == (values, []), "the quick way let pass what is refused"
    if document is not None:
        assert parallel(document.values, document.spots)
        for text, spot in texts(document.values, document.spots):
            assert not any(map(characters.is_hidden, characters.HIDDEN.finditer(text)))
            rest = lines[spot.line - 1][spot.column - 1 :]
            assert rest[:1] in ("'", '"', "|", ">") or rest.startswith(re.split("[ \n]", text)[0])


@given(st.binary(max_size=200))
def test_no_bytes_raise(content: bytes) -> None:
    """Whatever a file holds is a document or mistakes in words."""
    hold_together(content)


@given(
    st.text(alphabet=st.sampled_from("ab:-?#&*!|>'\"%@`,[]{}\\ \n\t~<=+u0\u00a0\u2028\ufeff\U0001f600"), max_size=60)
)
def test_no_text_of_signs_raises(text: str) -> None:
    """Whatever signs of YAML stand beside each other."""
    hold_together(text.encode())


PIECES = [
    *"\n :-#?[]{},'\"%@`\t\\\r~|>",
    *(
        "  ",
        ": ",
        "- ",
        " #",
        "&a ",
        "*a",
        "!t ",
        "<<: ",
        "---\n",
        "...\n",
        "\\ud800",
        "\\UFFFFFFFF",
        "null",
        '""',
        "\r\n",
    ),
    *("\u2028", "\u0085", "\u202e", "\ufeff", "\u00a0", "\ufffd", "\U0001f600", "[" * 30, "%YAML 1.1\n---\n", "\\\n"),
]


def mutated(content: bytes, chance: random.Random) -> bytes:
    """A file as it may look after an accident or two."""
    for _ in range(chance.randint(1, 4)):
        at = chance.randint(0, len(content))
        piece = chance.choice([chance.choice(PIECES).encode(), bytes([chance.randrange(256)]), b""])
        gone = chance.choice([0, 0, 1, chance.randint(1, 8)])
        content = content[:at] + piece + content[at + gone :]
    return content


@pytest.mark.parametrize("parser", ["in C", "in Python"])
def test_no_accident_raises(parser: str, repository: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Two thousand data files with a few signs too many, too few or wrong; the same at each run."""
    if parser == "in Python":
        monkeypatch.setattr(plain, "Parser", yaml.SafeLoader)
        monkeypatch.setattr(tree, "Parser", yaml.SafeLoader)
    chance = random.Random(1985)
    sources = [
        path.read_text(encoding="utf-8").splitlines() for path in sorted((repository / "machines").rglob("*.yml"))
    ]
    for _ in range(2000 if parser == "in C" else 300):
        lines = chance.choice(sources)
        at = chance.randrange(len(lines))
        hold_together(mutated("\n".join(lines[at : at + chance.randint(1, 25)]).encode(), chance))


def test_a_document_is_read_from_its_file(tmp_path: Path) -> None:
    """The name that is shown is the one that was asked for, not the path."""
    (tmp_path / "x").write_bytes(b"a: b\n")
    document = read_document(tmp_path / "x", "machines/a/b.yml")
    assert isinstance(document, Document)
    assert (document.file, document.values) == ("machines/a/b.yml", {"a": "b"})


def test_the_room_has_one_door() -> None:
    """What other rooms use of this one is what it names."""
    assert set(documents.__all__) <= set(vars(documents))
