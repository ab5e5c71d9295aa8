"""The schemas as JSON Schema say of a document what we say of it, with another validator as the judge."""

import json
import random
import re
from collections.abc import Iterator
from copy import deepcopy
from functools import cache
from pathlib import Path
from typing import Any

import pytest
from jsonschema import Draft202012Validator

from benchsheaf.conformity import conformed
from benchsheaf.documents import Entry, read_folder, text_and_mistakes
from benchsheaf.fields import Field, built_in_schemas, json_schemas, specimens, spoken_path
from benchsheaf.quantities import MEASURES, Misread, quantity_pattern, read_quantity, spellings
from expected import written

SCHEMAS = built_in_schemas()
KINDS = sorted(SCHEMAS.kinds)

# What JSON Schema cannot say of texts, so that `check` alone says it: bounds, one above another, whole bytes.
LEFT_TO_CHECK = {"RANGE-01", "RANGE-02", "RANGE-03", "UNIT-09"}

TEXTS = [text for several in written("cases/fields/texts.yml").values() for text in several]


@cache
def judge(name: str) -> Draft202012Validator:
    """The other validator with one of our exported schemas."""
    made = json.loads(json.dumps(json_schemas(SCHEMAS)[name]))
    Draft202012Validator.check_schema(made)
    return Draft202012Validator(made)


@pytest.fixture(scope="module")
def whole_documents() -> dict[str, dict[str, Any]]:
    """A document of every kind in which every field stands, every value as text."""
    return specimens(SCHEMAS)


def ours(kind: str, document: Any) -> tuple[set[str], set[str]]:
    """Where we find a document wrong, as a contributor says the place, and the codes of all that we find."""
    read, mistakes = text_and_mistakes(json.dumps(document, ensure_ascii=False).encode(), "a.yml")
    assert read is not None
    assert mistakes == []
    entry = Entry(kind, "a", (read,), dict.fromkeys(read.values, read))
    told = conformed(entry, SCHEMAS.kinds[kind], whole=True).mistakes
    return {each.path for each in told if each.code.id not in LEFT_TO_CHECK}, {each.code.id for each in told}


def theirs(kind: str, document: Any) -> set[str]:
    """Where the other validator finds it wrong, the places said the same way."""
    paths = {path for error in judge(kind).iter_errors(document) for path in places(error)}
    return {spoken_path(SCHEMAS.kinds[kind], document, path) for path in paths}


def places(error: Any) -> Iterator[tuple[str | int, ...]]:
    """The paths that an error is about: a key that is missing or strange is told of its mapping."""
    here = tuple(error.absolute_path)
    if error.validator == "required":
        yield from ((*here, name) for name in error.validator_value if name not in error.instance)
    elif error.validator == "additionalProperties":
        yield from ((*here, name) for name in error.instance if name not in error.schema["properties"])
    elif error.validator == "dependentRequired":
        for name, needed in error.validator_value.items():
            if name in error.instance and not set(needed) <= set(error.instance):
                yield (*here, name)
    else:
        yield here


def follows_from_another_name(path: str, told: set[str]) -> bool:
    """Whether a field is missed only because it stands beside under another name, of which alone `check` speaks."""
    beside = {each.rpartition(".")[0] for each in told if each.endswith("_")}
    return path in beside or path.rpartition(".")[0] in beside


def spots(value: Any) -> Iterator[tuple[Any, str | int]]:
    """Every value of a document below its top, as what holds it and the key or number that it has there."""
    inner = value.items() if isinstance(value, dict) else enumerate(value) if isinstance(value, list) else ()
    for key, each in inner:
        yield value, key
        yield from spots(each)


def mutate(document: Any, dice: random.Random) -> None:
    """One change at a random spot: keys dropped or renamed, an item dropped or doubled, another shape, another text."""
    holders = {id(holder): holder for holder, _ in spots(document) if len(holder) > 1}
    groups = [holder for holder in holders.values() if isinstance(holder, dict)]
    lists = [holder for holder in holders.values() if isinstance(holder, list)]
    change = dice.choice(("drop", "rename", "thin", "item", "double", "shape", *("text",) * 5))
    if change in ("drop", "rename", "thin") and groups:
        group = dice.choice(groups)
        for key in dice.sample(list(group), len(group) - 1 if change == "thin" else 1):
            value = group.pop(key)
            group.update({f"{key}_": value} if change == "rename" else {})
    elif change in ("item", "double") and lists:
        several = dice.choice(lists)
        several.pop() if change == "item" else several.append(deepcopy(several[0]))
    else:
        wanted = [(holder, key) for holder, key in spots(document) if change == "shape" or isinstance(holder[key], str)]
        measured = [(holder, key) for holder, key in wanted if re.match(r"[+-]?[0-9.]+ ", str(holder[key]))]
        holder, key = dice.choice((measured if measured and dice.random() < 0.5 else wanted) or list(spots(document)))
        holder[key] = dice.choice(["412", ["412"], {"name": "412"}] if change == "shape" else TEXTS)


