"""Where each value of a description is written, and what its schema says of it."""

from collections.abc import Iterator
from typing import NamedTuple

import yaml

from benchsheaf.fields import Field


class Written(NamedTuple):
    """One value: from which sign to which it runs in the text, its field if that is known, the keys that lead there."""

    start: int
    end: int
    described: Field | None
    keys: tuple[str, ...]


class _Open(NamedTuple):
    """A list or mapping that is not closed yet."""

    described: Field | None
    keys: tuple[str, ...]
    is_map: bool


def written_values(text: str, kind: Field | None) -> Iterator[Written]:
    """Every single value of a text in the order in which they stand; keys are not values."""
    within: list[_Open] = []
    key: str | None = None
    for event in yaml.parse(text, yaml.CSafeLoader):
        if isinstance(event, yaml.ScalarEvent) and within and within[-1].is_map and key is None:
            key = event.value
        elif isinstance(event, yaml.ScalarEvent):
            assert event.start_mark
            assert event.end_mark
            here = _inside(within, key, kind)
            yield Written(event.start_mark.index, event.end_mark.index, here.described, here.keys)
            key = None
        elif isinstance(event, yaml.CollectionStartEvent):
            here = _inside(within, key, kind)
            within.append(here._replace(is_map=isinstance(event, yaml.MappingStartEvent)))
            key = None
        elif isinstance(event, yaml.CollectionEndEvent):
            within.pop()


def _inside(within: list[_Open], key: str | None, kind: Field | None) -> _Open:
    """What comes next inside that which was opened last."""
    if not within:
        return _Open(kind, (), False)
    around = within[-1]
    if key is None:
        return _Open(around.described.item if around.described else None, around.keys, False)
    described = around.described.fields.get(key) if around.described else None
    return _Open(described, (*around.keys, key), False)
