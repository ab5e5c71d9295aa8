"""One thing with all that its pointers may lead to."""

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from benchsheaf.conformity import Conformed
from benchsheaf.links.codes import LINK_01, LINK_02, LINK_03, LINK_04, LINK_05
from benchsheaf.links.names import FOLDERS, Names, Path, Pointer, Thing
from benchsheaf.mistakes import VERY_ALIKE, Code, Mistake, nearest_name

WITH_PARTS = ("supply", "drive", "card")


@dataclass(frozen=True, kw_only=True, slots=True)
class House:
    """One thing with all that its pointers may lead to."""

    things: Mapping[Thing, Conformed]
    names: Mapping[Thing, Names]
    broken: frozenset[Thing]
    thing: Thing
    own: Sequence[Pointer]

    @property
    def conformed(self) -> Conformed:
        """Its description."""
        return self.things[self.thing]

    @property
    def where(self) -> str:
        """What a contributor calls it."""
        return "this machine" if self.thing[0] == "machine" else "this file"

    @property
    def root(self) -> str:
        """The name of the folder of all descriptions."""
        return self.conformed.entry.place(()).file.partition("/")[0]

    def held(self) -> dict[str, Pointer]:
        """What this thing holds, by slug, with the first pointer that says so."""
        found: dict[str, Pointer] = {}
        for pointer in self.own:
            if pointer.family in FOLDERS:
                found.setdefault(pointer.name, pointer)
        return found

    def knows(self, pointer: Pointer) -> bool:
        """Whether there is such a thing as a pointer to a file says."""
        return (pointer.family, pointer.name) in self.things

    def muddle(self) -> None:
        """Note families in which a name is itself a pointer that leads nowhere: others may have meant that name."""
        names = self.names[self.thing]
        given = {path: family for family, known in names.by_family.items() for path in known.values()}
        names.muddled |= {
            given[pointer.path] for pointer in self.own if pointer.path in given and next(self.astray(pointer), None)
        }

    def astray(self, pointer: Pointer) -> Iterator[Mistake]:
        """The mistake of a pointer that leads nowhere."""
        family = pointer.family
        if family in FOLDERS:
            yield from self._no_thing(pointer)
        elif family == "caution":
            yield from self._no_name(pointer, "caution", ("cautions", "cautions"), f"{self.root}/_shared/cautions.yml")
        elif "[" in family:
            yield from self._no_scoped_name(pointer)
        elif family == "part" and "/" in pointer.name:
            yield from self._no_held_part(pointer)
        elif family != "rail" or self.thing[0] == "machine":
            yield from self._no_name(pointer, family, self.thing, self.where)

    def _no_thing(self, pointer: Pointer) -> Iterator[Mistake]:
        kind = pointer.family
        if (kind, pointer.name) in self.things or (kind, pointer.name) in self.broken:
            return
        known = [slug for (other, slug) in self.things if other == kind]
        file = f"{self.root}/_parts/{FOLDERS[kind]}/{pointer.name}.yml"
        about = ("thing", kind, pointer.name)
        yield self.mistake(LINK_02, pointer, nearest_name(pointer.name, known), about, kind=kind, file=file)

    def _no_name(
        self, pointer: Pointer, family: str, owner: Thing, where: str, meant: str | None = None
    ) -> Iterator[Mistake]:
        """The mistake of a name that `owner` does not have; `meant` is the name itself in what was written."""
        meant = meant or pointer.name
        known = self.names[owner].of(family) if owner in self.names else {}
        if pointer.name in known or owner in self.broken:
            return
        close = nearest_name(meant, list(known))
        if owner in self.names and self._follows(self.names[owner], family, meant):
            return
        if family == "part" and close != meant:
            close = next(self._held_elsewhere(meant), close)
        about = gone(owner, family, pointer.name)
        yield self.mistake(LINK_01, pointer, close, about, family=family.replace("-", " "), where=where)

    @staticmethod
    def _follows(names: Names, family: str, name: str) -> bool:
        """Whether a name is missing for a reason that is told already: another one is muddled, and this may mean it.

        Names of other numbers are others, however alike they look.
        """
        same = [each for each in names.of(family) if re.findall("[0-9]+", each) == re.findall("[0-9]+", name)]
        return family in names.muddled and nearest_name(name, same, VERY_ALIKE) is None

    def _held_elsewhere(self, name: str) -> Iterator[str]:
        """Parts of that very name on things that are held, as they should have been written."""
        for slug, holder in sorted(self.held().items()):
            owner = (holder.family, slug)
            if owner in self.names and name in self.names[owner].of("part"):
                yield f"{slug}/{name}"

    def _no_scoped_name(self, pointer: Pointer) -> Iterator[Mistake]:
        """A name inside an item that is named beside the pointer: `switches[switch].positions`."""
        listed, rest = pointer.family.split("[")
        beside, inner = rest.split("].")
        chosen = (pointer.beside or {}).get(beside)
        items = [each for each in self.conformed.values.get(listed, []) if isinstance(each, dict)]
        item = next((each for each in items if each.get(beside) == chosen), None)
        if item is None or not isinstance(item.get(inner), list):
            return  # the item itself is astray, and that is told already
        outer = self.conformed.kind.fields[listed].item
        naming = outer.fields[inner].item if outer else None
        assert naming is not None
        key = next(name for name, each in naming.fields.items() if each.names_item == "here")
        known = [each[key] for each in item[inner] if isinstance(each, dict) and isinstance(each.get(key), str)]
        if len(known) < len(item[inner]):
            return  # an item of another shape, or without a name, is told already
        if pointer.name not in known:
            close = nearest_name(pointer.name, known)
            about = gone(self.thing, f"{inner} of {chosen}", pointer.name)
            yield self.mistake(LINK_01, pointer, close, about, family=inner.rstrip("s"), where=f"`{chosen}`")

    def _no_held_part(self, pointer: Pointer) -> Iterator[Mistake]:
        slug, _, name = pointer.name.partition("/")
        held = self.held()
        if not slug or (slug not in held and self.thing[0] != "machine"):
            yield from self._no_name(pointer, "part", self.thing, self.where, name)
            return
        if slug not in held:
            if self.thing in self.broken or (self._holds_unknown() and self._is_a_thing(slug)):
                return  # what is held may stand in a file that cannot be read, or in a line that is told already
            slugs = [name for name, by in sorted(held.items()) if by.family in WITH_PARTS and self.knows(by)]
            words = ", ".join(f"`{each}`" for each in slugs)
            close = nearest_name(slug, slugs)
            nearest = f"{close}/{name}" if close else None
            about: tuple[str, ...] = ("held", *self.thing, slug)
            yield self.mistake(LINK_04, pointer, nearest, about, slug=slug, held=words or "nothing yet")
            return
        if sum((kind, slug) in self.things for kind in FOLDERS) > 1:
            return  # one short name for two things, which is told already
        owner = (held[slug].family, slug)
        if owner not in self.names or owner in self.broken:
            return
        known = self.names[owner].of("part")
        if name not in known and not self._follows(self.names[owner], "part", name):
            close = nearest_name(name, list(known))
            where = self.things[owner].entry.place(()).file
            about = gone(owner, "part", name)
            right = f"{slug}/{close}" if close else None
            yield self.mistake(LINK_01, pointer, right, about, family="part", where=where)

    def _holds_unknown(self) -> bool:
        return any(not self.knows(holder) for holder in self.held().values())

    def _is_a_thing(self, slug: str) -> bool:
        return any((kind, slug) in self.things for kind in WITH_PARTS)

    def mistake(
        self, code: Code, pointer: Pointer, nearest: str | None, about: tuple[str, ...] = (), **fills: str
    ) -> Mistake:
        """A mistake at the line of a pointer, and what it is about."""
        place, spoken = self.conformed.entry.place(pointer.path), self.conformed.spoken(pointer.path)
        return replace(code.at(place, spoken, pointer.name, nearest, **fills), about=about)