def test_eight_hundred_documents_get_the_same_verdicts(whole_documents: dict[str, dict[str, Any]]) -> None:
    """Documents spoilt at random are wrong at the very same fields for both, but for the rules left to `check`."""
    dice = random.Random(1985)
    seen: set[str] = set()
    wrong = 0
    for number in range(800):
        kind = dice.choice([*KINDS, "machine", "machine", "supply", "drive"])
        document = deepcopy(whole_documents[kind])
        for _ in range(dice.randint(1, 4)):
            mutate(document, dice)
        paths, codes = ours(kind, document)
        told = theirs(kind, document)
        left = {path for path in told - paths if not follows_from_another_name(path, paths)}
        assert (left, paths - told) == (set(), set()), (number, kind, json.dumps(document, ensure_ascii=False))
        seen |= codes
        wrong += bool(paths)
    assert 500 < wrong < 800
    assert {f"FIELD-0{digit}" for digit in "12345"} | {f"KIND-0{digit}" for digit in "1234"} <= seen
    assert {"UNIT-01", "UNIT-02", "UNIT-03", "UNIT-04", "UNIT-05", "UNIT-06", "RANGE-04"} <= seen


def test_a_size_of_two_meanings_gets_the_same_verdict(whole_documents: dict[str, dict[str, Any]]) -> None:
    """Sizes are too few among all fields for dice to find, so one is spoilt on purpose."""
    document = deepcopy(whole_documents["drive"])
    document["geometry"]["sector"] = "64 KB"
    assert ours("drive", document) == ({"geometry.sector"}, {"UNIT-07"})
    assert theirs("drive", document) == {"geometry.sector"}


@pytest.mark.parametrize("kind", KINDS)
def test_the_specimen_of_a_kind_is_right_for_both(kind: str, whole_documents: dict[str, dict[str, Any]]) -> None:
    """A document in which every field stands with its example has no fault, here or there."""
    assert ours(kind, whole_documents[kind])[0] == set()
    assert theirs(kind, whole_documents[kind]) == set()


def test_the_files_of_the_demonstration_are_right(repository: Path) -> None:
    """Every data file passes as an editor sees it: a file of a machine by itself, all else as a whole."""
    files = 0
    for entry in read_folder(repository / "machines").entries.values():
        if entry.kind not in SCHEMAS.kinds:
            continue
        for document in entry.documents:
            name = "machine-file" if entry.kind == "machine" else entry.kind
            assert list(judge(name).iter_errors(document.values)) == [], document.file
            files += 1
        if entry.kind == "machine":
            assert list(judge("machine").iter_errors(entry.values)) == []
    assert files >= 15


def test_a_file_of_a_machine_need_not_hold_all_of_it() -> None:
    """A file with two sections passes as a file, and as a machine lacks the rest."""
    part = {"name": "Sketch-1", "built": "1985"}
    assert list(judge("machine-file").iter_errors(part)) == []
    assert theirs("machine", part) >= {"summary", "rails", "configurations"}


@pytest.mark.parametrize(
    "section,wrong",
    [({"built": 1985}, 0), ({"built": 1066}, 1), ({"mains": {"nominal": 230, "low": "220 V", "high": "240 V"}}, 1)],
)
def test_bare_numbers_of_an_editor(section: dict[str, Any], wrong: int) -> None:
    """Where an editor reads bare digits as a number, a whole number is held to its bounds and a size lacks its unit."""
    assert len(list(judge("machine-file").iter_errors(section))) == wrong


def leaves(described: Field) -> Iterator[Field]:
    """Every field below one, and the items of lists."""
    for inner in described.fields.values():
        yield inner
        yield from leaves(inner)
    if described.item:
        yield described.item
        yield from leaves(described.item)


def test_every_field_tells_what_it_is() -> None:
    """In the export each field with a label has its title, its sentence, and its bounds in words."""
    words = json.dumps(list(json_schemas(SCHEMAS).values()), ensure_ascii=False)
    for kind in KINDS:
        for field in leaves(SCHEMAS.kinds[kind]):
            assert not field.label or f'"title": {json.dumps(field.label, ensure_ascii=False)}' in words
            assert not field.help or json.dumps(field.help, ensure_ascii=False)[1:-1] in words
    # Bounds of schemas/machine.yml, typed from there.
    assert "At least 1960. At most 2005." in words


@pytest.mark.parametrize("unit", sorted(MEASURES))
def test_every_spelling_is_read_and_is_in_the_pattern(unit: str) -> None:
    """All spellings of a unit give the same quantity, and the pattern for editors knows each of them."""
    fits = Draft202012Validator({"pattern": quantity_pattern(unit)}).is_valid
    for name, several in spellings(unit).items():
        for gap in ("", " ", "\u00a0"):
            values = {read_quantity(f"24{gap}{word}", unit) for word in several}
            assert values == {read_quantity(f"24 {name}", unit)}
            assert not any(isinstance(value, Misread) for value in values)
            assert all(fits(f"24{gap}{word}") for word in several)


# Written by hand: spellings that quantities/written.py says are one with those of its table.
@pytest.mark.parametrize("text,unit", [("4.7 kohm", "ohm"), ("22 uF", "F"), ("47 \u03bcH", "H"), ("1 M\u2126", "ohm")])
def test_other_signs_for_the_same_unit_fit(text: str, unit: str) -> None:
    """What a keyboard has instead of a sign is in the pattern too."""
    assert Draft202012Validator({"pattern": quantity_pattern(unit)}).is_valid(text)
