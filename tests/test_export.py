"""What the site gives away as data: the records' own names with units in them, finite numbers, paths that stay."""

import json
from collections.abc import Iterator
from dataclasses import dataclass, fields, is_dataclass
from decimal import Decimal
from pathlib import Path
from typing import Any, get_args, get_type_hints

import pytest

from benchsheaf.compute.workup import CardWorkup, DisplayWorkup, DriveWorkup, MachineWorkup, SupplyWorkup
from benchsheaf.export import as_json, exported, figure_paths
from benchsheaf.model.collection import RECORDS
from benchsheaf.quantities import SUFFIX
from benchsheaf.site import Judgement, edition, judgement
from golden import FIGURE_PATHS, paths_of_figures

# Bare numbers: what is counted, a number by itself, or the year.
COUNTS = {
    *("cylinders", "heads", "sectors", "tracks", "flawed_tracks", "turns", "interleave", "factor", "order", "park"),
    *("chips", "parity_chips", "lane", "pieces", "pins", "legs", "keys", "built"),
    *("bit", "bits", "count", "divided_by", "dots", "every", "lines", "ports", "round", "rows", "shown_dots"),
    *("rings", "shown_lines", "weight", "weight_sum", "worth", "worth_repairs"),
    *("cluster", "clusters", "cylinder", "first_data_sector", "flaw_block", "gone", "grew", "head", "hidden", "new"),
    *("left_over_sectors", "more_tracks", "on_cylinder_0", "read_turns", "reserved", "root_sectors", "roots", "sector"),
    *("stayed", "system_sectors", "table_entries", "table_sectors", "tables"),
    *("free_ports", "reads", "one", "other"),  # the last two are places in the list of what answers
}
ENDINGS = tuple(f"_{suffix}" for suffix in {*SUFFIX.values(), "megabytes", "mebibytes"})
ROOTS = [*RECORDS.values(), MachineWorkup, DriveWorkup, SupplyWorkup, CardWorkup, DisplayWorkup]
KIND_OF_FOLDER = {
    "supply": "supplies",
    "drive": "drives",
    "card": "cards",
    "keyboard": "keyboards",
    "bus": "buses",
    "display": "displays",
    "medium": "media",
}


@pytest.fixture(scope="module")
def judged(repository: Path) -> Judgement:
    """The demonstration, read and computed."""
    return judgement(repository / "machines")


@pytest.fixture(scope="module")
def documents(judged: Judgement) -> dict[str, bytes]:
    """The data files of the demonstration."""
    return {name: content for name, content in edition(judged).files.items() if name.endswith(".json")}


def numbers(record: type) -> Iterator[tuple[str, str]]:
    """Every field of a record, and of the records in it, that holds a number: the record's name and the field's."""
    for name, hint in get_type_hints(record).items():
        hearts = {hint, *get_args(hint), *(deeper for each in get_args(hint) for deeper in get_args(each))}
        if hearts & {int, Decimal, float}:
            yield record.__name__, name
        for heart in hearts:
            if isinstance(heart, type) and is_dataclass(heart):
                yield from numbers(heart)


def test_a_number_says_its_unit_in_its_name() -> None:
    """Every number that is exported ends in a unit of the one table, or is on the short list of what is counted."""
    found = {place for root in ROOTS for place in numbers(root)}
    assert len(found) > 100
    assert sorted(place for place in found if not place[1].endswith(ENDINGS) and place[1] not in COUNTS) == []


def strangers(record: object, value: Any, path: str = "") -> Iterator[str]:
    """Keys of an exported record that are no fields of it, and fields with a value that it has lost."""
    if is_dataclass(record):
        told = {each.name for each in fields(record) if getattr(record, each.name) is not None}
        yield from (f"{path}.{name}" for name in told ^ set(value))
        for name in told & set(value):
            yield from strangers(getattr(record, name), value[name], f"{path}.{name}")
    elif isinstance(record, tuple):
        assert len(record) == len(value), path
        for place, (inner, each) in enumerate(zip(record, value, strict=True)):
            yield from strangers(inner, each, f"{path}[{place}]")
    elif (float(record) if isinstance(record, Decimal) else record) != value:
        yield f"{path}: {record} became {value}"


