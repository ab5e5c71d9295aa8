"""What a prefix of 1000 and its neighbour of 1024 are worth, and by how much they differ."""

from dataclasses import dataclass
from decimal import Decimal

from benchsheaf.compute.laws import twelve
from benchsheaf.standards import MEBIBYTE, MEGABYTE


@dataclass(frozen=True, kw_only=True, slots=True)
class PrefixFigures:
    """A step of thousands, and the same step of 1024."""

    decimal_bytes: int
    binary_bytes: int
    more_share: Decimal


def prefix_figures(step: int) -> PrefixFigures:
    """The worths of a step: 1 is kilo and kibi, 2 mega and mebi, 3 giga and gibi.

    Units: bytes; the share by which the binary prefix is more.
    Source: IEC 80000-13, clause 4.
    """
    thousand, kibi = 1000**step, 1024**step
    return PrefixFigures(
        decimal_bytes=thousand, binary_bytes=kibi, more_share=twelve(Decimal(kibi - thousand) / thousand)
    )


MIXED_MEGABYTE = 1000 * 1024
"""The megabyte of floppy boxes and old manuals, which is neither. Source: common practice."""

assert MEGABYTE < MIXED_MEGABYTE < MEBIBYTE
