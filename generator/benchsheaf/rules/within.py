"""Records that lie anywhere within another record, each with the path at which its description has it."""

from collections.abc import Iterator
from dataclasses import fields, is_dataclass
from functools import cache
from typing import Any, TypeVar, cast, get_type_hints

from benchsheaf.model.building import heart

R = TypeVar("R")
Path = tuple[str | int, ...]


def within(record: object, sought: type[R], path: Path = ()) -> Iterator[tuple[Path, R]]:
    """Every record of a kind below another, in the order of its fields."""
    for name in _ways(cast(Any, type(record)), cast(Any, sought)):
        value = getattr(record, name)
        several = enumerate(value) if isinstance(value, tuple) else [(None, value)]
        for index, each in several:
            if each is None:
                continue
            here = (*path, name) if index is None else (*path, name, index)
            if isinstance(each, sought):
                yield here, each
            else:
                yield from within(each, sought, here)


@cache
def _ways(kind: Any, sought: Any) -> tuple[str, ...]:
    """The fields of a kind of record below which another kind can lie."""
    hints = {name: heart(hint) for name, hint in get_type_hints(kind).items()}
    inner = {each.name: hints[each.name] for each in fields(kind) if is_dataclass(hints[each.name])}
    return tuple(name for name, hint in inner.items() if hint is sought or _ways(hint, sought))
