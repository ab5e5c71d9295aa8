"""The manual's pages about fields: one a kind, and one for each section that is long."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from benchsheaf import urls
from benchsheaf.fields import (
    Field,
    built_in_schemas,
    data_lines,
    example_text,
    family_in_words,
    kind_in_words,
    least_example,
    pointer_in_words,
    rules_in_words,
    whole_example,
    written,
)
from benchsheaf.pages.manual_map import LongSection, Path, field_place, file_of, long_section, pointer_place
from benchsheaf.pages.shelf import Desk
from benchsheaf.pages.views import Named


@dataclass(frozen=True, kw_only=True, slots=True)
class FieldEntry:
    """One field: its name as written, what people call it, what it says; `says` are sentences about how it is written.

    `target` is what it points at, in words after a `lead`, with `way` to where such names are given; `below` leads to
    its own fields.
    """

    anchor: str
    name: str
    label: str
    help: str
    required: bool
    wanted: str
    says: Sequence[str] = ()
    example: str | None = None
    lead: str = ""
    target: str = ""
    way: str | None = None
    below: str = ""


@dataclass(frozen=True, kw_only=True, slots=True)
class FieldGroup:
    """Fields that stand together in the file, under the name that holds them."""

    anchor: str
    title: str
    name: str
    entries: Sequence[FieldEntry]


@dataclass(frozen=True, kw_only=True, slots=True)
class SectionView:
    """A section of a description: its fields, and how it looks in a file, in short and with all that can be said."""

    anchor: str
    label: str
    name: str
    help: str
    required: bool
    says: str
    groups: Sequence[FieldGroup]
    least: str
    whole: str


@dataclass(frozen=True, kw_only=True, slots=True)
class KindPage:
    """One kind of description: where it stands, its single fields, its sections; long ones have a page of their own."""

    kind: str
    file: str
    spread: bool
    least: str
    singles: FieldGroup
    sections: Sequence[SectionView]
    long: Sequence[FieldEntry]


@dataclass(frozen=True, kw_only=True, slots=True)
class SectionPage:
    """A long section, and the kinds of description that have it."""

    section: SectionView
    kinds: Sequence[Named]


def kind_page(desk: Desk, kind: str) -> KindPage:
    """What the page of a kind says."""
    whole = built_in_schemas().kinds[kind]
    own = [each for each in whole.fields.values() if each.points_at != "source"]
    singles = [_entry(desk, kind, each, (each.name,)) for each in own if not _is_section(each)]
    sections = [each for each in own if _is_section(each)]
    long = [each for each in sections if long_section(kind, each.name)]
    return KindPage(
        kind=kind,
        file=file_of(kind),
        spread=kind == "machine",
        least=_text(least_example(whole)),
        singles=FieldGroup(anchor="", title="Single fields", name="", entries=singles),
        sections=[section_view(desk, kind, each) for each in sections if each not in long],
        long=[_long_entry(desk, kind, each) for each in long],
    )


def section_page(desk: Desk, section: LongSection) -> SectionPage:
    """What the page of a long section says."""
    kinds = [Named(name=kind, way=desk.href(urls.manual_kind(kind), section.described.name)) for kind in section.kinds]
    return SectionPage(section=section_view(desk, section.kinds[0], section.described), kinds=kinds)


def section_view(desk: Desk, kind: str, described: Field) -> SectionView:
    """A section with all its fields, those of lists inside it under headings of their own."""
    return SectionView(
        anchor=described.name,
        label=described.label,
        name=described.name,
        help=described.help,
        required=described.required,
        says=" ".join([f"{kind_in_words(described)}.", *rules_in_words(described)]),
        groups=list(_groups(desk, kind, described, (described.name,))),
        least=_text({described.name: least_example(described)}),
        whole=_text({described.name: whole_example(described)}),
    )


def _is_section(described: Field) -> bool:
    return described.shape == "record" or _is_list_of_groups(described)


def _is_list_of_groups(described: Field) -> bool:
    return described.item is not None and described.item.shape == "record"


def _groups(desk: Desk, kind: str, described: Field, path: Path) -> Iterator[FieldGroup]:
    """The fields of a section, then those of each list inside it; small groups stand among the fields around them."""
    entries, inward = [], []
    for inner, here in _fields_of(described, path):
        below = _is_list_of_groups(inner)
        entries.append(_entry(desk, kind, inner, here, len(path), f"#in-{'.'.join(here)}" if below else ""))
        if below:
            inward.append((inner, here))
    name = ".".join(path)
    yield FieldGroup(anchor=f"in-{name}", title=described.label, name=name, entries=entries)
    for inner, here in inward:
        yield from _groups(desk, kind, inner, here)


def _fields_of(described: Field, path: Path) -> Iterator[tuple[Field, Path]]:
    """The fields of a group and of the small groups in it; not `source`, which any group may carry."""
    for inner in (described.item or described).fields.values():
        if inner.points_at != "source":
            yield inner, (*path, inner.name)
            if inner.shape == "record":
                yield from _fields_of(inner, (*path, inner.name))


def _entry(desk: Desk, kind: str, described: Field, path: Path, depth: int = 0, below: str = "") -> FieldEntry:
    item = described.item or described
    place = pointer_place(kind, item.points_at) if item.points_at else None
    return FieldEntry(
        anchor=".".join(path),
        name=".".join(path[depth:]),
        label=described.label,
        help=described.help,
        required=described.required,
        wanted=described.wanted,
        says=list(_says(described)),
        example=_example(described),
        lead="A list; each item is the name of" if described.item else "The name of",
        target=pointer_in_words(described),
        way=desk.href(*place) if place else None,
        below=below,
    )


def _long_entry(desk: Desk, kind: str, described: Field) -> FieldEntry:
    """A section that has its own page, as it stands on the page of its kind."""
    return FieldEntry(
        anchor=described.name,
        name=described.name,
        label=described.label,
        help=described.help,
        required=described.required,
        wanted=described.wanted,
        below=desk.href(*field_place(kind, (described.name,))),
    )


def _says(described: Field) -> Iterator[str]:
    if not pointer_in_words(described):
        yield f"{kind_in_words(described)}."
    yield from rules_in_words(described)
    families = {each.names_item for each in (described, described.item) if each and each.names_item}
    for family in sorted(families):
        if family == "here":
            yield "Each in this list has one of its own."
        else:
            yield f"Others may point at it, as the name of {family_in_words(family)}."


def _example(described: Field) -> str | None:
    """What may stand after the name, on one line; nothing for a group or a list that needs lines of its own."""
    if described.shape not in ("record", "list"):
        return written(example_text(described))
    lines = data_lines({described.name: whole_example(described)})
    return lines[0].partition(": ")[2] if len(lines) == 1 else None


def _text(values: Mapping[str, Any]) -> str:
    return "\n".join(data_lines(values))
