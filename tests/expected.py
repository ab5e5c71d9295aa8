"""What tests expect: rows and cases out of files, every number as it is written and held to the digits that it has."""

import csv
from collections.abc import Iterator, Mapping
from dataclasses import is_dataclass
from decimal import Decimal
from pathlib import Path
from types import NoneType, UnionType
from typing import Any, TypeVar, Union, cast, get_args, get_origin, get_type_hints

import pytest
import yaml

TESTS = Path(__file__).resolve().parent
ABSENT = "null"

R = TypeVar("R")


def rows(name: str) -> list[dict[str, str]]:
    """The rows of a table in `references`, every value as text; lines that begin with `#` are words about the table."""
    with (TESTS / "references" / f"{name}.csv").open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(line for line in file if not line.startswith("#")))


def table(name: str) -> pytest.MarkDecorator:
    """Parameters for a test: the rows of a table, each under its own number."""
    found = rows(name)
    assert found, f"{name} has no rows"
    return pytest.mark.parametrize("row", found, ids=[row["id"] for row in found])


def written(path: str) -> Any:
    """A YAML file of this folder with every value as text, so that no digit is lost."""
    # This loader makes texts, lists and mappings, and nothing else.
    return yaml.load((TESTS / path).read_text(encoding="utf-8"), Loader=yaml.BaseLoader)


def to_the_digits(text: str) -> Any:
    """What equals the number within half a unit of its last digit: `10.654` stands for 10.6535 to 10.6545."""
    number = Decimal(text)
    exponent = number.as_tuple().exponent
    assert isinstance(exponent, int), f"not a number: {text}"
    return pytest.approx(number, abs=Decimal((0, (5,), min(exponent, 0) - 1)))


def record(kind: type[R], values: Mapping[str, object]) -> R:
    """A record from texts, lists and mappings, by its own annotations."""
    hints = get_type_hints(kind)
    strange = set(values) - set(hints)
    assert not strange, f"{kind.__name__} has no {', '.join(sorted(strange))}"
    return kind(**{name: meant(hints[name], value) for name, value in values.items()})


def meant(hint: Any, value: Any) -> Any:
    """What texts, lists and mappings mean under an annotation; `null` is nothing, `yes` is true, `no` is false."""
    inner = [each for each in get_args(hint) if each is not NoneType]
    if get_origin(hint) in (Union, UnionType):
        return None if value == ABSENT and NoneType in get_args(hint) else meant(inner[0], value)
    if get_origin(hint) is Mapping:
        return {name: meant(inner[1], each) for name, each in value.items()}
    if isinstance(value, list):
        assert get_origin(hint) is not None, f"no list is wanted: {value}"
        return tuple(meant(inner[0], each) for each in value)
    if isinstance(value, dict):
        assert is_dataclass(hint), f"no mapping is wanted: {value}"
        return record(cast("type[object]", hint), value)
    if hint is bool:
        return {"yes": True, "no": False}[value]
    return hint(value)


def differences(wanted: Any, found: object, path: str = "") -> Iterator[str]:
    """Where a result is not what a case wants, in words; fields of a record that the case does not name are free."""
    if isinstance(wanted, dict):
        for name, inner in wanted.items():
            each = found[name] if isinstance(found, Mapping) else getattr(found, name)
            yield from differences(inner, each, f"{path}.{name}" if path else name)
    elif isinstance(wanted, list):
        assert isinstance(found, tuple | list), f"{path} is no list: {found}"
        if len(wanted) != len(found):
            yield f"{path}: {len(found)} found, {len(wanted)} wanted: {found}"
        for place, (inner, each) in enumerate(zip(wanted, found, strict=False)):
            yield from differences(inner, each, f"{path}[{place}]")
    elif not _same(wanted, found):
        yield f"{path}: found {found}, wanted {wanted}"


def _same(wanted: str, found: object) -> bool:
    if found is None or isinstance(found, bool):
        return wanted == {None: ABSENT, True: "yes", False: "no"}[found]
    if isinstance(found, Decimal | int):
        about, number = wanted.startswith("about "), wanted.removeprefix("about ")
        return bool(found == (to_the_digits(number) if about else Decimal(number)))
    return wanted == found
