"""One thing with all that its pointers may lead to."""

import re
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from benchsheaf.conformity import Conformed
from benchsheaf.fields import all_fields
from benchsheaf.links.codes import LINK_01, LINK_02, LINK_04
from benchsheaf.links.names import FOLDERS, LEFT_TO_HOLDERS, Names, Pointer, Thing
from benchsheaf.links.offers import nearest_known, offered
from benchsheaf.mistakes import VERY_ALIKE, Code, Mistake, nearest_name


@dataclass(frozen=True, kw_only=True, slots=True)
class House:
    """One thing with all that its pointers may lead to; `own` are the pointers of the machine that it belongs to.

    A repair belongs to its machine and speaks of what that names and holds; all else belongs to itself.
    """

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
    def owner(self) -> Thing:
        """Whose names its pointers mean."""
        return owner_of(self.thing)

    @property
    def where(self) -> str:
        """What a contributor calls it."""
        return "this machine" if self.owner[0] == "machine" else "this file"

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
            yield from self._no_inner_name(pointer)
        elif family == "thing":
            yield from self._not_held(pointer, pointer.name, "")
        elif family == "bus-line":
            yield from self._no_bus_line(pointer)
        elif "/" in pointer.name:
            yield from self._no_held_name(pointer)
        elif family not in LEFT_TO_HOLDERS or self.owner[0] == "machine":
            yield from self._no_name(pointer, family, self.owner, self.where)

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
        close = nearest_known(meant, known)
        if owner in self.names and self._follows(self.names[owner], family, meant):
            return
        if close != meant:
            elsewhere = list(self._held_elsewhere(family, meant))
            close = elsewhere[0] if len(elsewhere) == 1 or (elsewhere and not close) else close
        about = gone(owner, family, pointer.name)
        yield self._unknown(pointer, close, about, known, family=spoken_family(family), where=where)

    @staticmethod
    def _follows(names: Names, family: str, name: str) -> bool:
        """Whether a name is missing for a reason that is told already: another one is muddled, and this may mean it.

        Names of other numbers are others, however alike they look.
        """
        same = [each for each in names.of(family) if re.findall("[0-9]+", each) == re.findall("[0-9]+", name)]
        return family in names.muddled and nearest_name(name, same, VERY_ALIKE) is None

    def _held_elsewhere(self, family: str, name: str) -> Iterator[str]:
        """Items of that very name on things that are held, as they should have been written."""
        for slug, holder in sorted(self.held().items()):
            owner = (holder.family, slug)
            if owner in self.names and name in self.names[owner].of(family):
                yield f"{slug}/{name}"

    def _no_bus_line(self, pointer: Pointer) -> Iterator[Mistake]:
        """A request line or channel: its names are those of the bus that a card or a machine speaks."""
        bus = next((each for each in self.held().values() if each.family == "bus"), None)
        if bus and self.knows(bus):  # without a bus the whole section is told of
            owner = (bus.family, bus.name)
            yield from self._no_name(pointer, "bus-line", owner, self.things[owner].entry.place(()).file)

    def _no_inner_name(self, pointer: Pointer) -> Iterator[Mistake]:
        """A name inside an item that is named beside the pointer: `switches[switch].positions`."""
        section, _, inner = pointer.family.partition("[")
        inner = inner.partition("].")[2]
        if pointer.inside is None:
            return
        owner, item = self._meant(pointer.inside)
        known = self.names[owner].inner.get((section, item, inner)) if owner in self.names else None
        # What is not known here is an item that is astray, or one with a mistake of its own: both are told already.
        if known is not None and pointer.name not in known and owner not in self.broken:
            close = nearest_known(pointer.name, known)
            about = gone(owner, f"{inner} of {item}", pointer.name)
            family = inner.removesuffix("s")
            yield self._unknown(pointer, close, about, known, family=family, where=f"`{pointer.inside}`")

    def _meant(self, name: str) -> tuple[Thing, str]:
        """Whose item a name means: `to-ground` is its own, `ov-hd14/current` belongs to something it holds."""
        slug, _, item = name.rpartition("/")
        held = self.held().get(slug) if slug else None
        return ((held.family, slug), item) if held else (self.owner, name)

    def _no_held_name(self, pointer: Pointer) -> Iterator[Mistake]:
        slug, _, name = pointer.name.partition("/")
        held = self.held()
        family = pointer.family
        if not slug or (slug not in held and self.owner[0] != "machine"):
            yield from self._no_name(pointer, family, self.owner, self.where, name)
            return
        if slug not in held:
            yield from self._not_held(pointer, slug, f"/{name}")
            return
        if sum((kind, slug) in self.things for kind in FOLDERS) > 1:
            return  # one short name for two things, which is told already
        owner = (held[slug].family, slug)
        if owner not in self.names or owner in self.broken:
            return
        known = self.names[owner].of(family)
        if name not in known and not self._follows(self.names[owner], family, name):
            close = nearest_known(name, known)
            where = self.things[owner].entry.place(()).file
            about = gone(owner, family, name)
            right = f"{slug}/{close}" if close else None
            yield self._unknown(pointer, right, about, known, family=spoken_family(family), where=where)

    def _not_held(self, pointer: Pointer, slug: str, rest: str) -> Iterator[Mistake]:
        """Something that a pointer names and the machine does not hold."""
        held = self.held()
        if slug in held or self.owner in self.broken:
            return  # what is held may stand in a file that cannot be read
        # Only now, as values that became a record long ago would be read again for it.
        is_unclear = self._holds_unknown() or any(
            each.code.id == "FIELD-01" for each in self.things[self.owner].mistakes
        )
        if is_unclear and self._is_a_thing(slug):
            return  # it may stand in a line that is told already
        slugs = [name for name, by in sorted(held.items()) if self.knows(by) and self._may_mean(pointer, by)]
        words = ", ".join(f"`{each}`" for each in slugs)
        close = nearest_name(slug, slugs)
        nearest = f"{close}{rest}" if close else None
        about: tuple[str, ...] = ("held", *self.owner, slug)
        yield self.mistake(LINK_04, pointer, nearest, about, slug=slug, held=words or "nothing yet")

    def _may_mean(self, pointer: Pointer, held: Pointer) -> bool:
        """Whether something held has names of the family that a pointer asks for."""
        return pointer.family == "thing" or bool(self.names[held.family, held.name].of(pointer.family))

    def _holds_unknown(self) -> bool:
        return any(not self.knows(holder) for holder in self.held().values()) or self._lacks_a_holder()

    def _lacks_a_holder(self) -> bool:
        """Whether a section that says what is held, and must be there, is missing; that is told already."""
        owner = self.things[self.owner]
        return any(
            each.required
            and name not in owner.values
            and any(inner.points_at in FOLDERS for inner in (each, *(inner for _, inner in all_fields(each))))
            for name, each in owner.kind.fields.items()
        )

    def _is_a_thing(self, slug: str) -> bool:
        return any((kind, slug) in self.things for kind in FOLDERS)

    def _unknown(
        self, pointer: Pointer, close: str | None, about: tuple[str, ...], known: Iterable[str], **fills: str
    ) -> Mistake:
        """A name that is not there; where none is near and there are few, it is said which there are."""
        right, there = offered(pointer.name, close, known)
        return self.mistake(LINK_01, pointer, right, about, known=there, **fills)

    def mistake(
        self, code: Code, pointer: Pointer, nearest: str | None, about: tuple[str, ...] = (), **fills: str
    ) -> Mistake:
        """A mistake at the line of a pointer, and what it is about."""
        place, spoken = self.conformed.entry.place(pointer.path), self.conformed.spoken(pointer.path)
        return replace(code.at(place, spoken, pointer.name, nearest, **fills), about=about)


def gone(owner: Thing, family: str, name: str) -> tuple[str, ...]:
    """A name that a thing does not have, as what mistakes are about: it is one, from wherever it is pointed at."""
    return ("name", *owner, family, name)


def owner_of(thing: Thing) -> Thing:
    """Whose names the pointers of a thing mean: a repair's are those of its machine."""
    kind, slug = thing
    return ("machine", slug.partition("/")[0]) if kind == "repair" else thing


def spoken_family(family: str) -> str:
    """A family of names as people call it."""
    return {"weak": "weak part"}.get(family, family.replace("-", " "))
