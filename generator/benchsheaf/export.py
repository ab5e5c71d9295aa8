"""Every figure as data, under the records' own field names."""

import csv
import io
import json
import re
from collections.abc import Hashable, Iterable, Iterator
from dataclasses import fields
from decimal import Decimal
from functools import cache, lru_cache
from typing import Any, cast

FORMAT_VERSION = 1


def exported(record: object) -> object:
    """A record as plain values: records become mappings, decimals numbers, facts that are absent are left out.

    A number is written with at most twelve significant digits.
    """
    if record is None or isinstance(record, str | int):
        return record
    if isinstance(record, Decimal):
        return _number(record)
    if isinstance(record, tuple | list):
        return [each if each.__class__ in _READY else exported(each) for each in record]
    if isinstance(record, dict):
        return {str(name): exported(value) for name, value in record.items()}
    told: dict[str, object] = {}
    for name in _field_names(cast(Hashable, type(record))):
        value = getattr(record, name)
        if value.__class__ in _READY:
            told[name] = value
        elif value is not None:
            told[name] = exported(value)
    return told


_READY = frozenset({str, int, bool})


@lru_cache(maxsize=1 << 12)  # most figures stand in several files
def _number(value: Decimal) -> int | float:
    return int(value) if value == value.to_integral_value() else float(f"{value:.12g}")


@cache
def _field_names(record: Any) -> tuple[str, ...]:
    return tuple(each.name for each in fields(record))


# How many levels of a data file have a line for each name: the file, facts and figures, and their sections.
LEVELS_IN_LINES = 3


def as_json(record: object) -> bytes:
    """The bytes of a data file; the same on every machine."""
    return f"{_in_lines(exported(record), LEVELS_IN_LINES, '')}\n".encode()


def _in_lines(value: object, levels: int, indent: str) -> str:
    """A value as JSON, its upper levels in lines; to break all of them takes the library ten times as long."""
    if not levels or not isinstance(value, dict) or not value:
        return json.dumps(value, ensure_ascii=False, allow_nan=False)
    inner = f"{indent} "
    lines = (f"{inner}{json.dumps(name)}: {_in_lines(each, levels - 1, inner)}" for name, each in value.items())
    return "{\n" + ",\n".join(lines) + f"\n{indent}}}"


def as_csv(rows: Iterable[Iterable[str]]) -> bytes:
    """A table for a spreadsheet, every cell in quotes, none of which it takes for a formula; with a byte order mark.

    Without the mark some spreadsheets read the letters of another code.
    """
    table = io.StringIO()
    csv.writer(table, quoting=csv.QUOTE_ALL, lineterminator="\r\n").writerows([map(inert, row) for row in rows])
    return b"\xef\xbb\xbf" + table.getvalue().encode()


def inert(cell: str) -> str:
    """A cell that no spreadsheet takes for a formula.

    Control signs become spaces. A sign that begins a formula, be it a wide one, gets an apostrophe before it: at the
    start of the cell, and behind each sign at which a spreadsheet of another country may cut the cell in two.
    """
    return _FORMULA.sub(r"\1'\2", _CONTROL.sub(" ", cell))


_CONTROL = re.compile("[\x00-\x1f\x7f-\x9f\u2028\u2029]")
_FORMULA = re.compile("((?:^|[;,|\"'])[\\s\u200b-\u200f\u2060\ufeff]*)([=+@\uff1d\uff0b\uff0d\uff20-])")


def figure_paths(value: object, path: str = "") -> Iterator[str]:
    """Every path of an exported value, items of lists as `[]`; the contract of those who read the data."""
    if isinstance(value, dict):
        for name, inner in value.items():
            yield from figure_paths(inner, f"{path}.{name}" if path else name)
    elif isinstance(value, list):
        for inner in value:
            yield from figure_paths(inner, f"{path}[]")
        if not value:
            yield f"{path}[]"
    else:
        yield path
