"""Whether the images of ROM chips cover the area of the memory map in which the chips answer."""

from collections.abc import Iterable
from dataclasses import dataclass

from benchsheaf.model.memory import Area
from benchsheaf.model.signals import Image


@dataclass(frozen=True, kw_only=True, slots=True)
class CoverageFigures:
    """An area and the images of its chips; `covered` is unknown where a chip's image is not described."""

    area: str
    name: str
    size_bytes: int
    images: tuple[str, ...]
    all_bytes: int
    even_bytes: int
    odd_bytes: int
    covered: str  # yes, no, unknown


def coverage_figures(areas: Iterable[Area], images: Iterable[Image]) -> tuple[CoverageFigures, ...]:
    """Each area with at least one chip whose image is described.

    An area is covered when its images add up to its size, as much for even as for odd bytes.
    """
    by_part: dict[str, list[Image]] = {}
    for image in images:
        by_part.setdefault(image.part, []).append(image)
    return tuple(_coverage(area, by_part) for area in areas if any(part in by_part for part in area.parts))


def _coverage(area: Area, by_part: dict[str, list[Image]]) -> CoverageFigures:
    own = [image for part in dict.fromkeys(area.parts) for image in by_part.get(part, ())]
    sizes = {
        kind: sum(image.size_bytes for image in own if image.covers == kind)
        for kind in ("all-bytes", "even-bytes", "odd-bytes")
    }
    fits = sum(sizes.values()) == area.size_bytes and sizes["even-bytes"] == sizes["odd-bytes"]
    known = all(part in by_part for part in area.parts)
    return CoverageFigures(
        area=area.id,
        name=area.name,
        size_bytes=area.size_bytes,
        images=tuple(image.id for image in own),
        all_bytes=sizes["all-bytes"],
        even_bytes=sizes["even-bytes"],
        odd_bytes=sizes["odd-bytes"],
        covered="unknown" if not known else "yes" if fits else "no",
    )
