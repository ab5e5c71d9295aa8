"""Drives and sources: the sheets that tell what is in which bay, and where the facts are from."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from benchsheaf import urls
from benchsheaf.links import Thing
from benchsheaf.model.displays import Medium
from benchsheaf.model.machine import Bay, Machine
from benchsheaf.model.sources import SourceEntry
from benchsheaf.pages.glance import held_things, sheet_cautions
from benchsheaf.pages.shelf import Desk
from benchsheaf.pages.views import CautionView, DriveView, drive_view


@dataclass(frozen=True, kw_only=True, slots=True)
class MediumRow:
    """A medium and those of the machine's drives that take it."""

    medium: Medium
    way: str
    drives: Sequence[str]


@dataclass(frozen=True, kw_only=True, slots=True)
class DrivesSheet:
    """The sheet about drives."""

    cautions: Sequence[CautionView]
    drives: Sequence[DriveView]
    free: Sequence[Bay]
    media: Sequence[MediumRow]


@dataclass(frozen=True, kw_only=True, slots=True)
class SourcesSheet:
    """The sheet that says where the facts are from."""

    machine: Machine
    rows: Sequence[tuple[str, Thing, SourceEntry]]
    data: str


def drives_sheet(desk: Desk, machine: Machine) -> DrivesSheet:
    """What the sheet says: the drives as delivered, and the bays that are free."""
    bays = {bay.id: bay for bay in machine.bays}
    put = machine.configurations[0].bays
    where: dict[str, list[str]] = {}
    for each in put:
        where.setdefault(each.holds, []).append(bays[each.bay].name)
    return DrivesSheet(
        cautions=sheet_cautions(desk, machine, "drives"),
        drives=[
            drive_view(desk, desk.shelf.collection.drives[slug], "; ".join(names)) for slug, names in where.items()
        ],
        free=[bay for bay in machine.bays if bay.id not in {each.bay for each in put}],
        media=list(_media(desk, machine)),
    )


def _media(desk: Desk, machine: Machine) -> Iterator[MediumRow]:
    """Every medium that one of its drives takes, in any outfit."""
    held = {bay.holds for outfit in machine.configurations for bay in outfit.bays}
    for medium in desk.shelf.collection.media.values():
        drives = [desk.shelf.collection.drives[slug].name for slug in medium.drives if slug in held]
        if drives:
            yield MediumRow(medium=medium, way=desk.thing("medium", medium.slug), drives=drives)


def sources_sheet(desk: Desk, machine: Machine) -> SourcesSheet:
    """What the sheet says: the machine's own sources, then those of what it holds."""
    rows: list[tuple[str, Thing, SourceEntry]]
    rows = [(machine.name, ("machine", machine.slug), source) for source in machine.sources]
    for kind, slug in dict.fromkeys((kind, slug) for _, kind, slug in held_things(desk, machine)):
        thing = desk.shelf.thing(kind, slug)
        rows += [(thing.name, (kind, slug), source) for source in thing.sources]
    if machine.display:
        screen = desk.shelf.collection.displays[machine.display]
        rows += [(screen.name, ("display", screen.slug), source) for source in screen.sources]
    for row in _media(desk, machine):
        rows += [(row.medium.name, ("medium", row.medium.slug), source) for source in row.medium.sources]
    return SourcesSheet(machine=machine, rows=rows, data=urls.machine_data(machine.slug))
