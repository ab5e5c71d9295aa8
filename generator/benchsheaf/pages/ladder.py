"""Bringing it up: rung by rung, what is plugged, what to expect, and when to go on or stop."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from benchsheaf.compute.power import PowerFigures, RailFigures, branches, ladder
from benchsheaf.compute.workup import OutfitWorkup
from benchsheaf.drawing.ladder import ladder_picture
from benchsheaf.drawing.picture import Both
from benchsheaf.drawing.rung_panels import Rung
from benchsheaf.markup import Markup
from benchsheaf.model.machine import Configuration, Machine, Rail
from benchsheaf.model.supply import Output, Supply
from benchsheaf.pages.carried import Verdict, verdict
from benchsheaf.pages.first_power import probes
from benchsheaf.pages.glance import sheet_cautions
from benchsheaf.pages.power import resistor_words
from benchsheaf.pages.printing import figure, quantity, rail_name
from benchsheaf.pages.settings import setting_words
from benchsheaf.pages.sheets import SHEETS_BY_NAME
from benchsheaf.pages.shelf import Desk
from benchsheaf.pages.views import CautionView


@dataclass(frozen=True, kw_only=True, slots=True)
class RungRail:
    """One rail of a rung: what it takes, and by what its least load is met, as a mark and in words."""

    rail: Rail
    figures: RailFigures
    mark: str
    met: str


@dataclass(frozen=True, kw_only=True, slots=True)
class RungView:
    """One rung, or an outfit that stands on one: `after` says on which."""

    outfit: Configuration
    after: str | None
    power: PowerFigures
    rails: Sequence[RungRail]
    starts: bool
    warm: Sequence[str]
    settings: Sequence[Markup]
    rests: Sequence[str]
    words: Verdict


@dataclass(frozen=True, kw_only=True, slots=True)
class LadderSheet:
    """The sheet about the way up."""

    cautions: Sequence[CautionView]
    picture: Both
    probes: str
    ripples: str
    rungs: Sequence[RungView]
    branches: Sequence[RungView]
    first_power: str
    sounds: str | None
    resistors: str | None


def ladder_sheet(desk: Desk, machine: Machine) -> LadderSheet:
    """What the sheet says, from the lowest rung to the machine as delivered."""
    made = {each.id: each for each in desk.shelf.workup.machines[machine.slug].outfits}
    supply = desk.shelf.collection.supplies[machine.supply]
    rungs = ladder(machine.configurations)
    ripples = [f"{rail_name(rail.name)} {quantity(rail.ripple_v, 'V')}" for rail in machine.rails if rail.ripple_v]
    wanted = {name: SHEETS_BY_NAME[name].wanted(machine, desk.shelf.collection) for name in ("beeps", "first-power")}
    return LadderSheet(
        cautions=sheet_cautions(desk, machine, "ladder"),
        picture=ladder_picture([Rung(name=each.name, power=made[each.id].power) for each in rungs], supply, "ladder"),
        probes=probes(desk, machine),
        ripples=", ".join(ripples),
        rungs=[_rung(desk, machine, each, made[each.id], supply) for each in rungs],
        branches=[_rung(desk, machine, each, made[each.id], supply) for each in branches(machine.configurations)],
        first_power=desk.sheet("first-power"),
        sounds=None if wanted["beeps"] else desk.sheet("beeps"),
        resistors=desk.sheet("power", "resistors") if any(each.loads for each in machine.configurations) else None,
    )


def _rung(desk: Desk, machine: Machine, outfit: Configuration, made: OutfitWorkup, supply: Supply) -> RungView:
    names = {each.id: each.name for each in machine.configurations}
    rails = {rail.name: rail for rail in machine.rails}
    outputs = {output.rail: output for output in supply.outputs}
    return RungView(
        outfit=outfit,
        after=names.get(outfit.before or ""),
        power=made.power,
        rails=[_rail(rails[each.rail], each, outputs[each.rail], outfit) for each in made.power.rails],
        starts=any(each.cold_start_a > each.cold_a for each in made.power.rails),
        warm=list(_warm(made.power)),
        settings=[setting_words(desk, each) for each in outfit.set],
        rests=[desk.shelf.collection.drives[put.holds].name for put in outfit.bays if put.bay in outfit.rests],
        words=verdict(made.power, supply),
    )


def _rail(rail: Rail, figures: RailFigures, output: Output, outfit: Configuration) -> RungRail:
    least = quantity(output.least_a, "A") if output.least_a else ""
    on_it = " and ".join(quantity(each.resistance_ohm, "ohm") for each in outfit.loads if each.rail == rail.name)
    if figures.met_by == "itself":
        more = f"; {on_it} stays on it" if on_it else ""
        return RungRail(rail=rail, figures=figures, mark="good", met=f"{least}: by itself{more}")
    if figures.met_by == "resistor":
        return RungRail(rail=rail, figures=figures, mark="good", met=f"{least}: by {on_it}")
    if figures.met_by == "unneeded":
        return RungRail(rail=rail, figures=figures, mark="", met="none needed")
    wanted = f": wants {resistor_words(figures.wanted.chosen)}" if figures.wanted else ""
    return RungRail(rail=rail, figures=figures, mark="weak", met=f"{least} not met{wanted}")


def _warm(power: PowerFigures) -> Iterator[str]:
    """What changes when the fan joins."""
    for rail in power.rails:
        if rail.run_a > rail.cold_a:
            starting = f", starting {figure(rail, 'start_a')}" if rail.start_a > rail.run_a else ""
            yield f"{rail_name(rail.rail)} {figure(rail, 'run_a')}{starting}"
    if power.run_w > power.cold_w:
        yield f"together {figure(power, 'run_w', 1)}"
