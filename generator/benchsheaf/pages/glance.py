"""At a glance, and boards and weak parts: what it is, and where its weak parts lie."""

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal

from benchsheaf.compute.capacitors import StressFigures
from benchsheaf.drawing.picture import Both
from benchsheaf.links import Thing
from benchsheaf.markup import Markup
from benchsheaf.model.boards import Board
from benchsheaf.model.cautions import CautionHere
from benchsheaf.model.machine import Machine
from benchsheaf.pages.key_figures import KeyFigure, key_figures
from benchsheaf.pages.part_lists import PartView, WeakView, board_drawing, part_views, weak_views
from benchsheaf.pages.recognising import MarkGroup, ViewFigure, mark_groups, view_figures
from benchsheaf.pages.shelf import Desk
from benchsheaf.pages.views import CautionView, charge_caution, machine_caution
from benchsheaf.standards import TANTALUM_SHARE


@dataclass(frozen=True, kw_only=True, slots=True)
class BoardView:
    """A board with its drawing, its weak parts and all its parts."""

    board: Board
    drawing: Both
    weak: Sequence[WeakView]
    parts: Sequence[PartView]
    all_parts: str


@dataclass(frozen=True, kw_only=True, slots=True)
class HeldView:
    """Something plugged in as delivered."""

    where: str
    way: str
    name: str
    of: Thing
    summary: str
    weak: int


@dataclass(frozen=True, kw_only=True, slots=True)
class GlanceSheet:
    """The first sheet."""

    machine: Machine
    cautions: Sequence[CautionView]
    key_figures: Sequence[KeyFigure]
    views: Sequence[ViewFigure]
    marks: Sequence[MarkGroup]
    boards: Sequence[BoardView]
    held: Sequence[HeldView]


@dataclass(frozen=True, kw_only=True, slots=True)
class HolderView:
    """The weak parts of something that is plugged in."""

    slug: str
    words: str
    name: str
    way: str
    rows: Sequence[WeakView]


@dataclass(frozen=True, kw_only=True, slots=True)
class StressRow:
    """A capacitor and how hard it is driven; `over` marks a bead above what beads should see."""

    name: Markup
    figures: StressFigures
    over: bool


@dataclass(frozen=True, kw_only=True, slots=True)
class BoardsSheet:
    """Boards and weak parts."""

    cautions: Sequence[CautionView]
    boards: Sequence[BoardView]
    other_weak: Sequence[WeakView]
    held_weak: Sequence[HolderView]
    stress: Sequence[StressRow]
    tantalum_share: Decimal = TANTALUM_SHARE


def glance_sheet(desk: Desk, machine: Machine) -> GlanceSheet:
    """What the first sheet says."""
    return GlanceSheet(
        machine=machine,
        cautions=sheet_cautions(desk, machine, "glance"),
        key_figures=key_figures(desk, machine),
        views=view_figures(machine),
        marks=mark_groups(desk, machine),
        boards=_boards(desk, machine, "boards"),
        held=_held(desk, machine),
    )


def boards_sheet(desk: Desk, machine: Machine) -> BoardsSheet:
    """What the sheet of boards and weak parts says."""
    boards = _boards(desk, machine)
    shown = {row.weak.id for board in boards for row in board.weak}
    others = [weak for weak in machine.weak_parts if weak.id not in shown]
    stress = desk.shelf.workup.machines[machine.slug].stress
    kinds = _kinds(desk, machine)
    return BoardsSheet(
        cautions=sheet_cautions(desk, machine, "boards"),
        boards=boards,
        other_weak=weak_views(desk, others, {}, ()),
        held_weak=_held_weak(desk, machine, stress),
        stress=[
            StressRow(
                name=desk.part(each.ref),
                figures=each,
                over=kinds.get(each.ref) == "tantalum" and each.stress_share > TANTALUM_SHARE,
            )
            for each in stress
        ],
    )


CHARGE_SHEETS = ("glance", "first-power", "boards", "finding", "checks", "apart")


