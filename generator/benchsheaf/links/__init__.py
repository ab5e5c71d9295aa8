"""Whether every pointer leads somewhere, every name is single, nothing goes in a circle; who points at what."""

from collections.abc import Mapping

from benchsheaf.conformity import Conformed
from benchsheaf.links.house import House, circles, missing_rails
from benchsheaf.links.names import FOLDERS, Links, Names, Pointer, Thing, collect_names, pointers_of, same_plates
from benchsheaf.mistakes import Mistake

__all__ = ["FOLDERS", "Links", "Pointer", "Thing", "links"]


def links(things: Mapping[Thing, Conformed], broken: frozenset[Thing]) -> Links:
    """Every pointer of the collection followed.

    `broken` are things with a file that could not be read: nothing is said of names that may stand in it.
    """
    mistakes: list[Mistake] = []
    names: dict[Thing, Names] = {}
    pointers: dict[Thing, list[Pointer]] = {}
    for thing, conformed in things.items():
        names[thing] = Names()
        mistakes.extend(collect_names(conformed, conformed.kind, conformed.values, (), names[thing]))
        pointers[thing] = list(pointers_of(thing, conformed.kind, conformed.values, ()))
    mistakes.extend(same_plates(things))
    held_by: dict[Thing, list[Pointer]] = {}
    for thing, own in pointers.items():
        house = House(things=things, names=names, broken=broken, thing=thing, own=own)
        for pointer in own:
            mistakes.extend(house.astray(pointer))
            if pointer.family in FOLDERS:
                held_by.setdefault((pointer.family, pointer.name), []).append(pointer)
        if thing[0] == "machine":
            mistakes.extend(missing_rails(house, pointers))
        mistakes.extend(circles(house))
    return Links(mistakes=mistakes, held_by={thing: tuple(found) for thing, found in held_by.items()})
