"""A quick walk through a description in which nothing is wrong; with the least doubt it is left to the validator."""

from collections.abc import Callable
from dataclasses import dataclass
from decimal import Decimal
from functools import cache
from typing import Any

from benchsheaf.fields import Field, Misfit, converted

Walk = Callable[[Any], Any]
"""From a written value to what it means under its field."""


@dataclass(frozen=True, slots=True)
class Shell:
    """A schema by its identity, so that what is made for it is made once."""

    kind: Field

    def __hash__(self) -> int:
        return id(self.kind)

    def __eq__(self, other: object) -> bool:
        return isinstance(other, Shell) and self.kind is other.kind


class Doubt(Exception):
    """Something may be wrong: the validator knows what, and the words for it."""


@cache
def sound_walk(shell: Shell) -> Walk:
    """The walk through descriptions of one kind, made from the same fields as the validator.

    Errors: the walk raises Doubt. It never lets pass what the validator refuses; a test holds the two together.
    """
    return _walk(shell.kind)


def _walk(described: Field) -> Walk:
    if described.shape == "record":
        return _record_walk(described)
    if described.shape == "list" and described.item:
        return _list_walk(_walk(described.item), described.shortest)
    return _scalar_walk(described)


def _record_walk(described: Field) -> Walk:
    walks = {name: _walk(inner) for name, inner in described.fields.items()}
    required = frozenset(name for name, inner in described.fields.items() if inner.required)
    needs = [(name, other) for name, inner in described.fields.items() for other in inner.needs]
    above = [(name, inner.above) for name, inner in described.fields.items() if inner.above]
    at_least = described.at_least

    def walk(written: Any) -> dict[str, Any]:
        if written.__class__ is not dict or not required <= written.keys() or not walks.keys() >= written.keys():
            raise Doubt
        values = {name: walks[name](inner) for name, inner in written.items()}
        for name, other in needs:
            if name in values and other not in values:
                raise Doubt
        for name, other in above:
            if name in values and other in values and not values[name] > values[other]:
                raise Doubt
        if at_least and not any(name in values for name in at_least):
            raise Doubt
        return values

    return walk


def _list_walk(item: Walk, shortest: int) -> Walk:
    def walk(written: Any) -> list[Any]:
        if written.__class__ is not list or len(written) < shortest:
            raise Doubt
        return [item(each) for each in written]

    return walk


def _scalar_walk(described: Field) -> Walk:
    allowed, least, most, shortest = described.allowed, described.least, described.most, described.shortest

    def walk(written: Any) -> Any:
        if written.__class__ is not str:
            raise Doubt
        value = converted(described, written)
        if isinstance(value, Misfit) or (allowed and value not in allowed):
            raise Doubt
        if isinstance(value, Decimal | int):
            if (least is not None and value < least) or (most is not None and value > most):
                raise Doubt
        elif len(value) < shortest:
            raise Doubt
        return value

    return walk
