"""Whether images fit their chips, cover their area, and have sums of the right length."""

from collections.abc import Iterator, Mapping, Sequence

from benchsheaf.compute.firmware import CoverageFigures
from benchsheaf.compute.workup import CardWorkup
from benchsheaf.mistakes import Code, Mistake
from benchsheaf.model.boards import Part
from benchsheaf.model.cards import Card
from benchsheaf.model.signals import Image
from benchsheaf.quantities import printed_binary
from benchsheaf.rules.scene import MachineScene, PartScene, Scene
from benchsheaf.standards import BITS_A_BYTE

SENSE_65 = Code(
    id="SENSE-65",
    meaning="The images of an area do not cover it.",
    words="The images of {area} have {sizes}; the area has {size}, and all of it must be covered, even and odd "
    "bytes. Mend `covers` or `size`.",
    example={"area": "Start ROM", "sizes": "32 KiB of even bytes", "size": "64 KiB"},
)
SENSE_66 = Code(
    id="SENSE-66",
    meaning="An image is larger than its chip.",
    words="{part} holds {holds}, and this image has {size}. One of them is wrong.",
    example={"part": "N20", "holds": "32 KiB", "size": "64 KiB"},
)
SENSE_59 = Code(
    id="SENSE-59",
    meaning="A sum has too many or too few digits.",
    words="This sum has {wanted} hexadecimal digits, noughts in front too, for example `{example}`.",
    example={"wanted": "4", "example": "03A0"},
)

DIGITS: Mapping[str, tuple[int, str]] = {
    "sum_8": (2, "0C"),
    "sum_16": (4, "03A0"),
    "crc_16": (4, "03A0"),
    "crc_32": (8, "0012B7C4"),
}
"""How many digits each sum has, and one as it may look."""


def machine_firmware_mistakes(scene: MachineScene) -> Iterator[Mistake]:
    """Images of a machine's own chips."""
    parts = [part for board in scene.machine.boards for part in board.all_parts()]
    yield from _mistakes(scene, scene.machine.firmware, parts, scene.workup.coverage)


def card_firmware_mistakes(scene: PartScene) -> Iterator[Mistake]:
    """Images of a card's chips; nothing for other kinds."""
    if isinstance(scene.part, Card) and isinstance(scene.workup, CardWorkup):
        yield from _mistakes(scene, scene.part.firmware, scene.part.parts, scene.workup.coverage)


def _mistakes(
    scene: Scene, images: Sequence[Image], parts: Sequence[Part], coverage: Sequence[CoverageFigures]
) -> Iterator[Mistake]:
    holds = {part.ref: part.holds_bits for part in parts}
    oversized = set()
    for index, image in enumerate(images):
        for name, (digits, example) in DIGITS.items():
            written = getattr(image, name)
            if written is not None and len(written) != digits:
                yield scene.mistake(SENSE_59, "firmware", index, name, wanted=str(digits), example=example)
        bits = holds.get(image.part)
        if bits is not None and image.size_bytes * BITS_A_BYTE > bits:
            oversized.add(image.id)
            words = {"holds": printed_binary(bits // BITS_A_BYTE), "size": printed_binary(image.size_bytes)}
            yield scene.mistake(SENSE_66, "firmware", index, "size", part=image.part, **words)
    for area in coverage:
        if area.covered == "no" and not oversized & set(area.images):
            last = max(place for place, image in enumerate(images) if image.id in area.images)
            words = {"area": area.name, "sizes": _sizes(area), "size": printed_binary(area.size_bytes)}
            yield scene.mistake(SENSE_65, "firmware", last, "size", **words)


def _sizes(area: CoverageFigures) -> str:
    told = ((area.all_bytes, "all bytes"), (area.even_bytes, "even bytes"), (area.odd_bytes, "odd bytes"))
    return " and ".join(f"{printed_binary(size)} of {words}" for size, words in told if size)
