"""The new capacitors and resistors of a machine with all that follows for each, and the list of what to buy."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from decimal import Decimal

from benchsheaf.compute.capacitors import (
    LimitFigures,
    RatingFigures,
    SmoothingFigures,
    StressFigures,
    WayRound,
    limit_figures,
    rating_figures,
    smoothing_figures,
    sold_value,
    stress_figures,
    way_round,
)
from benchsheaf.compute.markings import CapacitorMarking, ResistorMarking, capacitor_marking, resistor_marking
from benchsheaf.compute.shopping import ShoppingLine, Wanted, shopping_list
from benchsheaf.model.boards import Fit, Part, WeakPart
from benchsheaf.model.collection import Collection
from benchsheaf.model.machine import Machine, Rail

CAPACITORS = ("tantalum", "electrolytic", "film", "paper", "ceramic")


@dataclass(frozen=True, kw_only=True, slots=True)
class NewCapacitor:
    """A capacitor that there is, and the one to fit: its value, its rating and what that leaves, its marking.

    `capacitance_f` and `was_rated_v` are the old print, which the limits follow; `sold_f` and `rated_v` the new one's.
    """

    ref: str
    kind: str
    capacitance_f: Decimal
    was_rated_v: Decimal | None
    sold_f: Decimal
    rated_v: Decimal | None
    stands_celsius: Decimal | None
    sort: str | None
    way_round: WayRound | None
    rating: RatingFigures | None
    stress: StressFigures | None
    limits: LimitFigures | None
    marking: CapacitorMarking


@dataclass(frozen=True, kw_only=True, slots=True)
class NewResistor:
    """A resistor of fixed value, what the new body must bear where that is told, and how it is marked."""

    ref: str
    resistance_ohm: Decimal
    bears_w: Decimal | None
    rated_v: Decimal | None
    marking: ResistorMarking


@dataclass(frozen=True, kw_only=True, slots=True)
class NewParts:
    """What is needed to replace parts of a machine; names are `SLUG/REF` for what it holds as delivered."""

    capacitors: tuple[NewCapacitor, ...]
    resistors: tuple[NewResistor, ...]
    smoothing: tuple[SmoothingFigures, ...]
    shopping: tuple[ShoppingLine, ...]


def new_parts(machine: Machine, collection: Collection) -> NewParts:
    """All new parts of a machine and of what it holds as delivered."""
    rails = {rail.name: rail for rail in machine.rails}
    parts = dict(_parts(machine, collection))
    wanted = list(_wanted(machine, collection, parts))
    fits: dict[str, Fit] = {}
    for each in wanted:
        if each.weak.fit:
            fits.setdefault(each.ref, each.weak.fit)
    capacitors = [
        _capacitor(name, part, fits.get(name), rails.get(part.across or ""))
        for name, part in parts.items()
        if part.kind in CAPACITORS and part.capacitance_f is not None
    ]
    supply = collection.supplies[machine.supply]
    smoothing = (
        smoothing_figures(output, rails[output.rail].ripple_v) for output in supply.outputs if output.rail in rails
    )
    return NewParts(
        capacitors=tuple(each for each in capacitors if each),
        resistors=tuple(
            _resistor(name, part, fits.get(name))
            for name, part in parts.items()
            if part.kind == "resistor" and part.resistance_ohm is not None
        ),
        smoothing=tuple(
            replace(each, parts=tuple(f"{supply.slug}/{name}" for name in each.parts)) for each in smoothing if each
        ),
        shopping=shopping_list(wanted),
    )


def _capacitor(name: str, part: Part, fit: Fit | None, rail: Rail | None) -> NewCapacitor:
    """The new part has the value and the rating that are told to fit, else those of the old one."""
    assert part.capacitance_f is not None
    farad = fit.capacitance_f if fit and fit.capacitance_f is not None else sold_value(part.capacitance_f)
    volt = fit.rated_v if fit and fit.rated_v is not None else part.rated_v
    new = replace(part, ref=name, capacitance_f=farad, rated_v=volt)
    return NewCapacitor(
        ref=name,
        kind=part.kind,
        capacitance_f=part.capacitance_f,
        was_rated_v=part.rated_v,
        sold_f=farad,
        rated_v=volt,
        stands_celsius=fit.stands_celsius if fit else None,
        sort=fit.kind if fit else None,
        way_round=way_round(part, rail.nominal_v) if rail else None,
        rating=rating_figures(part.kind, rail.nominal_v, rail.window) if rail else None,
        stress=stress_figures(new, rail.nominal_v, rail.window) if rail else None,
        limits=limit_figures(part),
        marking=capacitor_marking(part.kind, farad, volt),
    )


def _resistor(name: str, part: Part, fit: Fit | None) -> NewResistor:
    """The new part bears what is told to fit, else what the old one does."""
    told = fit.resistance_ohm if fit and fit.resistance_ohm is not None else part.resistance_ohm
    assert told is not None
    return NewResistor(
        ref=name,
        resistance_ohm=told,
        bears_w=fit.bears_w if fit and fit.bears_w is not None else part.bears_w,
        rated_v=fit.rated_v if fit and fit.rated_v is not None else part.rated_v,
        marking=resistor_marking(told),
    )


def _parts(machine: Machine, collection: Collection) -> Iterator[tuple[str, Part]]:
    """The parts of the machine's own boards, then those of what it holds as delivered."""
    for board in machine.boards:
        yield from ((part.ref, part) for part in board.all_parts())
    supply = collection.supplies[machine.supply]
    yield from ((f"{supply.slug}/{part.ref}", part) for part in supply.parts)
    for slug in dict.fromkeys(filled.holds for filled in machine.configurations[0].slots):
        yield from ((f"{slug}/{part.ref}", part) for part in collection.cards[slug].parts)


def _wanted(machine: Machine, collection: Collection, parts: Mapping[str, Part]) -> Iterator[Wanted]:
    """Every weak part by the name of each part that it speaks of, or by what it is where it has no designator."""
    delivered = machine.configurations[0]
    drives = dict.fromkeys(put.holds for put in delivered.bays)
    shelves: list[tuple[str, tuple[WeakPart, ...]]] = [("", machine.weak_parts)]
    shelves.append((f"{machine.supply}/", collection.supplies[machine.supply].weak_parts))
    cards = dict.fromkeys(filled.holds for filled in delivered.slots)
    shelves += [(f"{slug}/", collection.cards[slug].weak_parts) for slug in cards]
    shelves += [(f"{slug}/", collection.drives[slug].weak_parts) for slug in drives]
    if delivered.keyboard:
        shelves.append((f"{delivered.keyboard}/", collection.keyboards[delivered.keyboard].weak_parts))
    for prefix, several in shelves:
        for weak in several:
            for name in weak.parts:
                ref = name if "/" in name else prefix + name
                yield Wanted(ref=ref, weak=weak, part=parts.get(ref))