def test_every_key_is_a_field_of_its_record(judged: Judgement, documents: dict[str, bytes]) -> None:
    """Facts and figures stand under the names of their records, with nothing lost and nothing added."""
    records, workup = judged.collection, judged.workup
    wanted: dict[str, tuple[object, object]] = {
        f"data/machines/{slug}.json": (machine, workup.machines[slug]) for slug, machine in records.machines.items()
    }
    for kind, folder in KIND_OF_FOLDER.items():
        shelf = getattr(workup, folder, {})
        for slug, part in getattr(records, folder).items():
            wanted[f"data/parts/{kind}/{slug}.json"] = (part, shelf.get(slug))
    assert set(wanted) == set(documents) - {"data/index.json"}
    for name, (facts, figures) in wanted.items():
        told = json.loads(documents[name])
        slug = name.removeprefix("data/machines/").removesuffix(".json")
        repairs = [each for each in records.repairs.values() if each.machine == slug]
        keys = {"figures": figures, "repairs": repairs}
        assert set(told) == {"format_version", "facts"} | {key for key, value in keys.items() if value}, name
        assert list(strangers(facts, told["facts"], f"{name} facts")) == []
        assert figures is None or list(strangers(figures, told["figures"], f"{name} figures")) == []


def test_every_figure_is_finite(documents: dict[str, bytes]) -> None:
    """No file holds a number that JSON does not have."""
    for content in documents.values():
        json.loads(content, parse_constant=lambda name: pytest.fail(f"{name} in the data"))


def test_the_index_names_every_file(documents: dict[str, bytes]) -> None:
    """Whoever begins at the index finds all the rest, each once, with the name that is in it."""
    index = json.loads(documents["data/index.json"])
    listed = index["machines"] + index["parts"]
    assert sorted(each["data"] for each in listed) == sorted(set(documents) - {"data/index.json"})
    for each in listed:
        told = json.loads(documents[each["data"]])
        assert (told["facts"]["slug"], told["facts"]["name"]) == (each["slug"], each["name"])
        assert told["format_version"] == index["format_version"]


def test_the_paths_are_those_that_are_relied_on() -> None:
    """A path that comes or goes is seen: read the difference, then `make golden`."""
    assert paths_of_figures() == FIGURE_PATHS.read_text(encoding="utf-8")


@dataclass(frozen=True, kw_only=True, slots=True)
class Inner:
    """A record inside another."""

    size_bytes: int
    wait_s: Decimal | None = None


@dataclass(frozen=True, kw_only=True, slots=True)
class Outer:
    """A record with one of everything."""

    name: str
    whole_v: Decimal
    share: Decimal
    met: bool
    inner: tuple[Inner, ...] = ()


def test_a_record_becomes_plain_values() -> None:
    """What is absent is left out, what is false is not; whole numbers stay whole, others keep twelve digits."""
    inner = (Inner(size_bytes=0), Inner(size_bytes=1, wait_s=Decimal("0.5")))
    record = Outer(name="Größe", whole_v=Decimal("1E+2"), share=Decimal(1) / 3, met=False, inner=inner)
    assert exported({"a": record}) == {
        "a": {
            "name": "Größe",
            "whole_v": 100,
            "share": 0.333333333333,
            "met": False,
            "inner": [{"size_bytes": 0}, {"size_bytes": 1, "wait_s": 0.5}],
        }
    }


def test_a_file_is_text_with_an_end() -> None:
    """Letters as they are, in the order of the record, one line break at the end; small numbers without loss."""
    record = Outer(name="Größe", whole_v=Decimal("-12.0"), share=Decimal("0.0000047"), met=True)
    wanted = '{\n "name": "Größe",\n "whole_v": -12,\n "share": 4.7e-06,\n "met": true,\n "inner": []\n}\n'
    assert as_json(record) == wanted.encode()


@pytest.mark.parametrize("number", ["NaN", "Infinity", "-Infinity"])
def test_no_number_is_no_figure(number: str) -> None:
    """A bug in a formula stops the build instead of going out as data that nobody can read."""
    with pytest.raises((ValueError, OverflowError)):
        as_json(Inner(size_bytes=1, wait_s=Decimal(number)))


def test_paths_name_items_of_lists_alike() -> None:
    """Ten rails are one path; an empty list still shows that it is there."""
    value = {"a": 1, "b": [{"c": 1}, {"c": 2, "d": []}], "e": {"f": "x"}, "g": [1, 2]}
    assert sorted(set(figure_paths(value))) == ["a", "b[].c", "b[].d[]", "e.f", "g[]"]
