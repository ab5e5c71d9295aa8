"""Starts moment by moment: what a rail gives while things start, and whether the supply bears it for so long."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from benchsheaf.compute.power import RailFigures, StartMoment, branches, ladder
from benchsheaf.drawing.picture import Both
from benchsheaf.drawing.start_times import Lane, start_times
from benchsheaf.model.machine import Machine
from benchsheaf.model.supply import Output
from benchsheaf.pages.printing import quantity, rail_name
from benchsheaf.pages.shelf import Desk


@dataclass(frozen=True, kw_only=True, slots=True)
class MomentRow:
    """One moment: when, what it takes, and what is allowed, as a mark and in words."""

    when: str
    moment: StartMoment
    mark: str
    allowed: str


@dataclass(frozen=True, kw_only=True, slots=True)
class MomentGroup:
    """The moments of one rail of one outfit."""

    name: str
    rows: Sequence[MomentRow]


@dataclass(frozen=True, kw_only=True, slots=True)
class StartsView:
    """The starts that go over a continuous limit."""

    picture: Both
    groups: Sequence[MomentGroup]


def starts_view(desk: Desk, machine: Machine) -> StartsView | None:
    """Starts over a continuous limit as delivered and beside the way up; None where there is none."""
    outputs = {each.rail: each for each in desk.shelf.collection.supplies[machine.supply].outputs}
    way_up = {each.id for each in (*ladder(machine.configurations), *branches(machine.configurations))}
    way_up.discard(machine.configurations[0].id)
    made = desk.shelf.workup.machines[machine.slug].outfits
    lanes = [
        Lane(name=f"{outfit.name}, {rail_name(rail.rail)}", figures=rail, output=outputs[rail.rail])
        for outfit, figures in zip(machine.configurations, made, strict=True)
        if outfit.id not in way_up
        for rail in figures.power.rails
        if rail.moments and rail.start_a > rail.most_a
    ]
    if not lanes:
        return None
    groups = [MomentGroup(name=lane.name, rows=list(_rows(lane))) for lane in lanes]
    return StartsView(picture=start_times(lanes, "starts"), groups=groups)


def _rows(lane: Lane) -> Iterator[MomentRow]:
    for moment in lane.figures.moments:
        mark, allowed = _allowed(moment, lane.figures, lane.output)
        yield MomentRow(when=_when(moment), moment=moment, mark=mark, allowed=allowed)


def _when(moment: StartMoment) -> str:
    since = quantity(moment.from_s, "s")
    until = f"to {quantity(moment.until_s, 's')}" if moment.until_s is not None else "on"
    when = f"from {since} {until}"
    return f"late start, {when}" if moment.phase == "late" else when


def _allowed(moment: StartMoment, figures: RailFigures, output: Output) -> tuple[str, str]:
    """What the supply says to a moment."""
    if moment.sum_a <= output.most_a:
        return "good", f"within {quantity(output.most_a, 'A')}"
    if output.peak_a is None or moment.sum_a > output.peak_a:
        return "stop", f"no: over {quantity(output.peak_a or output.most_a, 'A')}"
    if moment.until_s is None and figures.run_a > output.most_a:
        return "stop", f"no: it stays over {quantity(output.most_a, 'A')}"
    peak = quantity(output.peak_a, "A")
    ends = [each.until_s for each in figures.moments if each.phase == moment.phase and each.sum_a > output.most_a]
    if output.peak_for_s is None or ends[-1] is None:
        return "suspect", f"under {peak}, for how long is not known"
    if ends[-1] > output.peak_for_s:
        return "stop", f"no: {peak} for {quantity(output.peak_for_s, 's')} only"
    return "good", f"under {peak}, which may last {quantity(output.peak_for_s, 's')}"
