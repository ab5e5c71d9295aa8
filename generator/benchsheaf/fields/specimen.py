"""A description made from the schemas' own examples, with every field filled; what a new field is tested by."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from typing import Any

from benchsheaf.fields.paths import all_fields
from benchsheaf.fields.records import Field, Schemas


@dataclass(frozen=True, kw_only=True, slots=True)
class Given:
    """A name that a description gives, and of what kind the thing is, where it says so."""

    name: str
    kind: str = ""


Pool = Mapping[str, list[Given]]
"""Names by their families."""

LENT: Mapping[str, tuple[str, ...]] = {
    "machine": ("rail", "removal", "stage"),
    "bus": ("bus-line",),
    "cautions": ("caution",),
}
"""Families of one kind that others point at too: a drive uses the rails of its holder, a card the lines of a bus."""

OF_HELD = ("shows_here",)
"""Sections about what is held, by its slug and a name: left out, since no names of held things are lent."""
LEFT_OUT: Mapping[str, tuple[tuple[str, ...], ...]] = {"outcomes": (("condition", "stop"), ("condition",))}
"""Fields that the first items of a list lack: the first outcome is the healthy one, and a fault shows the second."""


def specimens(schemas: Schemas) -> dict[str, dict[str, Any]]:
    """For every kind a description in which each field has its example and each pointer lands.

    An example of a group or list is laid over what its fields' examples give. A pointer keeps its example where that is
    a name that is given, and takes what fits in turn where it is none. A pointer to a family of which nothing is given
    is left out, as a keyboard has no parts of its own.
    """
    made = {kind: _Making(schemas.kinds[kind]).value(schemas.kinds[kind], 0) for kind in schemas.kinds}
    shared: dict[str, list[Given]] = {kind: [Given(name=specimen_slug(kind))] for kind in schemas.kinds}
    shared["thing"] = shared["drive"]
    machine = _pool(schemas.kinds["machine"], made["machine"])
    for kind, families in LENT.items():
        pool = _pool(schemas.kinds[kind], made[kind])
        shared |= {family: pool[family] for family in families}
    for kind, values in made.items():
        described = schemas.kinds[kind]
        for section in OF_HELD:
            values.pop(section, None)
        lent = shared | machine if kind == "repair" else shared
        # A name that is itself a pointer is given before others point at it; items that can have none of what they must
        # have go, and what pointed at them is led elsewhere.
        for borrowed in (True, False, False):
            _Leading(lent | _pool(described, values), borrowed).lead(described, values, {})
    return made


def specimen_slug(kind: str) -> str:
    """The short name under which the specimen of a kind stands; each kind has its own, as shared things must."""
    return f"specimen-{kind}"


def _pool(described: Field, values: Any) -> dict[str, list[Given]]:
    """All names that a description gives."""
    pool: dict[str, list[Given]] = {}
    for family, given in _names(described, values, {}):
        pool.setdefault(family, []).append(given)
    return pool


def _names(described: Field, value: Any, beside: Mapping[str, Any]) -> Iterator[tuple[str, Given]]:
    if described.names_item and described.names_item != "here":
        for name in value if isinstance(value, list) else [value]:
            yield described.names_item, Given(name=name, kind=beside.get("kind", ""))
    elif isinstance(value, dict):
        for name, inner in value.items():
            yield from _names(described.fields[name], inner, value)
    elif isinstance(value, list) and described.item:
        for each in value:
            yield from _names(described.item, each, beside)


@dataclass(frozen=True, slots=True)
class _Making:
    """Values from the examples of one kind; pointers still say what their examples say."""

    whole: Field

    def value(self, described: Field, number: int) -> Any:
        """A value for a field; `number` tells the items of a list apart."""
        if described.shape == "record":
            made = {name: self.value(inner, number) for name, inner in described.fields.items()}
            return made | (described.example if isinstance(described.example, dict) else {})
        if described.shape == "list":
            return self._items(described)
        example = str(described.example)
        if not (described.names_item and number) or _is_taken(described):
            return example
        return example + "ABCDEFGHIJ"[number - 1] if described.form == "designator" else f"{example}-{number + 1}"

    def _items(self, described: Field) -> list[Any]:
        """The items of a list: as many as its example has, or as few as it may have.

        Where an item points at its own list, a second one stands for it to point at; where an item has one field of
        several, there is one with each; where pointers want parts of some kinds, there is one of each.
        """
        item = described.item
        assert item is not None
        example = described.example if isinstance(described.example, list) else []
        if item.shape != "record":
            return list(example) or [self.value(item, 0)]
        count = max(1, described.shortest, len(example), 2 if _points_inward(item) else 1, len(item.at_least))
        made = [self.value(item, number) for number in range(count)]
        for each in made[:-1]:  # the last has such a name, as each item leads to later ones
            for name in [name for name in each if _is_taken(item.fields[name])]:
                del each[name]
        for number, each in enumerate(made if item.at_least else ()):
            for name in set(item.at_least) - {item.at_least[number % len(item.at_least)]}:
                del each[name]
        for each, over in zip(made, example, strict=False):
            each |= over if isinstance(over, dict) else {}
        for each, without in zip(made, LEFT_OUT.get(described.name, ()), strict=False):
            for name in without:
                each.pop(name, None)
        return made + [
            self.value(item, count + number) | {"kind": kind} for number, kind in enumerate(self._wanted(item))
        ]

    def _wanted(self, item: Field) -> list[str]:
        """The kinds of part that pointers of this description want, if the items of a list are parts."""
        named = {each.names_item for each in item.fields.values() if each.names_item and each.shape == "text"}
        if "kind" not in item.fields or not named:
            return []
        pointers = [each.item or each for _, each in all_fields(self.whole)]
        return list(dict.fromkeys(each.of_kind[0] for each in pointers if each.of_kind and each.points_at in named))


def _is_taken(described: Field) -> bool:
    """Whether a name is one of a few words, so that the items of a list cannot all have one."""
    return bool(described.names_item and described.allowed)


def _points_inward(item: Field) -> bool:
    named = {each.names_item for each in item.fields.values() if each.names_item and not each.points_at}
    return any((each.item or each).points_at in named for each in item.fields.values())


@dataclass(slots=True)
class _Leading:
    """Pointers led to names that are given, in turn; `borrowed` are those that give a name themselves."""

    pool: Pool
    borrowed: bool
    turns: dict[str, int] = field(default_factory=dict)

    def lead(self, described: Field, values: dict[str, Any], within: Mapping[str, str]) -> None:
        """Every pointer below a record; `within` are the names of the items that it lies in, by their families."""
        own = {
            each.names_item: str(values[name])
            for name, each in described.fields.items()
            if each.names_item and name in values
        }
        within = {**within, **own}
        for name, inner in described.fields.items():
            item = inner.item or inner
            if name not in values:
                continue
            if item.points_at and "[" not in item.points_at and bool(item.names_item) is self.borrowed:
                chosen = self._chosen(item, values[name] if inner.item else [values[name]], within)
                del values[name]
                if chosen:
                    values[name] = chosen if inner.item else chosen[0]
            elif inner.shape == "record":
                self.lead(inner, values[name], within)
            elif inner.item and item.shape == "record":
                for each in values[name]:
                    self.lead(item, each, within)
                # An item whose one field was a pointer that was left out has none of those that it must have.
                lame = [each for each in values[name] if item.at_least and not each.keys() & set(item.at_least)]
                values[name] = [each for each in values[name] if each not in lame]

    def _chosen(self, item: Field, examples: list[str], within: Mapping[str, str]) -> list[str]:
        """A name for each example, no two the same; fewer where there are not so many."""
        assert item.points_at is not None
        fitting = [
            each.name
            for each in self.pool.get(item.points_at, [])
            if not item.of_kind or not each.kind or each.kind in item.of_kind
        ]
        if item.points_at in within:
            fitting = fitting[fitting.index(within[item.points_at]) + 1 :]  # an item leads to a later one: no circle
        chosen: list[str] = []
        for example in examples:
            turn = self.turns.get(item.points_at, 0)
            free = [name for name in fitting[turn:] + fitting[:turn] if name not in chosen]
            if free:
                chosen.append(example if example in free else free[0])
                self.turns[item.points_at] = (turn + 1) % len(fitting)
        return chosen
