"""Power: does the supply carry it, rail by rail, and what needs a resistor."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from decimal import Decimal

from benchsheaf.compute.power import PowerFigures, RailFigures, ResistorFigures
from benchsheaf.compute.workup import MachineWorkup, OutfitWorkup, outfit_loads
from benchsheaf.drawing.load_bars import load_bars
from benchsheaf.drawing.picture import Both
from benchsheaf.markup import Markup
from benchsheaf.model.machine import Configuration, DummyLoad, Machine, Rail
from benchsheaf.model.supply import Output, Supply
from benchsheaf.pages.contacts import PlugRails, SocketView, plug_rails, socket_view
from benchsheaf.pages.first_power import beside_the_ladder
from benchsheaf.pages.glance import sheet_cautions
from benchsheaf.pages.printing import figure, quantity, rail_anchor, rail_name
from benchsheaf.pages.settings import setting_words
from benchsheaf.pages.shelf import Desk
from benchsheaf.pages.views import CautionView


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
class Verdict:
    """Whether an outfit is carried, as a mark's name and in words."""

    mark: str
    says: str


@dataclass(frozen=True, kw_only=True, slots=True)
class OutfitRow:
    """One outfit with its verdict."""

    outfit: Configuration
    workup: OutfitWorkup
    after: str | None
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
    """The largest resistor that would still do for an outfit."""

    outfit: str
    figures: ResistorFigures


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
    resistors: Sequence[ResistorRow]
    least: Sequence[LeastRow]
    plugs: Sequence[SocketView]
    plug_rails: Sequence[PlugRails]

    def starts(self, rail: str) -> bool:
        """Whether anything takes more from a rail while it starts, so that the table needs a column for it."""
        return any(each.rail == rail and each.start_a > each.run_a for each in self.power.rails)


def power_sheet(desk: Desk, machine: Machine) -> PowerSheet:
    """What the sheet says."""
    workup = desk.shelf.workup.machines[machine.slug]
    supply = desk.shelf.collection.supplies[machine.supply]
    delivered = workup.outfits[0].power
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
        aside=beside_the_ladder(machine.configurations),
        resistors=[
            ResistorRow(outfit=outfit.name, load=load, figures=figures)
            for outfit, made in zip(machine.configurations, workup.outfits, strict=True)
            for load, figures in zip(outfit.loads, made.power.resistors, strict=True)
        ],
        least=_least(machine, workup),
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
    names = {outfit.id: outfit.name for outfit in machine.configurations}
    return [
        OutfitRow(
            outfit=outfit,
            workup=made,
            after=names.get(outfit.before or ""),
            settings=[setting_words(desk, each) for each in outfit.set],
            rests=[desk.shelf.collection.drives[put.holds].name for put in outfit.bays if put.bay in outfit.rests],
            words=_verdict(made.power, supply),
        )
        for outfit, made in zip(machine.configurations, workup.outfits, strict=True)
        if outfit is not machine.configurations[0]
    ]


def _verdict(power: PowerFigures, supply: Supply) -> Verdict:
    """The verdict with all its reasons: overloads before a missing least load."""
    outputs = {output.rail: output for output in supply.outputs}
    over = [words for rail in power.rails if rail.carried == "no" for words in _over(rail, outputs[rail.rail])]
    if power.run_w > supply.together_w:
        over.append(f"running {figure(power, 'run_w')} over {quantity(supply.together_w, 'W')}")
    if over:
        return Verdict(mark="stop", says=f"no: {'; '.join(over)}")
    for rail in power.rails:
        if not rail.least_met:
            least = outputs[rail.rail].least_a
            needs = quantity(least, "A") if least is not None else ""
            words = f"{rail_name(rail.rail)} {figure(rail, 'least_a')} under the least, {needs}: it may tick"
            return Verdict(mark="weak", says=words)
    return Verdict(mark="good", says="yes") if power.carried == "yes" else Verdict(mark="suspect", says="not known")


def _over(rail: RailFigures, output: Output) -> Iterator[str]:
    """What a rail takes too much of: running, starting, or for too long."""
    name, peak = rail_name(rail.rail), output.peak_a or output.most_a
    if rail.run_a > output.most_a:
        yield f"{name} running {figure(rail, 'run_a')} over {quantity(output.most_a, 'A')}"
    if rail.start_a > peak:
        yield f"{name} starting {figure(rail, 'start_a')} over {quantity(peak, 'A')}"
    elif rail.run_a <= output.most_a and rail.over_for_s is not None and output.peak_for_s is not None:
        yield f"{name} over its limit for {figure(rail, 'over_for_s', 0)}, more than {quantity(output.peak_for_s, 's')}"


def _least(machine: Machine, workup: MachineWorkup) -> list[LeastRow]:
    supply = [LeastRow(outfit="The supply alone", figures=each) for each in workup.supply.smallest_loads]
    outfits = [
        LeastRow(outfit=outfit.name, figures=rail.wanted)
        for outfit, made in zip(machine.configurations, workup.outfits, strict=True)
        for rail in made.power.rails
        if rail.wanted
    ]
    return supply + outfits
