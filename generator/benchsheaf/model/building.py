"""Records filled from judged values by their own annotations, so that no record needs a builder of its own."""

from collections.abc import Callable, Hashable, Mapping
from dataclasses import MISSING, fields, is_dataclass
from decimal import Decimal
from functools import cache
from types import NoneType, UnionType
from typing import Any, TypeVar, Union, cast, get_args, get_origin, get_type_hints

from benchsheaf.fields import Field

R = TypeVar("R")


def built(record: type[R], values: Mapping[str, Any], described: Field, **extra: object) -> R:
    """A record from the judged values of one mapping.

    `extra` gives fields that no schema has, such as the slug of a file.
    Errors: TypeError if schema and record do not mirror each other; a test holds them together.
    """
    hints = _hints(cast(Hashable, record))
    given: dict[str, object] = dict(extra)
    for name, value in values.items():
        inner = described.fields[name]
        key = inner.key
        given[key] = value if value.__class__ in _READY else _filled(hints[key], value, inner)
    return _shared((record, *given), tuple(given.values()), lambda: record(**given))


_alike: dict[tuple[object, ...], object] = {}
MOST_ALIKE = 1 << 12
"""Among how many values the same one is looked for: those of some twenty machines."""


def _shared(what: tuple[object, ...], parts: tuple[object, ...], made: Callable[[], R]) -> R:
    """A value that is made of the very same parts as one before is that one: of like machines it is kept once.

    The parts themselves are compared, not what they are worth: `1.0` and `1.00` are printed otherwise.
    """
    key = (*what, *map(id, parts))
    found = _alike.get(key)
    if found is None:
        if len(_alike) >= MOST_ALIKE:
            _alike.clear()
        found = _alike[key] = made()
    return cast(R, found)


# What stands in a record as it is; a Decimal may have to become a whole number.
_READY = frozenset({str, bool})


def _filled(hint: Any, value: Any, described: Field) -> object:
    if isinstance(value, dict):
        return built(hint, value, described)
    if isinstance(value, list):
        assert described.item is not None
        items = tuple(_filled(hint, each, described.item) for each in value)
        return _shared((tuple,), items, lambda: items)
    return int(value) if hint is int and isinstance(value, Decimal) else value


@cache
def _hints(record: Any) -> dict[str, Any]:
    """What each field of a record is at its heart: the record, or the plain value, without `| None` and `tuple[…]`."""
    return {name: heart(hint) for name, hint in get_type_hints(record).items()}


def heart(hint: Any) -> Any:
    """The annotation without `| None` and without `tuple[…, ...]`."""
    if get_origin(hint) in (Union, UnionType):
        return heart(next(each for each in get_args(hint) if each is not NoneType))
    if get_origin(hint) is tuple:
        return heart(get_args(hint)[0])
    return hint


def mirror_gaps(record: type, described: Field) -> list[str]:
    """What keeps a record and its schema from mirroring each other, as the lines that would mend it."""
    assert is_dataclass(record)
    hints = get_type_hints(record)
    own = {each.name: each for each in fields(record)}
    wanted = {inner.key: inner for inner in described.fields.values()}
    gaps = []
    for key, inner in wanted.items():
        line = f"{record.__name__}: {key}: {_annotation(inner)}"
        if key not in own:
            gaps.append(f"add      {line}")
        elif not _fits(hints[key], inner):
            gaps.append(f"change   {line}, not {hints[key]}")
        elif inner.required != (own[key].default is MISSING):
            gaps.append(f"default  {line}")
        elif is_dataclass(heart(hints[key])):
            gaps += mirror_gaps(heart(hints[key]), inner if inner.shape == "record" else inner.item or inner)
    gaps += [f"take out {record.__name__}: {name}" for name in own if name not in wanted and name != "slug"]
    return gaps


_PLAIN = {"text": str, "integer": int, "boolean": bool, "quantity": Decimal}
WHOLE_UNITS = ("B", "bit")


def _plain(described: Field) -> type | None:
    return int if described.unit in WHOLE_UNITS else _PLAIN.get(described.shape)


def _fits(hint: Any, described: Field) -> bool:
    inner = described.item if described.shape == "list" else described
    plain = _plain(inner) if inner else None
    listed = get_origin(hint) is tuple
    return listed == (described.shape == "list") and (heart(hint) is plain if plain else is_dataclass(heart(hint)))


def _annotation(described: Field) -> str:
    if described.shape == "list" and described.item:
        return f"tuple[{_annotation(described.item).removesuffix(' | None = None')}, ...]"
    plain = _plain(described)
    name = plain.__name__ if plain else "a record"
    return name if described.required else f"{name} | None = None"
