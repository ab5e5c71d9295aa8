"""Sums and cyclic checks of bytes, each named by its parameters."""

from collections.abc import Sequence
from dataclasses import dataclass

from benchsheaf.compute.handbook.polynomials import Crc


@dataclass(frozen=True, kw_only=True, slots=True)
class SumFigures:
    """Sums that add and forget the order, and one that does not add."""

    sum_8: int
    sum_16: int
    complement_8: int
    exclusive_or: int


def sum_figures(content: Sequence[int]) -> SumFigures:
    """The simple sums of some bytes.

    Source: definition; the complement is what makes the sum of all zero in its last eight bits.
    """
    total = sum(content)
    joined = 0
    for byte in content:
        joined ^= byte
    return SumFigures(sum_8=total % 2**8, sum_16=total % 2**16, complement_8=-total % 2**8, exclusive_or=joined)


def crc_sum(content: Sequence[int], kind: Crc) -> int:
    """The cyclic check of some bytes.

    Source: division by the polynomial, bit by bit; ITU-T V.41 for 1021h, IEEE 802.3 for 32 bits.
    """
    table = kind.steps()
    mask, shift = 2**kind.width - 1, kind.width - 8
    register = kind.start
    for byte in content:
        if kind.reflected:
            register = table[(register ^ byte) & 0xFF] ^ (register >> 8)
        else:
            register = table[(register >> shift) ^ byte] ^ ((register << 8) & mask)
    return register ^ kind.final_xor
