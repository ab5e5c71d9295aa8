"""The sheet of new parts: what to buy, which way round, how it is marked, what it must bear, what is good."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from decimal import Decimal

from benchsheaf import urls
from benchsheaf.component_standards import LOSS_HZ
from benchsheaf.compute.capacitors import LimitFigures, RatingFigures, SmoothingFigures, StressFigures
from benchsheaf.compute.markings import CapacitorMarking, ResistorMarking
from benchsheaf.compute.shopping import ShoppingLine
from benchsheaf.compute.workup.new_parts import NewCapacitor, NewParts, NewResistor
from benchsheaf.drawing.new_part import new_capacitor, new_resistor
from benchsheaf.drawing.picture import Picture
from benchsheaf.markup import Markup
from benchsheaf.model.machine import Machine, Rail
from benchsheaf.pages.glance import sheet_cautions
from benchsheaf.pages.new_part_words import alike, capacitor_title, new_anchor, resistor_title
from benchsheaf.pages.printing import quantity, rail_name
from benchsheaf.pages.shelf import Desk
from benchsheaf.pages.shopping import NOUNS, room_words, sort_words, value_words
from benchsheaf.pages.views import CautionView


@dataclass(frozen=True, kw_only=True, slots=True)
class LineView:
    """One line of the list of what to buy."""

    line: ShoppingLine
    sort: str
    values: str
    room: str
    names: Sequence[Markup]


@dataclass(frozen=True, kw_only=True, slots=True)
class CapacitorView:
    """New capacitors that are alike: what they are, what is printed on them, and which way round they go."""

    anchor: str
    title: str
    names: Sequence[Markup]
    picture: Picture
    marking: CapacitorMarking
    plus: str
    minus: str
    three_holes: bool
    polar: bool


@dataclass(frozen=True, kw_only=True, slots=True)
class ResistorView:
    """A new resistor, with a picture for each tolerance that it is sold with."""

    anchor: str
    title: str
    name: Markup
    marking: ResistorMarking
    pictures: Sequence[tuple[Picture, str, str]]


@dataclass(frozen=True, kw_only=True, slots=True)
class RatingView:
    """Capacitors of one kind on one rail with the same new rating: what they need, and what they get."""

    names: Sequence[Markup]
    noun: str
    rail: Rail
    rating: RatingFigures
    rated: str
    stress: StressFigures | None
    enough: bool
    worst_enough: bool


@dataclass(frozen=True, kw_only=True, slots=True)
class LimitView:
    """What a good aluminium electrolytic measures; `value` and `volts` are its print."""

    name: Markup
    value: str
    volts: str
    limits: LimitFigures
    smooths: bool


@dataclass(frozen=True, kw_only=True, slots=True)
class SmoothingView:
    """A switching output and its capacitors."""

    names: Sequence[Markup]
    figures: SmoothingFigures


@dataclass(frozen=True, kw_only=True, slots=True)
class NewPartsSheet:
    """All that is asked before and while parts are replaced."""

    cautions: Sequence[CautionView]
    anyway: Sequence[LineView]
    if_bad: Sequence[LineView]
    pieces: int
    table: str
    capacitors: Sequence[CapacitorView]
    resistors: Sequence[ResistorView]
    ratings: Sequence[RatingView]
    bases: Sequence[RatingView]
    limits: Sequence[LimitView]
    smoothing: Sequence[SmoothingView]
    loss_hz: Decimal
    markings: str
    boards: str


def new_parts_sheet(desk: Desk, machine: Machine) -> NewPartsSheet:
    """What the sheet of new parts says."""
    new = desk.shelf.workup.machines[machine.slug].new_parts
    lines = [_line(desk, line) for line in new.shopping]
    anyway = [each for each in lines if each.line.anyway]
    ratings = _ratings(desk, new, {rail.name: rail for rail in machine.rails})
    return NewPartsSheet(
        cautions=sheet_cautions(desk, machine, "boards"),
        anyway=anyway,
        if_bad=[each for each in lines if not each.line.anyway],
        pieces=sum(each.line.count for each in anyway),
        table=desk.href(urls.shopping_data(machine.slug)) if lines else "",
        capacitors=[_capacitor(desk, several) for several in alike(new.capacitors)],
        resistors=[_resistor(desk, each) for each in new.resistors],
        ratings=ratings,
        bases=list({(each.noun, each.rail.name): each for each in ratings}.values()),
        limits=_limits(desk, new),
        smoothing=[SmoothingView(names=_names(desk, each.parts), figures=each) for each in new.smoothing],
        loss_hz=LOSS_HZ,
        markings=desk.href(urls.MARKINGS),
        boards=desk.sheet("boards"),
    )


def _names(desk: Desk, refs: Sequence[str]) -> list[Markup]:
    return [desk.part(ref) for ref in refs]


def _line(desk: Desk, line: ShoppingLine) -> LineView:
    return LineView(
        line=line,
        sort=sort_words(desk, line),
        values=value_words(line),
        room=room_words(line),
        names=_names(desk, line.refs),
    )


def _capacitor(desk: Desk, several: Sequence[NewCapacitor]) -> CapacitorView:
    first = several[0]
    way, place = first.way_round, new_anchor(first.ref)
    printed = [each for each in first.marking.printed.split(" ") if each != "+"]
    polar = first.marking.marked_side is not None
    plus, minus = (rail_name(way.plus_on), rail_name(way.minus_on)) if way else ("", "")
    three = way is not None and way.three_holes
    return CapacitorView(
        anchor=place,
        title=capacitor_title(desk, first),
        names=_names(desk, [each.ref for each in several]),
        picture=new_capacitor(
            first.kind, printed, (plus, minus) if polar else None, f"{place}-drawn", three_holes=three
        ),
        marking=first.marking,
        plus=plus,
        minus=minus,
        three_holes=three,
        polar=polar,
    )


def _resistor(desk: Desk, each: NewResistor) -> ResistorView:
    place = new_anchor(each.ref)
    return ResistorView(
        anchor=place,
        title=resistor_title(each),
        name=desk.part(each.ref),
        marking=each.marking,
        pictures=[
            (
                new_resistor(one.rings, f"{place}-{len(one.rings)}-rings"),
                ", ".join(one.rings),
                quantity(one.tolerance_share, "%"),
            )
            for one in each.marking.coloured
        ],
    )


def _ratings(desk: Desk, new: NewParts, rails: Mapping[str, Rail]) -> list[RatingView]:
    found: dict[object, list[NewCapacitor]] = {}
    for each in new.capacitors:
        if each.rating and each.stress:
            found.setdefault((each.kind, each.stress.rail, each.rated_v), []).append(each)
    views = []
    for several in found.values():
        first = several[0]
        assert first.rating is not None
        assert first.stress is not None
        views.append(
            RatingView(
                names=_names(desk, [each.ref for each in several]),
                noun=NOUNS[first.kind],
                rail=rails[first.stress.rail],
                rating=first.rating,
                rated=quantity(first.rated_v, "V") if first.rated_v is not None else "",
                stress=first.stress,
                enough=first.stress.stress_share <= first.rating.used_share,
                worst_enough=first.stress.worst_stress_share <= first.rating.used_share,
            )
        )
    return views


def _limits(desk: Desk, new: NewParts) -> list[LimitView]:
    """The limits by the print of the old part; what has none has no limits."""
    smoothers = {name for each in new.smoothing for name in each.parts}
    return [
        LimitView(
            name=desk.part(each.ref),
            value=quantity(each.capacitance_f, "F"),
            volts=quantity(each.was_rated_v, "V"),
            limits=each.limits,
            smooths=each.ref in smoothers,
        )
        for each in new.capacitors
        if each.limits and each.was_rated_v is not None
    ]
