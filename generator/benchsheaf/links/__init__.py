"""Whether every pointer leads somewhere, every name is single, nothing goes in a circle; who points at what."""

from collections.abc import Mapping, Sequence

from benchsheaf.conformity import Conformed
from benchsheaf.links.codes import LINK_01, LINK_05
from benchsheaf.links.finding import found_in
from benchsheaf.links.holders import missing_at_holders
from benchsheaf.links.house import House, owner_of
from benchsheaf.links.mentions import whose
from benchsheaf.links.names import FOLDERS, Found, Links, Mention, Pointer, Thing
from benchsheaf.links.settling import Finds
from benchsheaf.links.twins import same_plates, same_slugs
from benchsheaf.mistakes import Mistake

__all__ = [
    "FOLDERS",
    "Finds",
    "Found",
    "Links",
    "Mention",
    "Mistake",
    "Pointer",
    "Thing",
    "found_in",
    "held_kinds",
    "links",
    "owner_of",
    "whose",
]


def links(things: Mapping[Thing, Conformed], found: Mapping[Thing, Found], broken: frozenset[Thing]) -> Links:
    """Every pointer of the collection followed; `found` is what was found in each thing.

    `broken` are things with a file that could not be read: nothing is said of names that may stand in it.
    """
    mistakes = [
        mistake
        for thing, each in found.items()
        for mistake in each.mistakes
        if thing not in broken or mistake.code not in (LINK_01, LINK_05)
    ]
    mistakes.extend(same_plates(things))
    mistakes.extend(same_slugs(things))
    names = {thing: each.names for thing, each in found.items()}
    pointers = {thing: each.pointers for thing, each in found.items()}
    held_by: dict[Thing, list[Pointer]] = {}
    for thing, own in pointers.items():
        owner = owner_of(thing)
        for pointer in own:
            if pointer.family in FOLDERS and owner in names:
                held_by.setdefault((pointer.family, pointer.name), []).append(pointer)
        if found[thing].is_settled:
            continue
        house = House(things=things, names=names, broken=broken, thing=thing, own=pointers.get(owner, ()))
        house.muddle()
        for pointer in own if owner in names else ():
            mistakes.extend(house.astray(pointer))
        if thing[0] == "machine":
            mistakes.extend(missing_at_holders(house, pointers))
    return Links(mistakes=mistakes, held_by={thing: tuple(found) for thing, found in held_by.items()})


def held_kinds(holder: Thing, pointers: Sequence[Pointer]) -> dict[str, str]:
    """The kinds of what a thing holds, by slug, from its pointers; something shared may speak of itself too."""
    kind, slug = holder
    held = {pointer.name: pointer.family for pointer in pointers if pointer.family in FOLDERS}
    return held | ({slug: kind} if kind in FOLDERS else {})
