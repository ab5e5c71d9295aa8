"""What is found in things as they are read; of those whose pointers all land only what is asked for later is kept."""

from collections.abc import Iterator, Mapping
from dataclasses import replace

from benchsheaf.conformity import Conformed
from benchsheaf.links.finding import found_in
from benchsheaf.links.holders import missing_at_holders
from benchsheaf.links.house import House, owner_of
from benchsheaf.links.names import FOLDERS, Found, Names, Pointer, Thing

SETTLED = ("machine", "repair")
"""Kinds whose names nobody asks for but a machine and its own repair records."""


class Finds(Mapping[Thing, Found]):
    """What was found in each thing, in the order in which things were noted.

    Machines come one after the other, each with its repair records. When the next comes, the one before is followed:
    what lands now lands later too, as things are only added. So its names and most of its pointers can be forgotten.
    """

    def __init__(self, things: Mapping[Thing, Conformed]) -> None:
        """Begin with nothing; `things` are those that have been read, and grow meanwhile."""
        self._things = things
        self._found: dict[Thing, Found] = {}
        self._names: dict[Thing, Names] = {}
        self._open: list[Thing] = []

    def note(self, thing: Thing) -> None:
        """Find what one thing names and points at."""
        if thing[0] == "machine":
            self.settle()
        owner = owner_of(thing)
        if owner in self._found and self._found[owner].is_settled:
            self._keep(owner, found_in(owner, self._things[owner]))  # a repair record that comes late
        self._keep(thing, found_in(thing, self._things[thing]))
        if thing[0] in SETTLED:
            self._open.append(thing)

    def settle(self) -> None:
        """Forget what is no longer needed of the things noted last, if nothing is wrong with any of them."""
        pointers = {thing: each.pointers for thing, each in self._found.items() if thing[0] not in SETTLED}
        pointers |= {thing: self._found[thing].pointers for thing in self._open}
        if all(self._lands(thing, pointers) for thing in self._open):
            for thing in self._open:
                found = self._found[thing]
                self._keep(thing, replace(found, names=Names(), pointers=_holding(found), is_settled=True))
        self._open.clear()

    def _keep(self, thing: Thing, found: Found) -> None:
        self._found[thing] = found
        self._names[thing] = found.names

    def _lands(self, thing: Thing, pointers: Mapping[Thing, tuple[Pointer, ...]]) -> bool:
        """Whether nothing is wrong with a thing and all that it points at is there already."""
        owner = owner_of(thing)
        if self._things[thing].mistakes or self._found[thing].mistakes or owner not in pointers:
            return False
        house = House(things=self._things, names=self._names, broken=frozenset(), thing=thing, own=pointers[owner])
        astray = any(True for pointer in pointers[thing] for _ in house.astray(pointer))
        return not astray and not (thing[0] == "machine" and any(True for _ in missing_at_holders(house, pointers)))

    def __getitem__(self, thing: Thing) -> Found:
        """What was found in one."""
        return self._found[thing]

    def __iter__(self) -> Iterator[Thing]:
        """All that were noted."""
        return iter(self._found)

    def __len__(self) -> int:
        """How many there are."""
        return len(self._found)


def _holding(found: Found) -> tuple[Pointer, ...]:
    """The first pointer to each thing that is held."""
    first: dict[Thing, Pointer] = {}
    for pointer in found.pointers:
        if pointer.family in FOLDERS:
            first.setdefault((pointer.family, pointer.name), pointer)
    return tuple(first.values())
