"""Whether every pointer leads somewhere, every name is single and nothing goes round in a circle; who points at what."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from typing import Any

from benchsheaf.conformity import Conformed
from benchsheaf.fields import Field
from benchsheaf.mistakes import Code, Mistake, nearest_name

ID_01 = Code(
    id="ID-01",
    meaning="A name that must be single stands twice.",
    words="This name stands already at {first}. Every {family} of a file needs a name of its own.",
    example={"first": "machines/sketch-1/boards.yml:12", "family": "part"},
)
ID_02 = Code(
    id="ID-02",
    meaning="Two things have the same name on their plates.",
    words="{first} has the same name. Two things with one name cannot be told apart on a page.",
    example={"first": "machines/sketch-1/identity.yml:3"},
)
LINK_01 = Code(
    id="LINK-01",
    meaning="A pointer leads to a name that is not there.",
    words="There is no {family} of that name in {where}.",
    example={"family": "part", "where": "this machine"},
)
LINK_02 = Code(
    id="LINK-02",
    meaning="A pointer leads to a file that is not there.",
    words="There is no {kind} of that name. It would stand in {file}.",
    example={"kind": "drive", "file": "machines/_parts/drives/ov-hd41.yml"},
)
LINK_03 = Code(
    id="LINK-03",
    meaning="Something shared uses a rail that the machine which holds it does not have.",
    words="`{slug}` uses the rail `{rail}` ({at}), and this machine has no such rail.",
    example={"slug": "ov-hd14", "rail": "+24 V", "at": "machines/_parts/drives/ov-hd14.yml:14"},
)
LINK_04 = Code(
    id="LINK-04",
    meaning="A pointer leads to a part of something that the machine does not hold.",
    words="This machine holds no `{slug}`. It holds {held}.",
    example={"slug": "sp-130", "held": "`ov-hd14` and `sp-96`"},
)
LINK_05 = Code(
    id="LINK-05",
    meaning="Pointers go round in a circle.",
    words="This goes round in a circle: {circle}. One of these lines has to go.",
    example={"circle": "board → supply-alone → board"},
)

FOLDERS: Mapping[str, str] = {
    "bus": "buses", "card": "cards", "drive": "drives", "keyboard": "keyboards", "supply": "supplies"
}
Thing = tuple[str, str]
Path = tuple[str | int, ...]


@dataclass(frozen=True, kw_only=True, slots=True)
class Pointer:
    """A field that points at something: its own thing, where it stands, what it says."""

    thing: Thing
    path: Path
    family: str
    name: str
    beside: Mapping[str, Any]


@dataclass(frozen=True, kw_only=True, slots=True)
class Links:
    """What was found of pointers: the mistakes, and for every thing the pointers that lead to it."""

    mistakes: list[Mistake]
    held_by: Mapping[Thing, tuple[Pointer, ...]]


@dataclass(slots=True)
class _Names:
    """The names that one description gives: family → name → where it stands."""

    by_family: dict[str, dict[str, Path]] = field(default_factory=dict)

    def of(self, family: str) -> dict[str, Path]:
        return self.by_family.setdefault(family, {})


def links(things: Mapping[Thing, Conformed], broken: frozenset[Thing]) -> Links:
    """Every pointer of the collection followed.

    `broken` are things with a file that could not be read: nothing is said of names that may stand in it.
    """
    mistakes: list[Mistake] = []
    names: dict[Thing, _Names] = {}
    pointers: dict[Thing, list[Pointer]] = {}
    for thing, conformed in things.items():
        names[thing] = _Names()
        mistakes.extend(_collect_names(conformed, conformed.kind, conformed.values, (), names[thing]))
        pointers[thing] = list(_pointers(thing, conformed.kind, conformed.values, ()))
    mistakes.extend(_same_plates(things))
    held_by: dict[Thing, list[Pointer]] = {}
    for thing, own in pointers.items():
        house = _House(things=things, names=names, broken=broken, thing=thing, own=own)
        for pointer in own:
            mistakes.extend(house.astray(pointer))
            if pointer.family in FOLDERS and (pointer.family, pointer.name) in things:
                held_by.setdefault((pointer.family, pointer.name), []).append(pointer)
        if thing[0] == "machine":
            mistakes.extend(_missing_rails(house, pointers))
        mistakes.extend(_circles(house))
    return Links(mistakes=mistakes, held_by={thing: tuple(found) for thing, found in held_by.items()})


def _collect_names(
    conformed: Conformed, described: Field, value: Any, path: Path, names: _Names
) -> Iterator[Mistake]:
    """The names that a value and all below it give; a second one of a family is a mistake."""
    if described.names_item and described.names_item != "here":
        family = names.of(described.names_item)
        several = value if isinstance(value, list) else [value]
        for index, name in enumerate(several):
            at = (*path, index) if isinstance(value, list) else path
            if name in family:
                yield _second(conformed, at, family[name], described.names_item)
            elif isinstance(name, str):
                family[name] = at
        return
    if isinstance(value, dict):
        for name, inner in value.items():
            if name in described.fields:
                yield from _collect_names(conformed, described.fields[name], inner, (*path, name), names)
    elif isinstance(value, list) and described.item:
        yield from _own_list(conformed, described.item, value, path)
        for index, inner in enumerate(value):
            yield from _collect_names(conformed, described.item, inner, (*path, index), names)


def _own_list(conformed: Conformed, item: Field, items: list[Any], path: Path) -> Iterator[Mistake]:
    """Names that must be single in their own list only."""
    for name, inner in item.fields.items():
        if inner.names_item != "here":
            continue
        seen: dict[object, Path] = {}
        for index, each in enumerate(items):
            written = each.get(name) if isinstance(each, dict) else None
            if isinstance(written, str) and written in seen:
                yield _second(conformed, (*path, index, name), seen[written], name)
            elif isinstance(written, str):
                seen[written] = (*path, index, name)


def _second(conformed: Conformed, path: Path, first: Path, family: str) -> Mistake:
    entry = conformed.entry
    at = entry.place(first)
    found = _text_at(conformed.entry.values, path)
    words = {"first": f"{at.file}:{at.line}", "family": family.replace("-", " ")}
    return ID_01.at(entry.place(path), conformed.spoken(path), found, **words)


def _text_at(values: Any, path: Path) -> str | None:
    for step in path:
        values = values[step]
    return values if isinstance(values, str) else None


def _same_plates(things: Mapping[Thing, Conformed]) -> Iterator[Mistake]:
    seen: dict[tuple[str, str], Conformed] = {}
    for (kind, _), conformed in things.items():
        name = conformed.values.get("name")
        if not isinstance(name, str):
            continue
        first = seen.setdefault((kind, name.casefold()), conformed)
        if first is not conformed:
            at = first.entry.place(("name",))
            yield ID_02.at(conformed.entry.place(("name",)), "name", name, first=f"{at.file}:{at.line}")


def _pointers(thing: Thing, described: Field, value: Any, path: Path, beside: Any = None) -> Iterator[Pointer]:
    if described.points_at and isinstance(value, str):
        yield Pointer(thing=thing, path=path, family=described.points_at, name=value, beside=beside or {})
    elif isinstance(value, dict):
        for name, inner in value.items():
            if name in described.fields:
                yield from _pointers(thing, described.fields[name], inner, (*path, name), value)
    elif isinstance(value, list) and described.item:
        for index, inner in enumerate(value):
            yield from _pointers(thing, described.item, inner, (*path, index), beside)


@dataclass(frozen=True, kw_only=True, slots=True)
class _House:
    """One thing with all that its pointers may lead to."""

    things: Mapping[Thing, Conformed]
    names: Mapping[Thing, _Names]
    broken: frozenset[Thing]
    thing: Thing
    own: list[Pointer]

    @property
    def conformed(self) -> Conformed:
        return self.things[self.thing]

    @property
    def where(self) -> str:
        return "this machine" if self.thing[0] == "machine" else "this file"

    def held(self) -> dict[str, Pointer]:
        """What this thing holds, by slug, with the first pointer that says so."""
        found: dict[str, Pointer] = {}
        for pointer in self.own:
            if pointer.family in FOLDERS:
                found.setdefault(pointer.name, pointer)
        return found

    def astray(self, pointer: Pointer) -> Iterator[Mistake]:
        """The mistake of a pointer that leads nowhere."""
        family = pointer.family
        if family in FOLDERS:
            yield from self._no_thing(pointer)
        elif family == "caution":
            yield from self._no_name(pointer, "caution", ("cautions", "cautions"), "machines/_shared/cautions.yml")
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
        file = f"machines/_parts/{FOLDERS[kind]}/{pointer.name}.yml"
        yield self._mistake(LINK_02, pointer, nearest_name(pointer.name, known), kind=kind, file=file)

    def _no_name(self, pointer: Pointer, family: str, owner: Thing, where: str) -> Iterator[Mistake]:
        known = self.names[owner].of(family) if owner in self.names else {}
        if pointer.name in known or owner in self.broken:
            return
        close = nearest_name(pointer.name, list(known))
        yield self._mistake(LINK_01, pointer, close, family=family.replace("-", " "), where=where)

    def _no_scoped_name(self, pointer: Pointer) -> Iterator[Mistake]:
        """A name inside an item that is named beside the pointer: `switches[switch].positions`."""
        listed, rest = pointer.family.split("[")
        beside, inner = rest.split("].")
        chosen = pointer.beside.get(beside)
        items = [each for each in self.conformed.values.get(listed, []) if isinstance(each, dict)]
        item = next((each for each in items if each.get(beside) == chosen), None)
        if item is None or not isinstance(item.get(inner), list):
            return  # the item itself is astray, and that is told already
        outer = self.conformed.kind.fields[listed].item
        naming = outer.fields[inner].item if outer else None
        assert naming is not None
        key = next(name for name, each in naming.fields.items() if each.names_item == "here")
        known = [str(each.get(key)) for each in item[inner] if isinstance(each, dict)]
        if pointer.name not in known:
            close = nearest_name(pointer.name, known)
            yield self._mistake(LINK_01, pointer, close, family=inner.rstrip("s"), where=f"`{chosen}`")

    def _no_held_part(self, pointer: Pointer) -> Iterator[Mistake]:
        slug, _, name = pointer.name.partition("/")
        held = self.held()
        if slug not in held:
            words = ", ".join(f"`{each}`" for each in sorted(held))
            close = nearest_name(slug, list(held))
            nearest = f"{close}/{name}" if close else None
            yield self._mistake(LINK_04, pointer, nearest, slug=slug, held=words or "nothing yet")
            return
        owner = (held[slug].family, slug)
        if owner not in self.names or owner in self.broken:
            return
        known = self.names[owner].of("part")
        if name not in known:
            close = nearest_name(name, list(known))
            where = self.things[owner].entry.place(()).file
            yield self._mistake(LINK_01, pointer, f"{slug}/{close}" if close else None, family="part", where=where)

    def _mistake(self, code: Code, pointer: Pointer, nearest: str | None, **fills: str) -> Mistake:
        entry = self.conformed.entry
        return code.at(entry.place(pointer.path), self.conformed.spoken(pointer.path), pointer.name, nearest, **fills)


def _missing_rails(house: _House, pointers: Mapping[Thing, list[Pointer]]) -> Iterator[Mistake]:
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
            yield house._mistake(LINK_03, holder, nearest_name(pointer.name, list(rails)), **words)


def _circles(house: _House) -> Iterator[Mistake]:
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
            yield house._mistake(LINK_05, steps[here], None, circle=circle)
