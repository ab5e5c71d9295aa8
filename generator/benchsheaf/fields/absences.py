"""Facts that a description could tell and does not: what somebody who has the thing on the bench could look up."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from benchsheaf.fields.paths import all_fields, item_name
from benchsheaf.fields.records import Field


@dataclass(frozen=True, kw_only=True, slots=True)
class Absence:
    """One field that is absent in one or more records of a description.

    `path` is the way of names to it, `places` the names of the records that lack it, or their numbers; the description
    as a whole has no name.
    """

    path: tuple[str, ...]
    described: Field
    places: tuple[str, ...]

    @property
    def count(self) -> int:
        """How many records lack it."""
        return len(self.places)


@dataclass(frozen=True, slots=True)
class _Asked:
    """What is asked for in one group: fields of its own, and groups below in which something is asked for."""

    own: tuple[Field, ...]
    inner: Mapping[str, "_Asked"]


def absences(kind: Field, values: Mapping[str, Any]) -> list[Absence]:
    """The fields marked `wanted` that records of a description lack, in the order of the schema, each once.

    Only records that are there are looked at: a board that nobody described lacks nothing.
    """
    found: dict[tuple[str, ...], tuple[Field, list[str]]] = {}
    for path, described, place in _absent(_asked(kind), kind, values, (), ""):
        found.setdefault(path, (described, []))[1].append(place)
    return [
        Absence(path=path, described=found[path][0], places=tuple(found[path][1]))
        for path, _ in (all_fields(kind) if found else ())
        if path in found
    ]


def _asked(described: Field) -> _Asked:
    group = described.item or described
    inner = {name: _asked(each) for name, each in group.fields.items() if each.fields or each.item}
    return _Asked(
        own=tuple(each for each in group.fields.values() if each.wanted and not each.required),
        inner={name: each for name, each in inner.items() if each.own or each.inner},
    )


def _absent(
    asked: _Asked, described: Field, values: Any, path: tuple[str, ...], place: str
) -> Iterator[tuple[tuple[str, ...], Field, str]]:
    """Path, field and place of every absence in a group or in the groups of a list."""
    if described.item:
        for number, item in enumerate(values, 1):
            name = item_name(described.item, item) or str(number)
            yield from _absent(asked, described.item, item, path, name)
        return
    for each in asked.own:
        if each.name not in values and _concerns(each, values):
            yield (*path, each.name), each, place
    for name, deeper in asked.inner.items():
        if name in values:
            yield from _absent(deeper, described.fields[name], values[name], (*path, name), place)


def _concerns(described: Field, values: Mapping[str, Any]) -> bool:
    """Whether a field is asked for in a group that says these things of itself."""
    return all(str(values.get(name)) in words for name, words in described.wanted_where.items())
