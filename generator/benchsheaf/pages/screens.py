"""Pages of what machines share and no board holds: displays with the rates they lock to, media with their drives."""

from collections.abc import Sequence
from dataclasses import dataclass

from benchsheaf import urls
from benchsheaf.drawing.connector import connector
from benchsheaf.drawing.picture import Both
from benchsheaf.model.displays import Display, Medium
from benchsheaf.model.plugs import ContactRow
from benchsheaf.pages.bench.part_sections import PartBench, part_sections
from benchsheaf.pages.frame import loose_frame
from benchsheaf.pages.modes import ModeRow, display_mode_rows, rates_picture
from benchsheaf.pages.shelf import Desk
from benchsheaf.pages.views import CautionView, Named, machine_caution


@dataclass(frozen=True, kw_only=True, slots=True)
class DisplayPage:
    """A display: what it locks to, its plug, and what holds it."""

    display: Display
    data: str
    cautions: Sequence[CautionView]
    drawing: Both | None
    modes: Sequence[ModeRow]
    ranges: Both | None
    holders: Sequence[Named]
    bench: PartBench


@dataclass(frozen=True, kw_only=True, slots=True)
class MediumPage:
    """A medium: the drives that take it, and the machines that have one of them."""

    medium: Medium
    data: str
    drives: Sequence[Named]
    holders: Sequence[Named]


def display_page(desk: Desk, slug: str) -> str:
    """The page of a display, written."""
    display = desk.shelf.collection.displays[slug]
    holders = [
        Named(name=machine.name, way=desk.sheet("glance", slug=machine.slug), summary="sold with it")
        for machine in desk.shelf.collection.machines.values()
        if machine.display == slug
    ]
    modes = display_mode_rows(desk, slug)
    page = DisplayPage(
        display=display,
        data=urls.part_data("display", slug),
        cautions=[machine_caution(desk, each) for each in display.cautions],
        drawing=plug_drawing(display),
        modes=modes,
        ranges=rates_picture(display, modes),
        holders=holders,
        bench=part_sections(desk, "display", display),
    )
    return desk.printed(
        "part-display.html", frame=loose_frame(desk, "Display", display.name, designator=True), page=page
    )


def plug_drawing(display: Display) -> Both | None:
    """The picture plug contact by contact; none where it is not described."""
    if not display.plug:
        return None
    row = ContactRow(id="plug", pins=display.plug)
    return connector([row], "in the order of its contacts, not of their places", "picture-plug")


def medium_page(desk: Desk, slug: str) -> str:
    """The page of a medium, written."""
    collection = desk.shelf.collection
    medium = collection.media[slug]
    drives = [
        Named(
            name=collection.drives[each].name,
            way=desk.thing("drive", each),
            summary=desk.told(collection.drives[each].summary, ("drive", each)),
        )
        for each in medium.drives
    ]
    holders = []
    for machine in collection.machines.values():
        held = {bay.holds for outfit in machine.configurations for bay in outfit.bays}
        names = [collection.drives[each].name for each in medium.drives if each in held]
        if names:
            way = desk.sheet("drives", slug=machine.slug)
            holders.append(Named(name=machine.name, way=way, summary=f"for {' and '.join(names)}"))
    page = MediumPage(medium=medium, data=urls.part_data("medium", slug), drives=drives, holders=holders)
    return desk.printed("part-medium.html", frame=loose_frame(desk, "Medium", medium.name, designator=True), page=page)
