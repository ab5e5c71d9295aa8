"""What one description names and points at, as far as others have to know of it."""

from benchsheaf.conformity import Conformed
from benchsheaf.links.circles import circles
from benchsheaf.links.codes import LINK_05
from benchsheaf.links.house import House
from benchsheaf.links.mentions import mentions_of
from benchsheaf.links.names import (
    LEFT_TO_HOLDERS,
    Found,
    Names,
    Pointer,
    Thing,
    collect_names,
    inner_names,
    pointers_of,
)
from benchsheaf.links.twins import same_targets


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
