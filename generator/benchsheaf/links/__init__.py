"""Whether every pointer leads somewhere, every name is single, nothing goes in a circle; who points at what."""

from collections.abc import Mapping

from benchsheaf.conformity import Conformed
from benchsheaf.links.house import House, circles, missing_rails
from benchsheaf.links.names import FOLDERS, Found, Links, Names, Pointer, Thing, collect_names, pointers_of
from benchsheaf.links.twins import same_plates, same_slugs, same_targets
from benchsheaf.mistakes import Mistake

__all__ = ["FOLDERS", "Found", "Links", "Mistake", "Pointer", "Thing", "found_in", "links"]


def found_in(thing: Thing, conformed: Conformed) -> Found:
    """What one description names and points at. Pointers that stay inside it are followed here and forgotten."""
    names = Names()
    mistakes = list(collect_names(conformed, conformed.kind, conformed.values, (), names))
    own = tuple(pointers_of(thing, conformed.kind, conformed.values, ()))
    house = House(things={thing: conformed}, names={thing: names}, broken=frozenset(), thing=thing, own=own)
    mistakes.extend(circles(house))
    mistakes.extend(same_targets(house))
    for pointer in own:
        if "[" in pointer.family:
            mistakes.extend(house.astray(pointer))
    out = tuple(pointer for pointer in own if "[" not in pointer.family and not _stays(pointer, names))
    return Found(names=names, pointers=out, mistakes=tuple(mistakes))


def _stays(pointer: Pointer, names: Names) -> bool:
    """Whether a pointer leads to a name of its own description, and nobody else has to know of it."""
    return pointer.family != "rail" and pointer.name in names.by_family.get(pointer.family, ())


def links(things: Mapping[Thing, Conformed], found: Mapping[Thing, Found], broken: frozenset[Thing]) -> Links:
    """Every pointer of the collection followed; `found` is what was found in each thing.

    `broken` are things with a file that could not be read: nothing is said of names that may stand in it.
    """
    mistakes = [mistake for each in found.values() for mistake in each.mistakes]
    mistakes.extend(same_plates(things))
    mistakes.extend(same_slugs(things))
    names = {thing: each.names for thing, each in found.items()}
    pointers = {thing: each.pointers for thing, each in found.items()}
    held_by: dict[Thing, list[Pointer]] = {}
    for thing, own in pointers.items():
        house = House(things=things, names=names, broken=broken, thing=thing, own=own)
        house.muddle()
        for pointer in own:
            mistakes.extend(house.astray(pointer))
            if pointer.family in FOLDERS:
                held_by.setdefault((pointer.family, pointer.name), []).append(pointer)
        if thing[0] == "machine":
            mistakes.extend(missing_rails(house, pointers))
    return Links(mistakes=mistakes, held_by={thing: tuple(found) for thing, found in held_by.items()})
