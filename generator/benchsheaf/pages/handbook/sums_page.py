"""Sums and cyclic checks: their parameters, what a sum of zero hides, and the fields of a sector."""

from benchsheaf.compute.handbook import crc_sum, sum_figures
from benchsheaf.compute.handbook.polynomials import CRC_32, CRCS, DISK_CRC
from benchsheaf.pages.handbook.shape import Column, Content, Section, Table

DIGITS = b"123456789"
HALF = 4096
CLIMBING = bytes((7 * place + 3) % 256 for place in range(2 * HALF))
PROGRAM = CLIMBING[:HALF] + bytes((5 * place + 1) % 256 for place in range(HALF))
MARKS = b"\xa1\xa1\xa1"
FIELDS = (
    ("MFM, head of sector 1 on cylinder 0", MARKS + bytes.fromhex("FE 00 00 01 02")),
    ("MFM, head of sector 9 on cylinder 27h, head 1", MARKS + bytes.fromhex("FE 27 01 09 02")),
    ("MFM, 512 bytes 00h", MARKS + b"\xfb" + bytes(512)),
    ("FM, 128 bytes E5h, no A1 before", b"\xfb" + b"\xe5" * 128),
)


def _exchanged(content: bytes, place: int) -> bytes:
    return content[:place] + content[place + 1 : place + 2] + content[place : place + 1] + content[place + 2 :]


IMAGES = (
    ("Blank part, all FFh", b"\xff" * len(CLIMBING)),
    ("All 00h", bytes(len(CLIMBING))),
    ("Byte i is 7i + 3", CLIMBING),
    ("A program, as it should be", PROGRAM),
    ("Two bytes of it exchanged", _exchanged(PROGRAM, 0x200)),
    ("Its halves exchanged", PROGRAM[HALF:] + PROGRAM[:HALF]),
    ("Data line 7 stuck low", bytes(each & 0x7F for each in PROGRAM)),
)


def sums() -> Content:
    """Three tables."""
    return Content(
        answer="A sum proves only that it is the same sum. A sum of 00 passes a blank part, exchanged bytes and "
        "exchanged halves: compare a CRC, and name its parameters.",
        sections=(
            Section(
                anchor="hides",
                title="What a sum of zero hides",
                told=(
                    "Firmware adds all its bytes to 00 by one byte that is set for it. So does a part full of FFh "
                    "whose "
                    "length is a multiple of 256, so does the same program with its address lines crossed, and here "
                    "even one with a data line stuck.",
                ),
                table=Table(
                    label="Sums of 8192 bytes",
                    columns=(
                        Column(name="8192 bytes"),
                        Column(name="Sum, 8 bits", n=True),
                        Column(name="Sum, 16 bits", n=True),
                        Column(name="Exclusive or", n=True),
                        Column(name="CRC-16 of disks", n=True),
                        Column(name="CRC-32", n=True),
                    ),
                    rows=[_image(*each) for each in IMAGES],
                    source="computed; the program is made up, byte i is 7i + 3 in its first half, 5i + 1 in its "
                    "second.",
                ),
            ),
            _kinds(),
            _fields(),
        ),
    )


def _image(name: str, content: bytes) -> tuple[str, ...]:
    simple = sum_figures(content)
    return (
        name,
        f"{simple.sum_8:02X}",
        f"{simple.sum_16:04X}",
        f"{simple.exclusive_or:02X}",
        f"{crc_sum(content, DISK_CRC):04X}",
        f"{crc_sum(content, CRC_32):08X}",
    )


def _kinds() -> Section:
    simple = sum_figures(DIGITS)
    return Section(
        anchor="kinds",
        title="Which CRC is it?",
        told=(
            "CRC-16 alone names nothing: polynomial, start, order of bits and what is done at the end make it. Try "
            "yours "
            "on the nine digits 123456789.",
            f"Of the same digits the sum is {simple.sum_16:04X} in 16 bits and {simple.sum_8:02X} in 8, its complement "
            f"{simple.complement_8:02X}, the exclusive or {simple.exclusive_or:02X}.",
        ),
        table=Table(
            label="CRCs by their parameters",
            columns=(
                Column(name="Called here"),
                Column(name="Polynomial", n=True),
                Column(name="Start", n=True),
                Column(name="First bit"),
                Column(name="At the end"),
                Column(name="Of 123456789", n=True),
                Column(name="From"),
            ),
            rows=[
                (
                    kind.name,
                    f"{kind.polynomial:0{kind.width // 4}X}h",
                    f"{kind.start:0{kind.width // 4}X}h",
                    "lowest" if kind.reflected else "highest",
                    "inverted" if kind.final_xor else "as it is",
                    f"{crc_sum(DIGITS, kind):0{kind.width // 4}X}",
                    kind.source,
                )
                for kind in CRCS
            ],
            source="parameters as in the last column, from memory; the check values are computed.",
        ),
    )


def _fields() -> Section:
    return Section(
        anchor="sectors",
        title="The CRC of a sector",
        told=(
            "On an MFM track it runs over the three bytes A1 and the mark too. A controller that begins after them "
            f"starts from {crc_sum(MARKS, DISK_CRC):04X} in the place of {DISK_CRC.start:04X}. It proves that the "
            "sector "
            "was read as it was written, not that the right thing was written.",
        ),
        table=Table(
            label="CRCs of sector fields",
            columns=(Column(name="Field"), Column(name="Its first bytes", wordy=True), Column(name="CRC", n=True)),
            rows=[(name, _begins(content), f"{crc_sum(content, DISK_CRC):04X}") for name, content in FIELDS],
            source="ITU-T V.41 for the polynomial, start FFFF; computed.",
        ),
    )


def _begins(content: bytes) -> str:
    """The first eight bytes, and a sign that there are more."""
    return content[:8].hex(" ").upper() + ("…" if len(content) > 8 else "")
