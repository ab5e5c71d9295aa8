"""What something shared asks of whoever holds it: judged for each machine, and told at the machine's line."""

from collections.abc import Iterator, Mapping, Sequence

from benchsheaf.links.codes import LINK_03
from benchsheaf.links.house import House, gone
from benchsheaf.links.names import Pointer, Thing
from benchsheaf.mistakes import Mistake, nearest_name

ASKED_OF_HOLDERS: Mapping[str, tuple[str, str]] = {
    "rail": ("uses the rail", "this machine has no such rail"),
    "removal": ("needs the removal", "this machine has no such removal"),
    "stage": ("waits for the stage", "no check of this machine `proves` it"),
}
"""Families that a shared part leaves to its holder: what it does with a name of them, and what the holder lacks."""


def missing_at_holders(house: House, pointers: Mapping[Thing, Sequence[Pointer]]) -> Iterator[Mistake]:
    """Rails, removals and stages that held things ask for and this machine does not have, each once."""
    names = house.names[house.thing]
    if house.thing in house.broken:
        return
    told = set()
    for slug, holder in house.held().items():
        for pointer in pointers.get((holder.family, slug), []):
            asked = slug, pointer.family, pointer.name
            if pointer.family not in ASKED_OF_HOLDERS or asked in told:
                continue
            known = names.of(pointer.family)
            if pointer.name in known or pointer.family in names.muddled:
                continue
            told.add(asked)
            at = house.things[pointer.thing].entry.place(pointer.path)
            words = {
                "slug": slug,
                "asks": ASKED_OF_HOLDERS[pointer.family][0],
                "name": pointer.name,
                "lack": ASKED_OF_HOLDERS[pointer.family][1],
                "at": f"{at.file}:{at.line}",
            }
            about = gone(house.thing, pointer.family, pointer.name)
            yield house.mistake(LINK_03, holder, nearest_name(pointer.name, list(known)), about, **words)
