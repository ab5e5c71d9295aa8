"""Every figure as data, under the records' own field names."""

import json
from collections.abc import Iterator, Mapping
from dataclasses import fields, is_dataclass
from decimal import Decimal

FORMAT_VERSION = 1


def exported(record: object) -> object:
    """A record as plain values: records become mappings, decimals numbers, facts that are absent are left out.

    A number is written with at most twelve significant digits.
    """
    if is_dataclass(record) and not isinstance(record, type):
        named = {each.name: getattr(record, each.name) for each in fields(record)}
        return {name: exported(value) for name, value in named.items() if value is not None}
    if isinstance(record, Mapping):
        return {str(name): exported(value) for name, value in record.items()}
    if isinstance(record, tuple | list):
        return [exported(each) for each in record]
    if isinstance(record, Decimal):
        return int(record) if record == record.to_integral_value() else float(f"{record:.12g}")
    return record


def as_json(record: object) -> bytes:
    """The bytes of a data file; the same on every machine."""
    text = json.dumps(exported(record), ensure_ascii=False, indent=1, allow_nan=False)
    return f"{text}\n".encode()


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
