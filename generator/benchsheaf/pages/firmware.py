"""Firmware: what each ROM chip must hold, by its sums, and whether the images cover the memory map."""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

from benchsheaf.compute.firmware import CoverageFigures
from benchsheaf.markup import Markup
from benchsheaf.model.machine import Machine
from benchsheaf.model.memory import Area
from benchsheaf.model.signals import Image
from benchsheaf.pages.glance import sheet_cautions
from benchsheaf.pages.shelf import Desk
from benchsheaf.pages.views import CautionView


@dataclass(frozen=True, kw_only=True, slots=True)
class ImageView:
    """One image with the chip that holds it."""

    anchor: str
    image: Image
    part: Markup


@dataclass(frozen=True, kw_only=True, slots=True)
class CoverageRow:
    """An area of the map, its first address, and whether the images cover it."""

    base: str
    figures: CoverageFigures
    chips: Sequence[Markup]


@dataclass(frozen=True, kw_only=True, slots=True)
class FirmwareSheet:
    """The sheet about firmware."""

    cautions: Sequence[CautionView]
    images: Sequence[ImageView]
    coverage: Sequence[CoverageRow]
    map_way: str | None


def firmware_sheet(desk: Desk, machine: Machine) -> FirmwareSheet:
    """What the sheet says: the machine's own chips, then those of the cards as delivered."""
    memory = machine.memory
    images = image_views(desk, machine.firmware)
    areas = memory.areas if memory else ()
    rows = list(coverage_rows(desk, areas, desk.shelf.workup.machines[machine.slug].coverage, machine.firmware))
    for slug in dict.fromkeys(slot.holds for slot in machine.configurations[0].slots):
        card = desk.shelf.collection.cards[slug]
        images += image_views(desk, card.firmware, f"{slug}/")
        coverage = desk.shelf.workup.cards[slug].coverage
        rows += coverage_rows(desk, card.areas, coverage, card.firmware, f"{slug}/")
    return FirmwareSheet(
        cautions=sheet_cautions(desk, machine, "firmware"),
        images=images,
        coverage=rows,
        map_way=desk.sheet("memory", "map") if memory and rows else None,
    )


def image_views(desk: Desk, images: Iterable[Image], prefix: str = "", *, brief: bool = False) -> list[ImageView]:
    """Images with their chips; `prefix` is SLUG/ for those of something held, `brief` leaves out whose they are."""
    stem = f"image-{prefix.replace('/', '-')}" if prefix and not brief else "image-"
    return [
        ImageView(anchor=f"{stem}{each.id}", image=each, part=desk.part(prefix + each.part, brief=brief))
        for each in images
    ]


def coverage_rows(
    desk: Desk,
    areas: Iterable[Area],
    coverage: Iterable[CoverageFigures],
    images: Iterable[Image],
    prefix: str = "",
    *,
    brief: bool = False,
) -> Iterator[CoverageRow]:
    """Areas that hold images, with the chips of these; `prefix` and `brief` as for `image_views`."""
    bases = {area.id: area.base for area in areas}
    chips = {image.id: image.part for image in images}
    for each in coverage:
        parts = dict.fromkeys(chips[name] for name in each.images)
        yield CoverageRow(
            base=bases[each.area],
            figures=each,
            chips=[desk.part(prefix + name, brief=brief) for name in parts],
        )
