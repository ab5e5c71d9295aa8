"""The names that descriptions give, the pointers that they hold, and names that stand twice."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field, replace
from typing import Any

from benchsheaf.conformity import Conformed
from benchsheaf.fields import Field, Misfit, all_fields, converted, text_at
from benchsheaf.links.codes import ID_01
from benchsheaf.mistakes import Mistake

FOLDERS: Mapping[str, str] = {
    "bus": "buses",
    "card": "cards",
    "drive": "drives",
    "keyboard": "keyboards",
    "supply": "supplies",
}
OWN_LIST: Mapping[str, str] = {"pin": "contact", "to": "position", "id": "row"}
"""What a name that only its own list knows is a name of."""

Thing = tuple[str, str]
Path = tuple[str | int, ...]


@dataclass(frozen=True, kw_only=True, slots=True)
class Pointer:
    """A field that points at something: its own thing, where it stands, what it says.

    `beside` is the mapping that it stands in, where its family names a field of that: `switches[switch].positions`.
    """

    thing: Thing
    path: Path
    family: str
    name: str
    beside: Mapping[str, Any] | None = None


@dataclass(frozen=True, kw_only=True, slots=True)
class Links:
    """What was found of pointers: the mistakes, and for every thing the pointers that lead to it."""

    mistakes: list[Mistake]
    held_by: Mapping[Thing, tuple[Pointer, ...]]


@dataclass(slots=True)
class Names:
    """The names that one description gives: family → name → where it stands.

    `muddled` are families in which a name is missing for a reason that is told already: it stands twice, its item has
    none or one of another form, or its whole section has another name or shape. A pointer that fits nothing may have
    meant that one.
    """

    by_family: dict[str, dict[str, Path]] = field(default_factory=dict)
    muddled: set[str] = field(default_factory=set)

    def of(self, family: str) -> dict[str, Path]:
        """The names of one family."""
        return self.by_family.setdefault(family, {})


@dataclass(frozen=True, kw_only=True, slots=True)
class Found:
    """What one description names, its pointers that lead out of it or nowhere, and what is wrong within it."""

    names: Names
    pointers: tuple[Pointer, ...]
    mistakes: tuple[Mistake, ...]


def collect_names(conformed: Conformed, described: Field, value: Any, path: Path, names: Names) -> Iterator[Mistake]:
    """The names that a value and all below it give; a second one of a family is a mistake."""
    if described.names_item and described.names_item != "here":
        family = names.of(described.names_item)
        several = value if isinstance(value, list) else [value]
        for index, name in enumerate(several):
            at = (*path, index) if isinstance(value, list) else path
            if not isinstance(name, str) or (conformed.mistakes and _has_another_form(described, name)):
                names.muddled.add(described.names_item)  # of another shape or form, which is told already
            elif name in family:
                names.muddled.add(described.names_item)
                yield _second(conformed, at, family[name], f"{described.names_item.replace('-', ' ')} of a file")
            else:
                family[name] = at
        return
    if isinstance(value, dict) and described.shape == "record":
        strange = conformed.lacks_a_line or any(name not in described.fields for name in value)
        for name, absent in described.fields.items():
            if absent.gives_names and name not in value and (strange or absent.required):
                names.muddled |= _families(absent)
        for name, inner in value.items():
            known = described.fields.get(name)
            if known and known.gives_names:
                yield from collect_names(conformed, known, inner, (*path, name), names)
    elif isinstance(value, list) and described.shape == "list" and described.item:
        yield from _own_list(conformed, described.item, value, path)
        for index, inner in enumerate(value):
            yield from collect_names(conformed, described.item, inner, (*path, index), names)
    elif described.shape in ("record", "list"):
        names.muddled |= _families(described)


def _has_another_form(described: Field, name: str) -> bool:
    """Whether a name is not written as its field asks."""
    return isinstance(converted(described.item or described, name), Misfit)


def _families(described: Field) -> set[str]:
    """All families that a field and those below it name."""
    inner = [described, *(each for _, each in all_fields(described))]
    return {each.names_item for each in inner if each.names_item}


def _own_list(conformed: Conformed, item: Field, items: list[Any], path: Path) -> Iterator[Mistake]:
    """Names that must be single in their own list only."""
    for name, inner in item.fields.items():
        if inner.names_item != "here":
            continue
        seen: dict[object, Path] = {}
        for index, each in enumerate(items):
            written = each.get(name) if isinstance(each, dict) else None
            if isinstance(written, str) and written in seen:
                yield _second(conformed, (*path, index, name), seen[written], f"{OWN_LIST.get(name, name)} of one list")
            elif isinstance(written, str):
                seen[written] = (*path, index, name)


def _second(conformed: Conformed, path: Path, first: Path, family: str) -> Mistake:
    entry = conformed.entry
    at = entry.place(first)
    found = text_at(conformed.entry.values, path)
    told = ID_01.at(entry.place(path), conformed.spoken(path), found, first=f"{at.file}:{at.line}", family=family)
    # A list of names that stands twice is one slip, not as many as it has names.
    listed = isinstance(path[-1], int)
    return replace(told, about=("again", entry.kind, entry.slug, *map(str, path[:-1]))) if listed else told


def pointers_of(thing: Thing, described: Field, value: Any, path: Path, beside: Any = None) -> Iterator[Pointer]:
    """Every pointer of a value and all below it; `beside` is the mapping that a pointer stands in."""
    if described.points_at and isinstance(value, str):
        within = beside if "[" in described.points_at else None
        yield Pointer(thing=thing, path=path, family=described.points_at, name=value, beside=within)
    elif isinstance(value, dict):
        for name, inner in value.items():
            known = described.fields.get(name)
            if known and known.has_pointers:
                yield from pointers_of(thing, known, inner, (*path, name), value)
    elif isinstance(value, list) and described.item:
        for index, inner in enumerate(value):
            yield from pointers_of(thing, described.item, inner, (*path, index), beside)
