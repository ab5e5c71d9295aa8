"""Errors with firmware, rates, divisors, addresses and markings."""

from collections.abc import Sequence
from decimal import ROUND_DOWN, ROUND_HALF_UP, Decimal

from benchsheaf.compute.handbook import capacitor_of_code, crc_sum, resistor_of_code, sum_figures
from benchsheaf.compute.handbook.polynomials import CRC_32, DISK_CRC, MIRRORED_CRC, ZERO_CRC
from benchsheaf.compute.video import mode_figures
from benchsheaf.model.signals import Mode
from benchsheaf.pages.handbook.shape import Point
from benchsheaf.pages.handbook.sums_page import DIGITS, MARKS
from benchsheaf.pages.printing import number, quantity

BLANK = b"\xff" * 8192
SUBCARRIER_HZ = Decimal(315_000_000) / 88
DOT_HZ = 4 * SUBCARRIER_HZ
COUNTER_HZ = SUBCARRIER_HZ / 3
BROADCAST_LINE_HZ, BROADCAST_FIELD_HZ = Decimal(4_500_000) / 286, Decimal(60_000) / 1001


def firmware_errors() -> Sequence[Point]:
    """What sums and CRCs do not say."""
    starts = [f"{crc_sum(DIGITS, kind):04X}" for kind in (DISK_CRC, ZERO_CRC, MIRRORED_CRC)]
    return (
        Point(
            anchor="sum-byte",
            title="The sum byte of a ROM",
            wrong="The sum is 00, so the content is right.",
            right="A sum of 00 hides exchanged bytes, exchanged halves and a part that is all FFh: a CRC shows them.",
            mark="Computed; see what a checksum proves.",
        ),
        Point(
            anchor="blank-part",
            title="A blank part passes",
            wrong="8192 bytes that sum to 00 are a program.",
            right=f"8192 × FFh sum to {sum_figures(BLANK).sum_8:02X} too. Their CRC-32 is "
            f"{crc_sum(BLANK, CRC_32):08X}: know it "
            "by sight.",
            working="8192 × 255 is a multiple of 256.",
            mark="Computed.",
        ),
        Point(
            anchor="which-crc",
            title="Which CRC-16",
            wrong="The CRC-16 of 123456789 is one number.",
            right=f"{starts[0]} from FFFF, {starts[1]} from 0000, {starts[2]} with 8005 mirrored: name the parameters.",
            mark="Computed.",
        ),
        Point(
            anchor="sector-crc",
            title="The CRC of a sector",
            wrong="It runs over the data only.",
            right="On an MFM track it runs over A1 A1 A1 and the mark too; after the three A1 it stands at "
            f"{crc_sum(MARKS, DISK_CRC):04X}.",
            mark="Computed.",
        ),
    )


def picture_errors() -> Sequence[Point]:
    """Line rates and divisors."""
    mode = Mode(id="text", name="Text", crystal="X", dots=912, lines=262)
    text = mode_figures(mode, DOT_HZ)
    wanted = Decimal(896)
    nearest, truncated = (
        (COUNTER_HZ / wanted).quantize(Decimal(1), rounding) for rounding in (ROUND_HALF_UP, ROUND_DOWN)
    )
    most = 2**16
    return (
        Point(
            anchor="line-rate",
            title="Line rate of a text card",
            wrong=f"It is that of television: {number(BROADCAST_LINE_HZ / 1000, 3)} kHz and "
            f"{number(BROADCAST_FIELD_HZ, 2)} "
            "Hz.",
            right=f"{number(text.line_rate_hz / 1000, 4)} kHz and {number(text.frame_rate_hz, 2)} Hz.",
            working="Four times 315/88 MHz, over 912 dots, over 262 lines.",
            mark="315/88 MHz: ITU-R BT.1700; the counts common practice; general example.",
        ),
        Point(
            anchor="divisor-zero",
            title="Divisor 0",
            wrong="A counter set to 0 stands still.",
            right=f"0 means {most}: {number(COUNTER_HZ / most, 4)} Hz.",
            working=f"{number(COUNTER_HZ, 1)} Hz / {most}.",
            mark="Computed.",
        ),
        Point(
            anchor="divisor-rounding",
            title="Rounding a divisor",
            wrong=f"{wanted} Hz: cut off to {truncated}, which is {number(COUNTER_HZ / truncated, 2)} Hz.",
            right=f"The nearest is {nearest}, which is {number(COUNTER_HZ / nearest, 2)} Hz.",
            working=f"{number(COUNTER_HZ, 1)} Hz / {wanted} Hz = {number(COUNTER_HZ / wanted, 2)}.",
            mark="Computed.",
        ),
    )


def decoding_errors() -> Sequence[Point]:
    """Undecoded lines, and three digits."""
    high, lines = 0x12E8, 10
    ohm, farad = (
        quantity(resistor_of_code("100").value.normalize(), "ohm"),
        quantity(capacitor_of_code("101").value.normalize(), "F"),
    )
    return (
        Point(
            anchor="ten-bits",
            title="Ten address lines",
            wrong=f"A card at {high:X}h and one at 2E8h never meet.",
            right=f"A card that decodes {lines} lines sees {high:X}h as {high % 2**lines:X}h: both answer.",
            working=f"The remainder of {high:X}h by {2**lines:X}h.",
            mark="Computed; general example.",
        ),
        Point(
            anchor="three-digits",
            title="101 and 100",
            wrong="100 on a resistor is 100 Ω, 101 on a capacitor 101 pF.",
            right=f"101 is {farad}; 100 with three digits is {ohm}; 1000 with four is "
            f"{quantity(resistor_of_code('1000').value.normalize(), 'ohm')}.",
            working="The last digit is the number of zeros.",
            mark="IEC 60062; computed.",
        ),
    )
