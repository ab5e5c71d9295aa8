"""Pages of what machines share, each with all that holds it."""

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass

from benchsheaf import urls
from benchsheaf.drawing.drive import drive_pictures
from benchsheaf.drawing.picture import Both
from benchsheaf.model.boards import Draw, Pin
from benchsheaf.model.cards import Bus, Card, Keyboard
from benchsheaf.model.drives import Drive
from benchsheaf.model.memory import Area
from benchsheaf.model.sources import SourceEntry
from benchsheaf.model.supply import Output, Supply
from benchsheaf.pages.bench.part_sections import PartBench, part_sections
from benchsheaf.pages.cards import BusView, CardView, bus_view, card_view
from benchsheaf.pages.frame import loose_frame
from benchsheaf.pages.glance import held_things
from benchsheaf.pages.modes import ModeRow, card_mode_rows
from benchsheaf.pages.page import Page
from benchsheaf.pages.part_lists import (
    PartView,
    WeakView,
    board_drawing,
    drive_part_views,
    is_drawn,
    part_views,
    weak_views,
)
from benchsheaf.pages.screens import display_page, medium_page
from benchsheaf.pages.shelf import Desk, Holding, Shelf
from benchsheaf.pages.views import (
    CautionView,
    DriveView,
    Named,
    ReservoirView,
    charge_caution,
    drive_view,
    machine_caution,
    reservoir_view,
)


@dataclass(frozen=True, kw_only=True, slots=True)
class PartPage:
    """Something shared; what a kind does not have is empty."""

    name: str
    summary: str
    data: str
    holders: Sequence[Named]
    sources: Sequence[SourceEntry]
    cautions: Sequence[CautionView] = ()
    draws: Sequence[Draw] = ()
    weak: Sequence[WeakView] = ()
    parts: Sequence[PartView] = ()
    drawing: Both | None = None
    supply: Supply | None = None
    outputs: Sequence[Output] = ()
    reservoir: ReservoirView | None = None
    storage: DriveView | None = None
    areas: Sequence[Area] = ()
    modes: Sequence[ModeRow] = ()
    plug: Sequence[Pin] = ()
    plug_words: str = ""
    seen: str | None = None
    bench: PartBench | None = None
    speakers: Sequence[Named] = ()
    card: CardView | None = None
    bus: BusView | None = None


LOOSE: Mapping[str, Callable[[Desk, str], str]] = {"display": display_page, "medium": medium_page}
"""Kinds that neither draw from a rail nor hold parts."""


def part_pages(shelf: Shelf) -> Iterator[Page]:
    """A page for each thing that machines share."""
    for kind, slug in sorted(shelf.things):
        if kind in urls.PART_FOLDERS:
            yield _page(shelf, kind, slug)


def _page(shelf: Shelf, kind: str, slug: str) -> Page:
    here = urls.part(kind, slug)
    name = shelf.name_of(kind, slug)

    def written() -> str:
        desk = shelf.desk(here, own=(kind, slug))
        if kind in LOOSE:
            return LOOSE[kind](desk, slug)
        frame = loose_frame(desk, kind.capitalize(), name, designator=kind != "bus")
        if kind == "bus":
            page = _bus(desk, shelf.collection.buses[slug])
        else:
            page = _holding(desk, kind, shelf.thing(kind, slug))
        return desk.printed("part.html", frame=frame, page=page)

    edit = shelf.edit_path((kind, slug), "name")
    return Page(address=here, title=name, written=written, edit=edit)


def _holders(desk: Desk, kind: str, slug: str) -> list[Named]:
    """Every machine that points at a thing, each once, with the place where it sits as delivered."""
    owners = dict.fromkeys(pointer.thing for pointer in desk.shelf.links.held_by.get((kind, slug), ()))
    return [
        Named(
            name=desk.shelf.name_of(*owner),
            way=desk.thing(*owner),
            summary=_place(desk, owner[1], kind, slug),
        )
        for owner in owners
        if owner[0] == "machine" and owner in desk.shelf.things
    ]


def _place(desk: Desk, machine: str, kind: str, slug: str) -> str:
    held = held_things(desk, desk.shelf.collection.machines[machine])
    places = [where for where, other, name in held if (other, name) == (kind, slug)]
    return ", ".join(places) + " as delivered" if places else "its bus" if kind == "bus" else "in other outfits"


