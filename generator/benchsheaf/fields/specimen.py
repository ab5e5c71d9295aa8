"""A description made from the schemas' own examples, with every field filled; what a new field is tested by."""

from collections.abc import Mapping
from typing import Any

from benchsheaf.fields.paths import all_fields
from benchsheaf.fields.records import Field, Schemas

SLUG = "specimen"
OF_HOLDERS = ("rail", "removal", "stage")
"""Families whose names are those of whatever holds a thing."""
OF_HELD = ("shows_here",)
"""Sections about what is held, by its slug and a name: left out, since all things of the specimen have one slug."""
LEFT_OUT: Mapping[str, tuple[tuple[str, ...], ...]] = {"outcomes": (("condition", "stop"), ("condition",))}
"""Fields that the first items of a list lack: the first outcome is the healthy one, and a fault shows the second."""


def specimens(schemas: Schemas) -> dict[str, dict[str, Any]]:
    """For every kind a description in which each field has its example and each pointer lands.

    An example of a group or list is laid over what its fields' examples give.
    A pointer to a family that the kind does not name is left out, as a keyboard has no parts of its own.
    """
    shared = {kind: SLUG for kind in schemas.kinds} | _names(schemas.kinds["cautions"])
    shared["thing"] = SLUG
    machine = _names(schemas.kinds["machine"])
    shared |= {family: machine[family] for family in OF_HOLDERS} | _names(schemas.kinds["bus"])
    made = {}
    for kind, described in schemas.kinds.items():
        names = shared | _names(described) | (machine if kind == "repair" else {})
        made[kind] = {
            name: _value(inner, names, 0)
            for name, inner in described.fields.items()
            if name not in OF_HELD and _lands(inner, names)
        }
    return made


def _names(described: Field) -> dict[str, str]:
    """One name of each family that a kind gives: the example of the field that gives it."""
    families: dict[str, str] = {}
    borrowed: list[tuple[str, str]] = []
    for _, inner in all_fields(described):
        if inner.names_item and inner.points_at:
            borrowed.append((inner.names_item, inner.points_at))
        elif inner.names_item and inner.names_item != "here":
            example = inner.example[0] if isinstance(inner.example, list) else inner.example
            families.setdefault(inner.names_item, str(example))
    return families | {family: families[source] for family, source in borrowed}


def _value(described: Field, names: Mapping[str, str], number: int) -> Any:
    """A value for a field; `number` tells the items of a list apart."""
    if described.points_at:
        return _pointed(described, names)
    if described.shape == "record":
        made = {name: _value(inner, names, number) for name, inner in described.fields.items() if _lands(inner, names)}
        return made | (described.example if isinstance(described.example, dict) else {})
    if described.shape == "list":
        return _items(described, names)
    example = str(described.example)
    return f"{example}-{number + 1}" if described.names_item and not described.allowed and number else example


def _lands(described: Field, names: Mapping[str, str]) -> bool:
    """Whether a field is no pointer, or one that can lead somewhere."""
    pointing = _points_at(described)
    return pointing is None or "[" in pointing or pointing in names


def _pointed(described: Field, names: Mapping[str, str]) -> str:
    """The name that a pointer leads to; inside another item it is the pointer's own example."""
    assert described.points_at is not None
    return str(described.example) if "[" in described.points_at else names[described.points_at]


def _items(described: Field, names: Mapping[str, str]) -> list[Any]:
    """The items of a list: as many as its example has, or as few as it may have.

    Where an item points at its own list, a second one stands for it to point at, which points at nothing.
    """
    item = described.item
    assert item is not None
    example = described.example if isinstance(described.example, list) else []
    if item.points_at:
        return [_pointed(item, names)] * max(1, len(example))
    if item.shape != "record":
        return list(example) or [_value(item, names, 0)]
    made = [_value(item, names, number) for number in range(max(1, described.shortest, len(example)))]
    own = next((each for each in item.fields.values() if each.names_item and not each.points_at), None)
    inward = [each for each in item.fields.values() if own and _points_at(each) == own.names_item]
    if own and inward:
        left = {each.name for each in inward} | _left_to_first(item)
        second = {name: value for name, value in _value(item, names, 1).items() if name not in left}
        made[0] = {name: value for name, value in made[0].items() if not _is_taken(item.fields[name])}
        made[0] |= {each.name: [second[own.name]] if each.item else second[own.name] for each in inward}
        made.append(second)
    made = [
        each | over if isinstance(over, dict) else each for each, over in zip(made, _padded(example, made), strict=True)
    ]
    for each, without in zip(made, LEFT_OUT.get(described.name, ()), strict=False):
        for name in without:
            each.pop(name, None)
    return made


def _points_at(described: Field) -> str | None:
    """The family that a field, or each item of it, points at."""
    return described.points_at or (described.item.points_at if described.item else None)


def _is_taken(described: Field) -> bool:
    """Whether a name is one of a few words, so that the items of a list cannot all have one."""
    return bool(described.names_item and described.allowed)


def _left_to_first(item: Field) -> set[str]:
    """Fields that point at such a name: the first item points at it, and the second has it."""
    families = {each.names_item for each in item.fields.values() if _is_taken(each)}
    return {each.name for each in item.fields.values() if _points_at(each) in families}


def _padded(example: list[Any], made: list[Any]) -> list[Any]:
    return example[: len(made)] + [None] * (len(made) - len(example))
