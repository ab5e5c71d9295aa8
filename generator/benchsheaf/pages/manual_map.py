"""Where the manual tells of each field: which page, and which place on it."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import cache

from benchsheaf import urls
from benchsheaf.documents import PART_FOLDERS
from benchsheaf.fields import Field, all_fields, built_in_schemas

LONG = 6
"""A section with more fields than this has a page of its own; kinds that have the very same section share it."""

Path = tuple[str, ...]


@dataclass(frozen=True, kw_only=True, slots=True)
class LongSection:
    """A section with a page of its own: its field as the first of its kinds has it."""

    name: str
    described: Field
    kinds: tuple[str, ...]


@cache
def long_sections() -> tuple[LongSection, ...]:
    """All sections that have a page of their own, in the order in which kinds and schemas have them."""
    found: list[tuple[Field, list[str]]] = []
    for kind, whole in built_in_schemas().kinds.items():
        for inner in whole.fields.values():
            if sum(1 for _ in all_fields(inner)) <= LONG:
                continue
            same = next((kinds for other, kinds in found if _alike(other, inner)), None)
            if same is None:
                found.append((inner, [kind]))
            else:
                same.append(kind)
    taken: set[str] = set()
    made = []
    for field, kinds in found:
        name = field.name if field.name not in taken else f"{kinds[0]}-{field.name}"
        taken.add(name)
        made.append(LongSection(name=name.replace("_", "-"), described=field, kinds=tuple(kinds)))
    return tuple(made)


def _alike(one: Field, other: Field) -> bool:
    return one.name == other.name and _group(one) == _group(other)


def _group(described: Field) -> object:
    return (described.item or described).fields


@cache
def long_section(kind: str, name: str) -> LongSection | None:
    """The page of a kind's section, if it has one of its own."""
    return next((each for each in long_sections() if each.described.name == name and kind in each.kinds), None)


def field_place(kind: str, path: Path) -> tuple[str, str]:
    """The address of the page that tells of a field, and the place on it."""
    section = long_section(kind, path[0])
    return (urls.manual_section(section.name) if section else urls.manual_kind(kind)), ".".join(path)


def givers(family: str) -> Iterator[tuple[str, Path]]:
    """Every field that gives names of a family: its kind and its path."""
    yield from _givers().get(family, ())


@cache
def _givers() -> Mapping[str, Sequence[tuple[str, Path]]]:
    """The same of all families: the manual asks at every pointer of every kind."""
    found: dict[str, list[tuple[str, Path]]] = {}
    for kind, whole in built_in_schemas().kinds.items():
        for path, inner in all_fields(whole):
            if inner.names_item:
                found.setdefault(inner.names_item, []).append((kind, path))
    return found


def pointer_place(kind: str, pointing: str) -> tuple[str, str] | None:
    """Where the manual tells of what a pointer of a kind leads to; None if nothing there gives such names."""
    kinds = built_in_schemas().kinds
    if pointing in kinds:
        return urls.manual_kind(pointing), ""
    if "[" in pointing:
        listed, _, rest = pointing.partition("[")
        owner = next((each for each in (kind, *kinds) if listed in kinds[each].fields), None)
        return field_place(owner, (listed, rest.partition("].")[2])) if owner else None
    found = list(givers(pointing))
    chosen = next((each for each in found if each[0] == kind), found[0] if found else None)
    return field_place(*chosen) if chosen else None


def file_of(kind: str) -> str:
    """The name that a file of a kind has below the folder of descriptions, its free parts in capitals."""
    folders = {each: folder for folder, each in PART_FOLDERS.items()}
    if kind in folders:
        return f"_parts/{folders[kind]}/SLUG.yml"
    return {"machine": "SLUG/NAME.yml", "repair": "SLUG/repairs/NAME.yml"}.get(kind, f"_shared/{kind}.yml")


def kinds_in_order() -> Sequence[str]:
    """All kinds of description, the machine first."""
    return tuple(built_in_schemas().kinds)