def _bus(desk: Desk, bus: Bus) -> PartPage:
    cards = [card for card in desk.shelf.collection.cards.values() if card.bus == bus.slug]
    return PartPage(
        name=bus.name,
        summary=bus.summary,
        data=urls.part_data("bus", bus.slug),
        holders=_holders(desk, "bus", bus.slug),
        sources=bus.sources,
        bus=bus_view(desk, bus),
        speakers=[Named(name=card.name, way=desk.thing("card", card.slug)) for card in cards],
    )


def _holding(desk: Desk, kind: str, thing: Holding) -> PartPage:
    held_by = {pointer.thing[1] for pointer in desk.shelf.links.held_by.get((kind, thing.slug), ())}
    known = desk.shelf.workup.stress
    stress = [
        figures
        for slug in sorted(held_by & known.keys())
        for figures in known[slug]
        if figures.ref.startswith(f"{thing.slug}/")
    ]
    drawn = is_drawn(thing)
    parts = desk.shelf.own_parts(kind, thing.slug)
    weak = weak_views(desk, thing.weak_parts, parts, stress, f"{thing.slug}/", own=drawn)
    supply = thing if isinstance(thing, Supply) else None
    return PartPage(
        name=thing.name,
        summary=thing.summary,
        data=urls.part_data(kind, thing.slug),
        holders=_holders(desk, kind, thing.slug),
        sources=thing.sources,
        cautions=[*_charge(desk, supply), *(machine_caution(desk, each) for each in thing.cautions)],
        draws=thing.draws,
        weak=weak,
        parts=_parts(desk, kind, thing, weak),
        drawing=_drawing(desk, thing, weak) if drawn else None,
        supply=supply,
        outputs=supply.outputs if supply else (),
        reservoir=_reservoir(desk, supply),
        storage=drive_view(desk, thing, weak=not drawn) if isinstance(thing, Drive) else None,
        card=card_view(desk, thing) if isinstance(thing, Card) else None,
        areas=thing.areas if isinstance(thing, Card) else (),
        modes=card_mode_rows(desk, thing) if isinstance(thing, Card) else (),
        plug=_plug(thing),
        plug_words="Its lead" if isinstance(thing, Keyboard) else "Its supply plug",
        seen=thing.seen if isinstance(thing, Drive) else None,
        bench=part_sections(desk, kind, thing),
    )


def _drawing(desk: Desk, thing: Holding, weak: Sequence[WeakView]) -> Both | None:
    if isinstance(thing, Drive):
        refs = {ref: ref for view in weak for ref in view.lights}
        return drive_pictures(thing, refs, "drive", {part.ref: f"#{part.ref}" for part in thing.parts})
    if isinstance(thing, Card) and thing.size:
        back, seen = "top edge", "component side"
        return board_drawing(desk, thing.size, thing.parts, (), weak, "board", back, seen)
    if isinstance(thing, Supply) and thing.size:
        return board_drawing(desk, thing.size, thing.parts, (), weak, "board")
    return None


def _parts(desk: Desk, kind: str, thing: Holding, weak: Sequence[WeakView]) -> Sequence[PartView]:
    if isinstance(thing, Drive):
        return drive_part_views(desk, thing.parts, weak)
    return part_views(desk, desk.shelf.parts_of(kind, thing.slug), (), weak)


def _plug(thing: Holding) -> Sequence[Pin]:
    if isinstance(thing, Keyboard):
        return thing.lead
    return thing.plug if isinstance(thing, Drive) else ()


def _charge(desk: Desk, supply: Supply | None) -> list[CautionView]:
    figures = desk.shelf.workup.supplies[supply.slug].reservoir if supply else None
    if supply is None or supply.reservoir is None or figures is None:
        return []
    way = desk.thing("supply", supply.slug, "stored-charge")
    return [charge_caution(desk, supply.slug, supply.reservoir, figures, way)]


def _reservoir(desk: Desk, supply: Supply | None) -> ReservoirView | None:
    figures = desk.shelf.workup.supplies[supply.slug].reservoir if supply else None
    if supply is None or supply.reservoir is None or figures is None:
        return None
    return reservoir_view(desk, supply.reservoir, figures, supply.slug)
