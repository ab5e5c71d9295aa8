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
    "display": "displays",
    "drive": "drives",
    "keyboard": "keyboards",
    "medium": "media",
    "supply": "supplies",
}
LEFT_TO_HOLDERS = ("rail", "removal", "stage")
"""Families that something shared has no names of: its holder has."""
OWN_LIST: Mapping[str, str] = {"pin": "contact", "to": "position", "id": "row"}
"""What a name that only its own list knows is a name of."""

Thing = tuple[str, str]
Path = tuple[str | int, ...]


@dataclass(frozen=True, kw_only=True, slots=True)
class Pointer:
    """A field that points at something: its own thing, where it stands, what it says.

    `inside` names the item whose inner name is meant, where the family asks for one: of `switches[switch].positions`
    it is what stands in `switch` beside the pointer, of `checks[^check].readings` in `check` one mapping further out.
    """

    thing: Thing
    path: Path
    family: str
    name: str
    inside: str | None = None


@dataclass(frozen=True, kw_only=True, slots=True)
class Mention:
    """A figure that a text asks for: the field of the text, and the path as it is written."""

    at: Path
    path: str


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
    `inner` has names that only their own list knows, under the section, the item and the list: the positions of one
    switch, the outcomes of one check; lists with an item whose name is wrong are left out.
    """

    by_family: dict[str, dict[str, Path]] = field(default_factory=dict)
    muddled: set[str] = field(default_factory=set)
    inner: dict[tuple[str, str, str], tuple[str, ...]] = field(default_factory=dict)

    def of(self, family: str) -> dict[str, Path]:
        """The names of one family."""
        return self.by_family.setdefault(family, {})


@dataclass(frozen=True, kw_only=True, slots=True)
class Found:
    """What one description names, its pointers that lead out of it or nowhere, and what is wrong within it.

    `mentions` are the figures that its texts ask for. Where all `is_settled`, every pointer has been followed and none
    was astray: then names are forgotten, and of the pointers all but the first to each thing that is held.
    """

    names: Names
    pointers: tuple[Pointer, ...]
    mistakes: tuple[Mistake, ...]
    mentions: tuple[Mention, ...] = ()
    is_settled: bool = False


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
        yield from _record_names(conformed, described, value, path, names)
    elif isinstance(value, list) and described.shape == "list" and described.item:
        yield from _own_list(conformed, described.item, value, path)
        for index, inner in enumerate(value):
            yield from collect_names(conformed, described.item, inner, (*path, index), names)
    elif described.shape in ("record", "list"):
        names.muddled |= _families(described)


def _record_names(
    conformed: Conformed, described: Field, value: dict[str, Any], path: Path, names: Names
) -> Iterator[Mistake]:
    """The names of a group, its own first: one that was copied with its name is one slip, whatever stands in it."""
    giving = [known for name in value if (known := described.fields.get(name)) and known.gives_names]
    is_copy = False
    for known in sorted(giving, key=lambda each: not each.names_item):
        again = list(collect_names(conformed, known, value[known.name], (*path, known.name), names))
        yield from () if is_copy else again
        is_copy = is_copy or bool(again and known.names_item and known.shape == "text")


def _has_another_form(described: Field, name: str) -> bool:
    """Whether a name is not written as its field asks, or none of the words that the field knows."""
    named = described.item or described
    return isinstance(converted(named, name), Misfit) or bool(named.allowed and name not in named.allowed)


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


def inner_names(described: Field, values: Mapping[str, Any], names: Names) -> None:
    """The names inside the items of each section, as far as all of a list are right and the item stands once."""
    unclear: set[tuple[str, str, str]] = set()
    for section, known in described.fields.items():
        item = known.item
        if item is None or item.shape != "record" or not isinstance(values.get(section), list):
            continue
        naming = next((name for name, each in item.fields.items() if each.names_item and each.shape == "text"), None)
        for name, key in _own_names(item) if naming else ():
            for each in values[section]:
                if isinstance(each, dict) and isinstance(each.get(naming), str) and isinstance(each.get(name), list):
                    place = section, each[naming], name
                    told = _right_names(item.fields[name], key, each[name])
                    if told is None or place in names.inner or place in unclear:
                        unclear.add(place)
                        names.inner.pop(place, None)
                    else:
                        names.inner[place] = told


def _right_names(described: Field, key: str, items: list[Any]) -> tuple[str, ...] | None:
    """The names in a list that is long enough, if each item has one of the right form and no other has it."""
    told = [one[key] for one in items if isinstance(one, dict) and isinstance(one.get(key), str)]
    form = described.item.fields[key] if described.item else described
    is_right = len(set(told)) == len(items) >= described.shortest
    return tuple(told) if is_right and not any(_has_another_form(form, name) for name in told) else None


def _own_names(item: Field) -> Iterator[tuple[str, str]]:
    """Lists of an item whose own items have a name that nobody else knows, with the field that gives it."""
    for name, each in item.fields.items():
        if each.item is not None and each.item.shape == "record":
            for key, inner in each.item.fields.items():
                if inner.names_item == "here":
                    yield name, key


def pointers_of(
    thing: Thing, described: Field, value: Any, path: Path, around: tuple[Mapping[str, Any], ...] = ()
) -> Iterator[Pointer]:
    """Every pointer of a value and all below it; `around` are the mappings that it stands in, the nearest first."""
    if described.points_at and isinstance(value, str):
        inside = _inside(described.points_at, around) if "[" in described.points_at else None
        yield Pointer(thing=thing, path=path, family=described.points_at, name=value, inside=inside)
    elif isinstance(value, dict):
        for name, inner in value.items():
            known = described.fields.get(name)
            if known and known.has_pointers:
                yield from pointers_of(thing, known, inner, (*path, known.name), (value, *around))
    elif isinstance(value, list) and described.item:
        for index, inner in enumerate(value):
            yield from pointers_of(thing, described.item, inner, (*path, index), around)


def _inside(family: str, around: tuple[Mapping[str, Any], ...]) -> str | None:
    """The item that a pointer such as `checks[^check].readings` means: each `^` is one mapping further out."""
    name = family.partition("[")[2].partition("]")[0]
    outward = name.count("^")
    chosen = around[outward].get(name.lstrip("^")) if outward < len(around) else None
    return chosen if isinstance(chosen, str) else None
