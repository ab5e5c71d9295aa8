"""Examples of a field as a contributor would write them, made of the examples that the schemas give."""

from typing import Any

from benchsheaf.fields.records import Field


def whole_example(described: Field) -> Any:
    """A value in which every field below stands with its own example.

    `source`, which any group may carry, is left out: it would double every small group.
    """
    return _value(described, 0, least=False)


def least_example(described: Field) -> Any:
    """A value that holds what must be there and nothing else."""
    return _value(described, 0, least=True)


def least_fields(described: Field, *, also: tuple[str, ...] = ()) -> dict[str, Field]:
    """The fields of a record that must be there: the required ones, those named, one where one of several is wanted."""
    needed = {name for name, inner in described.fields.items() if inner.required or name in also}
    if described.at_least and not needed & set(described.at_least):
        needed.add(described.at_least[0])
    return {name: inner for name, inner in described.fields.items() if name in needed}


def _value(described: Field, number: int, *, least: bool) -> Any:
    """`number` tells the items of a list apart, so that none has the name of another."""
    if described.shape == "record":
        return _record(described, number, least=least)
    if described.shape == "list":
        return _items(described, least=least)
    example = str(described.example)
    return f"{example}-{number + 1}" if described.names_item and not described.points_at and number else example


def _record(described: Field, number: int, *, least: bool) -> dict[str, Any]:
    given = described.example if isinstance(described.example, dict) else {}
    chosen = least_fields(described) if least else _own_fields(described)
    made = {name: _value(inner, number, least=least) for name, inner in chosen.items()}
    return made | {name: value for name, value in given.items() if name in made}


def _own_fields(described: Field) -> dict[str, Field]:
    return {name: inner for name, inner in described.fields.items() if inner.points_at != "source"}


def _items(described: Field, *, least: bool) -> list[Any]:
    item = described.item
    assert item is not None
    given = described.example if isinstance(described.example, list) else []
    if item.shape != "record":
        return [str(each) for each in given] or [_value(item, 0, least=least)]
    made = [_value(item, number, least=least) for number in range(max(1, described.shortest))]
    for each, over in zip(made, given, strict=False):
        each.update({name: value for name, value in over.items() if name in each} if isinstance(over, dict) else {})
    return made