def gone(owner: Thing, family: str, name: str) -> tuple[str, ...]:
    """A name that a thing does not have, as what mistakes are about: it is one, from wherever it is pointed at."""
    return ("name", *owner, family, name)


def missing_rails(house: House, pointers: Mapping[Thing, Sequence[Pointer]]) -> Iterator[Mistake]:
    """Rails that held things use and this machine does not have, each once, at the holder's line."""
    rails = house.names[house.thing].of("rail")
    if not rails or house.thing in house.broken:
        return
    told = set()
    for slug, holder in house.held().items():
        for pointer in pointers.get((holder.family, slug), []):
            if pointer.family != "rail" or pointer.name in rails or (slug, pointer.name) in told:
                continue
            told.add((slug, pointer.name))
            at = house.things[pointer.thing].entry.place(pointer.path)
            words = {"slug": slug, "rail": pointer.name, "at": f"{at.file}:{at.line}"}
            about = gone(house.thing, "rail", pointer.name)
            yield house.mistake(LINK_03, holder, nearest_name(pointer.name, list(rails)), about, **words)


def circles(house: House) -> Iterator[Mistake]:
    """Items that point, over other items of their own list, back at themselves; each circle once."""
    items: dict[tuple[str, Path], str] = {}
    for family, names in house.names[house.thing].by_family.items():
        items.update({(family, at[:-1]): name for name, at in names.items()})
    steps: dict[tuple[str, str], Pointer] = {}
    for pointer in house.own:
        for length in range(2, len(pointer.path)):
            name = items.get((pointer.family, pointer.path[:length]))
            if name is not None:
                steps[pointer.family, name] = pointer
    done: set[tuple[str, str]] = set()
    for start in steps:
        trail: list[tuple[str, str]] = []
        here = start
        while here in steps and here not in done:
            done.add(here)
            trail.append(here)
            here = (here[0], steps[here].name)
        if here in trail:
            ring = [name for _, name in trail[trail.index(here) :]]
            circle = " → ".join([*ring, ring[0]])
            yield house.mistake(LINK_05, steps[here], None, circle=circle)
