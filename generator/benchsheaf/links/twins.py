"""Two things under one name, and lists that name one thing twice."""

from collections.abc import Iterator, Mapping

from benchsheaf.conformity import Conformed
from benchsheaf.links.codes import ID_02, ID_03, ID_04
from benchsheaf.links.house import House
from benchsheaf.links.names import FOLDERS, Path, Thing
from benchsheaf.mistakes import Mistake, Place

SEQUENCES = ("tone",)
"""Families whose lists are sequences, in which the same may come again: a beep of two short tones."""


def same_plates(things: Mapping[Thing, Conformed]) -> Iterator[Mistake]:
    """Two things of one kind that have the same name on their plates."""
    seen: dict[tuple[str, str], Conformed] = {}
    for (kind, _), conformed in things.items():
        name = conformed.name
        if not name:
            continue
        first = seen.setdefault((kind, name.casefold()), conformed)
        if first is not conformed:
            at = first.entry.place(("name",))
            yield ID_02.at(conformed.entry.place(("name",)), "name", name, first=f"{at.file}:{at.line}")


def same_slugs(things: Mapping[Thing, Conformed]) -> Iterator[Mistake]:
    """Shared things of two kinds under one short name, which pointers of the form SLUG/DESIGNATOR cannot tell apart."""
    seen: dict[str, Thing] = {}
    for kind, slug in things:
        first = seen.setdefault(slug, (kind, slug)) if kind in FOLDERS else (kind, slug)
        if first != (kind, slug):
            place = Place(file=things[kind, slug].entry.place(()).file)
            yield ID_04.at(place, first=things[first].entry.place(()).file, slug=slug)


def same_targets(house: House) -> Iterator[Mistake]:
    """Lists of pointers in which two lead to the same thing."""
    seen: dict[tuple[Path, str], Path] = {}
    for pointer in house.own:
        *above, last = pointer.path
        if not isinstance(last, int) or pointer.family in SEQUENCES:
            continue
        first = seen.setdefault((tuple(above), pointer.name), pointer.path)
        if first != pointer.path:
            at = house.conformed.entry.place(first)
            yield house.mistake(ID_03, pointer, None, name=pointer.name, first=f"{at.file}:{at.line}")
