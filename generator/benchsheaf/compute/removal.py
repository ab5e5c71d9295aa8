"""The shortest way to what comes off: everything that must be off before it, and how long that takes."""

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal

from benchsheaf.compute.laws import all_before, stable_order
from benchsheaf.model.bench import Removal


@dataclass(frozen=True, kw_only=True, slots=True)
class RemovalFigures:
    """The way to one removal: what comes off in which order, itself last, and the minutes of it all by hand."""

    id: str
    way: tuple[str, ...]
    off_minutes: Decimal
    on_minutes: Decimal | None  # to put all of it back; None where that is not known of each


@dataclass(frozen=True, kw_only=True, slots=True)
class ReachFigures:
    """What must come off before a check or a procedure, in order, from a machine with nothing taken off."""

    name: str
    way: tuple[str, ...]
    off_minutes: Decimal


def removal_figures(removals: Sequence[Removal]) -> tuple[RemovalFigures, ...]:
    """The way to each removal, in the order of the description.

    Units: minutes in and out; waiting is no part of them.
    Errors: KeyError if one comes after what is not described; links have seen to that.
    """
    by_name = {each.id: each for each in removals}
    found = []
    for each in removals:
        way = removal_way(removals, (each.id,))
        on = [by_name[name].on_minutes for name in way]
        known = [minutes for minutes in on if minutes is not None]
        found.append(
            RemovalFigures(
                id=each.id,
                way=way,
                off_minutes=sum((by_name[name].off_minutes for name in way), Decimal(0)),
                on_minutes=sum(known, Decimal(0)) if len(known) == len(on) else None,
            )
        )
    return tuple(found)


def removal_way(removals: Sequence[Removal], wanted: Sequence[str]) -> tuple[str, ...]:
    """What must come off to have some things off, in an order that works: nothing more than that.

    Errors: KeyError if one comes after what is not described; links have seen to that.
    """
    after = {each.id: each.after for each in removals}
    return stable_order(all_before(wanted, after), after)


def removal_order(removals: Sequence[Removal]) -> tuple[str, ...]:
    """One order in which all of it can come off: that of the description, as far as it works."""
    return stable_order([each.id for each in removals], {each.id: each.after for each in removals})


def reach_figures(name: str, removals: Sequence[Removal], wanted: Sequence[str]) -> ReachFigures:
    """The way to what a check or a procedure wants off.

    Units: minutes in and out.
    Errors: KeyError if something is wanted off that is not described; links have seen to that.
    """
    minutes = {each.id: each.off_minutes for each in removals}
    way = removal_way(removals, wanted)
    return ReachFigures(name=name, way=way, off_minutes=sum((minutes[each] for each in way), Decimal(0)))
