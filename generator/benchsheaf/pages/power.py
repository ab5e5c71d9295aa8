"""Power: does the supply carry it, rail by rail, and what needs a resistor."""

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal

from benchsheaf.compute.power import (
    LeastLoadFigures,
    PowerFigures,
    RailFigures,
    ResistorFigures,
    branches,
    high_end,
    ladder,
    low_end,
)
from benchsheaf.compute.workup import MachineWorkup, OutfitWorkup, outfit_loads
from benchsheaf.drawing.load_bars import load_bars
from benchsheaf.drawing.picture import Both
from benchsheaf.markup import Markup
from benchsheaf.model.machine import Configuration, DummyLoad, Machine, Rail
from benchsheaf.model.supply import Output, Supply
from benchsheaf.pages.carried import Verdict, verdict
from benchsheaf.pages.contacts import PlugRails, SocketView, plug_rails, socket_view
from benchsheaf.pages.glance import sheet_cautions
from benchsheaf.pages.printing import figure, quantity, rail_anchor, rail_name
from benchsheaf.pages.settings import setting_words
from benchsheaf.pages.sheets import SHEETS_BY_NAME
from benchsheaf.pages.shelf import Desk
from benchsheaf.pages.starting import StartsView, starts_view
from benchsheaf.pages.views import CautionView
from benchsheaf.standards import LARGEST_BODY_W


@dataclass(frozen=True, kw_only=True, slots=True)
class LoadRow:
    """One load, rail by rail: running and starting; None where it takes nothing."""

    name: str
    way: str | None
    cells: tuple[tuple[Decimal | None, Decimal | None], ...]


@dataclass(frozen=True, kw_only=True, slots=True)
class LimitRow:
    """One rail with its window, its limits and what it bears."""

    anchor: str
    rail: Rail
    output: Output
    figures: RailFigures


@dataclass(frozen=True, kw_only=True, slots=True)
class OutfitRow:
    """One outfit with its verdict."""

    outfit: Configuration
    workup: OutfitWorkup
    settings: Sequence[Markup]
    rests: Sequence[str]
    words: Verdict


@dataclass(frozen=True, kw_only=True, slots=True)
class ResistorRow:
    """A load resistor of one outfit."""

    outfit: str
    load: DummyLoad
    figures: ResistorFigures


@dataclass(frozen=True, kw_only=True, slots=True)
class LeastRow:
    """The fewest resistors that would do for an outfit, in words, with how they were found."""

    outfit: str
    figures: LeastLoadFigures
    low_v: Decimal
    high_v: Decimal
    chosen: str
    unmeasured: str


@dataclass(frozen=True, kw_only=True, slots=True)
class PowerSheet:
    """The sheet about power."""

    cautions: Sequence[CautionView]
    verdict: str
    reasons: str
    power: PowerFigures
    bars: Both
    rows: Sequence[LoadRow]
    limits: Sequence[LimitRow]
    supply: Supply
    supply_way: str
    workup: MachineWorkup
    outfits: Sequence[OutfitRow]
    aside: Sequence[Configuration]
    way_up: str | None
    starts: StartsView | None
    loaded: bool
    resistors: Sequence[ResistorRow]
    least: Sequence[LeastRow]
    plugs: Sequence[SocketView]
    plug_rails: Sequence[PlugRails]
    largest_body_w: Decimal = LARGEST_BODY_W

    def takes_more(self, rail: str) -> bool:
        """Whether anything takes more from a rail while it starts, so that the table needs a column for it."""
        return any(each.rail == rail and each.start_a > each.run_a for each in self.power.rails)


def power_sheet(desk: Desk, machine: Machine) -> PowerSheet:
    """What the sheet says."""
    workup = desk.shelf.workup.machines[machine.slug]
    supply = desk.shelf.collection.supplies[machine.supply]
    delivered = workup.outfits[0].power
    least = _least(machine, workup)
    rails = {rail.name: rail for rail in machine.rails}
    outputs = {output.rail: output for output in supply.outputs}
    return PowerSheet(
        cautions=sheet_cautions(desk, machine, "power"),
        verdict=VERDICTS[delivered.carried] if delivered.run_w else NO_LOADS,
        reasons=_reasons(delivered, supply) if delivered.run_w else "",
        power=delivered,
        bars=load_bars(delivered, supply, machine.rails, "bars"),
        rows=_load_rows(desk, machine, delivered),
        limits=[
            LimitRow(
                anchor=rail_anchor(each.rail),
                rail=rails[each.rail],
                output=outputs[each.rail],
                figures=each,
            )
            for each in delivered.rails
        ],
        supply=supply,
        supply_way=desk.thing("supply", supply.slug),
        workup=workup,
        outfits=_outfits(desk, machine, workup, supply),
        aside=_aside(machine),
        starts=starts_view(desk, machine),
        way_up=None if SHEETS_BY_NAME["ladder"].wanted(machine, desk.shelf.collection) else desk.sheet("ladder"),
        loaded=bool(least) or any(outfit.loads for outfit in machine.configurations),
        resistors=_resistors(machine, workup),
        least=least,
        plugs=[socket_view(desk, each) for each in machine.connectors],
        plug_rails=list(plug_rails(desk, machine, delivered)),
    )


