"""The shortest descriptions that have no mistake, written out: a machine and all that it cannot be without."""

from collections.abc import Iterator
from typing import Any

from benchsheaf.documents import PART_FOLDERS
from benchsheaf.fields.examples import least_example
from benchsheaf.fields.records import Field, Schemas
from benchsheaf.fields.written_form import data_lines

SLUG = "sketch-1"
_FOLDERS = {kind: folder for folder, kind in PART_FOLDERS.items()}


def worked_example(schemas: Schemas) -> dict[str, str]:
    """Data files by their names below the folder of descriptions, with nothing but what must be there.

    Every value is the example of its field; a pointer leads to the name that is given in these files.
    """
    machine = schemas.kinds["machine"]
    values = least_example(machine)
    names = dict(_names(machine, values))
    made = {f"{SLUG}/machine.yml": values}
    waiting = list(_held(machine, values))
    while waiting:
        kind, slug = waiting.pop()
        file = f"_parts/{_FOLDERS[kind]}/{slug}.yml"
        if file not in made:
            made[file] = least_example(schemas.kinds[kind])
            _lead(schemas.kinds[kind], made[file], names)
            waiting += _held(schemas.kinds[kind], made[file])
    return {file: "\n".join(data_lines(each)) + "\n" for file, each in made.items()}


def _singles(described: Field, values: Any) -> Iterator[tuple[Any, str | int, Field]]:
    """Every single value as what holds it, the key or number that it has there, and its field."""
    pieces: list[tuple[str | int, Any, Field]]
    if isinstance(values, dict):
        pieces = [(name, each, described.fields[name]) for name, each in values.items()]
    else:
        assert described.item is not None
        pieces = [(number, each, described.item) for number, each in enumerate(values)]
    for key, each, field in pieces:
        if isinstance(each, str):
            yield values, key, field
        else:
            yield from _singles(field, each)


def _names(described: Field, values: Any) -> Iterator[tuple[str, str]]:
    for holder, key, field in _singles(described, values):
        if field.names_item:
            yield field.names_item, holder[key]


def _held(described: Field, values: Any) -> Iterator[tuple[str, str]]:
    for holder, key, field in _singles(described, values):
        if field.points_at in _FOLDERS:
            yield field.points_at, holder[key]


def _lead(described: Field, values: Any, names: dict[str, str]) -> None:
    """Let pointers to what the machine names lead there."""
    for holder, key, field in _singles(described, values):
        if field.points_at in names:
            holder[key] = names[field.points_at]