def all_cautions(desk: Desk, machine: Machine) -> list[tuple[Thing, CautionHere]]:
    """What can hurt, with whose words say so.

    The cautions of all that is plugged in as delivered come first, then those of its display, then the machine's own.
    """
    held = dict.fromkeys((kind, slug) for _, kind, slug in held_things(desk, machine))
    told: list[tuple[Thing, Sequence[CautionHere]]] = [(thing, desk.shelf.thing(*thing).cautions) for thing in held]
    if machine.display:
        told.append((("display", machine.display), desk.shelf.collection.displays[machine.display].cautions))
    told.append((("machine", machine.slug), machine.cautions))
    return [(thing, each) for thing, several in told for each in several]


def sheet_cautions(desk: Desk, machine: Machine, sheet: str) -> list[CautionView]:
    """The cautions of one sheet: stored charge from the figures where the sheet is about it, then the machine's own."""
    own = [machine_caution(desk, each, of) for of, each in all_cautions(desk, machine) if sheet in each.sheets]
    reservoir = desk.shelf.collection.supplies[machine.supply].reservoir
    figures = desk.shelf.workup.machines[machine.slug].reservoir
    if sheet not in CHARGE_SHEETS or reservoir is None or figures is None:
        return own
    way = desk.sheet("first-power", "stored-charge")
    return [charge_caution(desk, machine.supply, reservoir, figures, way), *own]


def _boards(desk: Desk, machine: Machine, elsewhere: str | None = None) -> list[BoardView]:
    stress = desk.shelf.workup.machines[machine.slug].stress
    views = []
    for board in machine.boards:
        parts = {part.ref: part for part in board.all_parts()}
        own = [weak for weak in machine.weak_parts if any(name in parts for name in weak.parts)]
        weak = weak_views(desk, own, parts, stress, own=True)
        views.append(
            BoardView(
                board=board,
                drawing=board_drawing(
                    desk, board.size, board.parts, board.rows, weak, f"board-{board.id}", elsewhere=elsewhere
                ),
                weak=weak,
                parts=part_views(desk, board.parts, board.rows, weak),
                all_parts=desk.sheet("boards", f"board-{board.id}"),
            )
        )
    return views


def held_things(desk: Desk, machine: Machine) -> list[tuple[str, str, str]]:
    """What is plugged in as delivered: where, kind, slug."""
    delivered = machine.configurations[0]
    bays = {bay.id: bay.name for bay in machine.bays}
    found = [("Supply", "supply", machine.supply)]
    found += [(f"Slot {filled.slot}", "card", filled.holds) for filled in delivered.slots]
    found += [(bays[put.bay], "drive", put.holds) for put in delivered.bays]
    if delivered.keyboard:
        found.append(("Keyboard", "keyboard", delivered.keyboard))
    return found


def _held(desk: Desk, machine: Machine) -> list[HeldView]:
    views = []
    for where, kind, slug in held_things(desk, machine):
        thing = desk.shelf.thing(kind, slug)
        views.append(
            HeldView(
                where=where,
                way=desk.thing(kind, slug),
                name=thing.name,
                of=(kind, slug),
                summary=thing.summary,
                weak=len(thing.weak_parts),
            )
        )
    if machine.display:
        screen = desk.shelf.collection.displays[machine.display]
        of = ("display", screen.slug)
        views.append(
            HeldView(where="Screen", way=desk.thing(*of), name=screen.name, of=of, summary=screen.summary, weak=0)
        )
    return views


def _held_weak(desk: Desk, machine: Machine, stress: Sequence[StressFigures]) -> list[HolderView]:
    views = []
    for slug, kind in {slug: kind for _, kind, slug in held_things(desk, machine)}.items():
        thing = desk.shelf.thing(kind, slug)
        rows = weak_views(desk, thing.weak_parts, desk.shelf.own_parts(kind, slug), stress, f"{slug}/")
        if rows:
            words = f"the {kind}"
            views.append(HolderView(slug=slug, words=words, name=thing.name, way=desk.thing(kind, slug), rows=rows))
    return views


def _kinds(desk: Desk, machine: Machine) -> dict[str, str]:
    """What kind each part is, under the name that stress figures have for it."""
    kinds = {part.ref: part.kind for board in machine.boards for part in board.all_parts()}
    for _, kind, slug in held_things(desk, machine):
        kinds |= {f"{slug}/{part.ref}": part.kind for part in desk.shelf.parts_of(kind, slug)}
    return kinds
