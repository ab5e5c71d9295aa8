"""Whether every pointer leads somewhere, every name is single, nothing goes in a circle; who points at what."""

from collections.abc import Mapping, Sequence

from benchsheaf.conformity import Conformed
from benchsheaf.links.circles import circles
from benchsheaf.links.codes import LINK_01, LINK_05
from benchsheaf.links.holders import missing_at_holders
from benchsheaf.links.house import House, owner_of
from benchsheaf.links.mentions import mentions_of, whose
from benchsheaf.links.names import (
    FOLDERS,
    LEFT_TO_HOLDERS,
    Found,
    Links,
    Mention,
    Names,
    Pointer,
    Thing,
    collect_names,
    inner_names,
    pointers_of,
)
from benchsheaf.links.twins import same_plates, same_slugs, same_targets
from benchsheaf.mistakes import Mistake

__all__ = [
    "FOLDERS",
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


def found_in(thing: Thing, conformed: Conformed) -> Found:
    """What one description names and points at. Pointers that stay inside it are followed here and forgotten."""
    names = Names()
    mistakes = list(collect_names(conformed, conformed.kind, conformed.values, (), names))
    inner_names(conformed.kind, conformed.values, names)
    own = tuple(pointers_of(thing, conformed.kind, conformed.values, ()))
    house = House(things={thing: conformed}, names={thing: names}, broken=frozenset(), thing=thing, own=own)
    for pointer, circle in circles(names, own):
        mistakes.append(house.mistake(LINK_05, pointer, None, circle=circle))
    mistakes.extend(same_targets(house))
    for pointer in own:
        if _is_within(pointer):
            mistakes.extend(house.astray(pointer))
    out = tuple(pointer for pointer in own if not _is_within(pointer) and not _stays(pointer, names))
    return Found(names=names, pointers=out, mistakes=tuple(mistakes), mentions=mentions_of(conformed))


def _is_within(pointer: Pointer) -> bool:
    """Whether a pointer means a name inside an item of its own description."""
    return "[" in pointer.family and pointer.thing[0] != "repair" and "/" not in (pointer.inside or "")


def _stays(pointer: Pointer, names: Names) -> bool:
    """Whether a pointer leads to a name of its own description, and nobody else has to know of it."""
    return pointer.family not in LEFT_TO_HOLDERS and pointer.name in names.by_family.get(pointer.family, ())


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
        house = House(things=things, names=names, broken=broken, thing=thing, own=pointers.get(owner, ()))
        house.muddle()
        for pointer in own if owner in names else ():
            mistakes.extend(house.astray(pointer))
            if pointer.family in FOLDERS:
                held_by.setdefault((pointer.family, pointer.name), []).append(pointer)
        if thing[0] == "machine":
            mistakes.extend(missing_at_holders(house, pointers))
    return Links(mistakes=mistakes, held_by={thing: tuple(found) for thing, found in held_by.items()})


def held_kinds(holder: Thing, pointers: Sequence[Pointer]) -> dict[str, str]:
    """The kinds of what a thing holds, by slug, from its pointers; something shared may speak of itself too."""
    kind, slug = holder
    held = {pointer.name: pointer.family for pointer in pointers if pointer.family in FOLDERS}
    return held | ({slug: kind} if kind in FOLDERS else {})
