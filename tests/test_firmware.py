"""The images of the demonstration, made anew by the rule of its notes, have the sums that its descriptions give."""

import binascii
import zlib
from pathlib import Path

import pytest

from benchsheaf.model.signals import Image
from benchsheaf.site import Judgement, judgement

# Notes of the machine, section 9, and of the shared parts, section 5: chip, seed, size in bytes.
IMAGES = (("N20", 1985, 32768), ("N21", 2085, 32768), ("N305", 301, 8192))


def made_anew(seed: int, size: int) -> bytes:
    """Notes, section 9: x = (x*1103515245+12345) mod 2^31 from the seed, a byte of each; the last makes the sum 00."""
    made = bytearray()
    x = seed
    for _ in range(size):
        x = (x * 1103515245 + 12345) % 2**31
        made.append((x >> 16) % 256)
    made[-1] = -sum(made[:-1]) % 256
    return bytes(made)


@pytest.fixture(scope="module")
def judged(repository: Path) -> Judgement:
    """The machines of the checkout."""
    return judgement(repository / "machines")


def described(judged: Judgement, part: str) -> Image:
    """The image of a chip, of the machine or of one of its cards."""
    machine = judged.collection.machines["ostervane-bureau-8"]
    every = [*machine.firmware, *(image for card in judged.collection.cards.values() for image in card.firmware)]
    return next(each for each in every if each.part == part)


@pytest.mark.parametrize("part,seed,size", IMAGES, ids=[part for part, _, _ in IMAGES])
def test_the_sums_are_those_of_the_image(judged: Judgement, part: str, seed: int, size: int) -> None:
    """Size, both sums, both CRCs, first and last bytes; the CRCs by the standard library, not by us."""
    image, told = made_anew(seed, size), described(judged, part)
    assert told.size_bytes == len(image)
    assert told.sum_8 == f"{sum(image) % 256:02X}"
    assert told.sum_16 == f"{sum(image) % 65536:04X}"
    assert told.crc_16 == f"{binascii.crc_hqx(image, 0xFFFF):04X}"
    assert told.crc_32 == f"{zlib.crc32(image):08X}"
    assert told.starts == image[:4].hex(" ").upper()
    assert told.ends == f"{image[-1]:02X}"


def test_the_library_counts_the_crc_that_is_meant() -> None:
    """CRC-16 with polynomial 1021, start FFFF, of "123456789" is 29B1, CRC-32 is CBF43926: the test values of both."""
    assert binascii.crc_hqx(b"123456789", 0xFFFF) == 0x29B1
    assert zlib.crc32(b"123456789") == 0xCBF43926
