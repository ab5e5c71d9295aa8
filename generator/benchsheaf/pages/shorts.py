"""Where a short can be: what hangs on each rail, how to split it, and how far copper gives it away."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from decimal import Decimal

from benchsheaf.compute.power import SplitFigures, TrackFigures, track_figures
from benchsheaf.markup import Markup
from benchsheaf.model.boards import Draw, Part
from benchsheaf.model.drives import DrivePart
from benchsheaf.model.machine import Machine, Rail
from benchsheaf.pages.glance import held_things
from benchsheaf.pages.shelf import Desk
from benchsheaf.standards import FOIL_M, HUNTING_A, METER_STEP_V

WIDTHS_MM = tuple(Decimal(width) for width in ("0.3", "0.5", "1", "2"))
"""Widths of tracks that the table is worked out for. Source: common practice, a signal to a rail."""


@dataclass(frozen=True, kw_only=True, slots=True)
class HangsRow:
    """One thing, and for each rail its parts across it; None where it has nothing on that rail."""

    name: str
    way: str | None
    cells: Sequence[Sequence[Markup] | None]


@dataclass(frozen=True, kw_only=True, slots=True)
class ShortsView:
    """The section about hunting a short."""

    rails: Sequence[Rail]
    hangs: Sequence[HangsRow]
    splits: Sequence[SplitFigures]
    tracks: Sequence[TrackFigures]
    plugs: str
    foil_um: Decimal = FOIL_M * 10**6
    hunting_a: Decimal = HUNTING_A
    step_v: Decimal = METER_STEP_V


def shorts_view(desk: Desk, machine: Machine) -> ShortsView | None:
    """What is said of shorts, from what is plugged in as delivered; None where no resistance to ground is known."""
    rails = [rail for rail in machine.rails if rail.to_ground]
    if not rails:
        return None
    return ShortsView(
        rails=rails,
        hangs=list(_hangs(desk, machine, rails)),
        splits=desk.shelf.workup.machines[machine.slug].splits,
        tracks=[track_figures(width) for width in WIDTHS_MM],
        plugs=desk.sheet("power", "plug-rails"),
    )


def _hangs(desk: Desk, machine: Machine, rails: Sequence[Rail]) -> Iterator[HangsRow]:
    """The machine's own boards, then whatever it holds that has anything on a rail."""
    for board in machine.boards:
        cells = [_cell(desk, rail.name, board.all_parts(), board.draws, "") for rail in rails]
        if any(each is not None for each in cells):
            yield HangsRow(name=board.name, way=desk.sheet("boards", f"board-{board.id}"), cells=cells)
    for kind, slug in dict.fromkeys((kind, slug) for _, kind, slug in held_things(desk, machine)):
        thing = desk.shelf.thing(kind, slug)
        draws = () if kind == "supply" else getattr(thing, "draws", ())
        parts = getattr(thing, "parts", ())
        cells = [_cell(desk, rail.name, parts, draws, f"{slug}/") for rail in rails]
        if any(each is not None for each in cells):
            yield HangsRow(name=thing.name, way=desk.thing(kind, slug), cells=cells)


def _cell(
    desk: Desk, rail: str, parts: Sequence[Part | DrivePart], draws: Sequence[Draw], prefix: str
) -> Sequence[Markup] | None:
    """What stands across a rail and may be short; empty where something is only fed by it."""
    across = [part for part in parts if isinstance(part, Part) and part.across == rail]  # parts of drives name no rail
    found = [desk.part(f"{prefix}{part.ref}", brief=True) for part in across if part.kind != "test-pin"]
    fed = any(draw.rail == rail and (draw.run_a or draw.start_a) for draw in draws)
    return found if found or fed else None
