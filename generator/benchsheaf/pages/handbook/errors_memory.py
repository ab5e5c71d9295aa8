"""Errors with memory chips."""

from collections.abc import Sequence

from benchsheaf.pages.handbook.shape import Point
from benchsheaf.pages.printing import number

KIB = 1024
CHIP_BITS = 64 * KIB
BYTE = 8


def memory_errors() -> Sequence[Point]:
    """Parity, and the order of banks."""
    total_bytes = 256 * KIB
    rows = total_bytes * BYTE // (CHIP_BITS * BYTE)
    ones = (0xFF).bit_count()
    return (
        Point(
            anchor="parity-chips",
            title="Chips for parity",
            wrong=f"256 KiB of 64K × 1 are {rows * BYTE} chips; a bank of 16 bits takes {2 * BYTE + 1}.",
            right=f"{rows * (BYTE + 1)} chips with a parity bit a byte: {rows} rows of {BYTE + 1}. A bank of 16 bits "
            "takes "
            f"{2 * (BYTE + 1)}, as each byte has its own parity bit. 1024 KiB of 256K × 1 are "
            f"{1024 * KIB // (256 * KIB) * (BYTE + 1)} again.",
            working=f"{number(total_bytes)} B over {number(CHIP_BITS)} B a row, times nine.",
            mark="Computed.",
        ),
        Point(
            anchor="parity-sense",
            title="Sense of parity",
            wrong="With odd parity FFh has the parity bit 0.",
            right=f"The ones together with the parity bit are odd: FFh has {ones}, so the bit is {(ones + 1) % 2}.",
            working=f"{ones} + {(ones + 1) % 2} = {ones + (ones + 1) % 2}, which is odd.",
            mark="Computed.",
        ),
        Point(
            anchor="bank-order",
            title="Order of banks, and gaps",
            wrong="A bank left out in the middle costs only its own bytes.",
            right="Addresses follow the order of filling: a missing bank ends the count, and what lies behind it is "
            "not found.",
            mark="Common practice.",
        ),
    )
