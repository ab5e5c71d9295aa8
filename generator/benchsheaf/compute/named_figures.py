"""Single figures and facts by their names, as a text may ask for one: `reservoir.wait_minutes`."""

from collections.abc import Hashable, Sequence
from dataclasses import dataclass, fields, is_dataclass
from decimal import Decimal
from functools import cache
from typing import Any, cast

# What an item of a list is called by, the first of these that it has; never its place in the list.
NAMES = (
    *("id", "ref", "refs", "slug", "pin", "line", "switch", "slot", "bay", "rail", "name", "to", "part", "chip"),
    *("outfit", "card", "load", "channel", "fault", "check", "removal"),
)


@dataclass(frozen=True, kw_only=True, slots=True)
class Named:
    """A figure that was found: the record that it stands in, and its name there."""

    record: object
    name: str

    @property
    def value(self) -> object:
        """The number, or the range."""
        return getattr(self.record, self.name)


@dataclass(frozen=True, kw_only=True, slots=True)
class Unnamed:
    """A way that leads to no single figure: as far as it leads, what stands there, and the name that does not.

    `absent` says that there is such a field, without a value, or such an item, more than once: a fact that it follows
    from is not given, or wrong.
    """

    before: str
    known: tuple[str, ...]
    wanted: str
    absent: bool = False


def named_figure(path: str, roots: Sequence[object]) -> Named | Unnamed:
    """The figure that a path leads to from the first of some records that has it.

    A path is the names of fields with points between, as the data files have them; an item of a list is named by what
    it is called. Errors: none raised; where no way leads on it is told how far the best one led.
    """
    found = [_from(path.replace("\u2212", "-"), root) for root in roots]
    for each in found:
        if isinstance(each, Named):
            return each
    astray = [each for each in found if isinstance(each, Unnamed)]
    furthest = max((len(each.before) for each in astray), default=0)
    best = [each for each in astray if len(each.before) == furthest]
    known = dict.fromkeys(name for each in best for name in each.known)
    return Unnamed(
        before=best[0].before if best else "",
        known=tuple(known),
        wanted=best[0].wanted if best else path,
        absent=any(each.absent for each in best),
    )


def _from(path: str, root: object) -> Named | Unnamed:
    here: object = root
    before, rest = "", path
    while True:
        inner = _inside(here)
        name = max((name for name in inner if rest == name or rest.startswith(f"{name}.")), key=len, default=None)
        if name is None:
            absent = _is_known(here, rest)
            return Unnamed(before=before, known=tuple(inner), wanted=rest, absent=absent)
        record, key = inner[name]
        value = getattr(record, key) if key else record
        before, rest = f"{before}.{name}".lstrip("."), rest[len(name) + 1 :]
        if not rest and key and _is_single(value):
            return Named(record=record, name=key)
        here = value
        if not rest:
            return Unnamed(before=before, known=tuple(_inside(here)), wanted="")


def _inside(here: object) -> dict[str, tuple[object, str]]:
    """What can be named inside a record or a list: where it stands, and under which field."""
    if isinstance(here, tuple | list):
        found: dict[str, list[object]] = {}
        for each in here:
            if (name := _called(each)) is not None:
                found.setdefault(name, []).append(each)
        return {name: (several[0], "") for name, several in found.items() if len(several) == 1}
    if not is_dataclass(here):
        return {}
    names = _field_names(cast(Hashable, type(here)))
    return {name: (here, name) for name in names if _leads_on(getattr(here, name))}


def _is_known(here: object, rest: str) -> bool:
    """Whether a way would lead on from here, had a field its value, or stood an item only once."""
    if is_dataclass(here):
        return rest.partition(".")[0] in _field_names(cast(Hashable, type(here)))
    names = [_called(each) for each in here] if isinstance(here, tuple | list) else []
    return any(name is not None and f"{rest}.".startswith(f"{name}.") for name in names)


def _leads_on(value: object) -> bool:
    return value is not None and value != () and not isinstance(value, str | bool)


def _called(item: object) -> str | None:
    for name in NAMES:
        value = getattr(item, name, None)
        if isinstance(value, tuple) and value:
            value = value[0]
        if isinstance(value, str):
            return value
    return None


def _is_single(value: object) -> bool:
    return isinstance(value, Decimal | int) or is_range(value)


def is_range(value: object) -> bool:
    """Whether a record is a low and a high end of one unit."""
    if not is_dataclass(value):
        return False
    names = [name for name in _field_names(cast(Hashable, type(value))) if name != "source"]
    return len(names) == 2 and names[0].startswith("low_") and names[1] == f"high_{names[0].removeprefix('low_')}"


@cache
def _field_names(record: Any) -> tuple[str, ...]:
    return tuple(each.name for each in fields(record))