NO_LOADS = "What is plugged in draws nothing that is described yet, so nothing is said about the supply."
VERDICTS = {
    "yes": "As delivered the supply carries it.",
    "no": "As delivered the supply does not carry it.",
    "unknown": "Whether the supply carries it is not known.",
}


def _reasons(power: PowerFigures, supply: Supply) -> str:
    says = f"Running {figure(power, 'run_w')} of {quantity(supply.together_w, 'W')}."
    says += f" Starting {figure(power, 'start_w')}."
    for rail in power.rails:
        output = next(each for each in supply.outputs if each.rail == rail.rail)
        if rail.start_a > rail.most_a and output.peak_a is not None and output.peak_for_s is not None:
            over = f"for {figure(rail, 'over_for_s', 0)}" if rail.over_for_s is not None else "for a time not known"
            says += (
                f" {rail_name(rail.rail)} then takes {figure(rail, 'start_a')}, {figure(rail, 'start_share', 1)} of "
                f"its continuous limit, {over}; it bears {quantity(output.peak_a, 'A')} for "
                f"{quantity(output.peak_for_s, 's')}."
            )
    return says


def _load_rows(desk: Desk, machine: Machine, power: PowerFigures) -> list[LoadRow]:
    rows = []
    for load in outfit_loads(machine.configurations[0], machine, desk.shelf.collection):
        cells: list[tuple[Decimal | None, Decimal | None]] = []
        for rail in power.rails:
            share = next((each for each in rail.shares if each.name == load.name), None)
            cells.append((share.run_a, share.start_a) if share else (None, None))
        way = desk.thing(load.kind, load.slug) if load.kind and load.slug else None
        rows.append(LoadRow(name=load.name, way=way, cells=tuple(cells)))
    return rows


def _outfits(desk: Desk, machine: Machine, workup: MachineWorkup, supply: Supply) -> list[OutfitRow]:
    """The outfits beside the way up."""
    told_there = _on_the_way(machine)
    return [
        OutfitRow(
            outfit=outfit,
            workup=made,
            settings=[setting_words(desk, each) for each in outfit.set],
            rests=[desk.shelf.collection.drives[put.holds].name for put in outfit.bays if put.bay in outfit.rests],
            words=verdict(made.power, supply),
        )
        for outfit, made in zip(machine.configurations, workup.outfits, strict=True)
        if outfit.id not in told_there and outfit is not machine.configurations[0]
    ]


def _on_the_way(machine: Machine) -> set[str]:
    """The rungs and what stands on them: the sheet about the way up tells of these. Without rungs there is none."""
    way = (*ladder(machine.configurations), *branches(machine.configurations))
    return {outfit.id for outfit in way} if len(way) > 1 else set()


def _aside(machine: Machine) -> list[Configuration]:
    """Outfits with words of their own that stand on no rung; the others are told of on the way up."""
    others = [outfit for outfit in machine.configurations if outfit.id not in _on_the_way(machine)]
    return [outfit for outfit in others if outfit.plug or outfit.expect or outfit.go or outfit.stop]


def _resistors(machine: Machine, workup: MachineWorkup) -> list[ResistorRow]:
    """The load resistors of outfits that are not on the way up."""
    told_there = _on_the_way(machine)
    return [
        ResistorRow(outfit=outfit.name, load=load, figures=figures)
        for outfit, made in zip(machine.configurations, workup.outfits, strict=True)
        if outfit.id not in told_there
        for load, figures in zip(outfit.loads, made.power.resistors, strict=True)
    ]


def resistor_words(figures: ResistorFigures) -> str:
    """A resistor, or several like ones: `2 of 7.5 Ω side by side, 50 W each`."""
    body = f"{quantity(figures.body_w, 'W')} body" if figures.body_w is not None else "no body is sold"
    one = quantity(figures.piece_ohm, "ohm")
    if figures.pieces == 1:
        return f"{one}, {body}"
    how = "in a row" if figures.joined == "series" else "side by side"
    return f"{figures.pieces} of {one} {how}, {body} each"


def _least(machine: Machine, workup: MachineWorkup) -> list[LeastRow]:
    rails = {rail.name: rail for rail in machine.rails}
    wanted = [("The supply alone", each) for each in workup.supply.smallest_loads]
    wanted += [
        (outfit.name, rail.wanted)
        for outfit, made in zip(machine.configurations, workup.outfits, strict=True)
        for rail in made.power.rails
        if rail.wanted
    ]
    return [
        LeastRow(
            outfit=outfit,
            figures=each,
            low_v=low_end(rails[each.rail]),
            high_v=high_end(rails[each.rail]),
            chosen=resistor_words(each.chosen),
            unmeasured=resistor_words(each.unmeasured),
        )
        for outfit, each in wanted
    ]
