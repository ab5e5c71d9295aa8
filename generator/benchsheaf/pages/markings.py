"""The page that tells how resistors and capacitors are marked, with an example of each way worked out."""

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal

from benchsheaf.component_standards import (
    PICOFARAD_LETTERS,
    RING_COLOURS,
    RING_DRIFTS,
    RING_TENTHS,
    RING_TOLERANCES,
    TOLERANCE_LETTERS,
    UNEVEN_LETTERS,
    VOLT_LETTERS,
)
from benchsheaf.compute.markings import (
    FARAD_LETTERS,
    OHM_LETTERS,
    digit_code,
    e96_code,
    letter_codes,
    ring_colours,
)
from benchsheaf.drawing.new_part import new_resistor
from benchsheaf.drawing.picture import Picture
from benchsheaf.pages.frame import loose_frame
from benchsheaf.pages.printing import number, quantity
from benchsheaf.pages.shelf import Desk


@dataclass(frozen=True, kw_only=True, slots=True)
class ColourRow:
    """What a colour means as a digit, as the ring of noughts, of tolerance, of drift; empty where it means nothing."""

    colour: str
    digit: str
    times: str
    tolerance: str
    drift: str


@dataclass(frozen=True, kw_only=True, slots=True)
class RingExample:
    """A resistor with so many rings and what they say."""

    picture: Picture
    rings: str
    says: str


@dataclass(frozen=True, kw_only=True, slots=True)
class Codes:
    """A value and every short way to write it."""

    value: str
    codes: Sequence[str]


@dataclass(frozen=True, kw_only=True, slots=True)
class MarkingsPage:
    """All codes of the page."""

    colours: Sequence[ColourRow]
    examples: Sequence[RingExample]
    tolerances: Sequence[tuple[str, str]]
    volts: Sequence[tuple[str, str]]
    resistors: Sequence[Codes]
    capacitors: Sequence[Codes]


RINGED = (("4700", "0.05", 2, None), ("10000", "0.01", 3, None), ("150", "0.005", 3, 50))
"""Examples of four, five and six rings: ohm, share, digits, drift."""

EXAMPLE_OHMS = ("0.47", "4.7", "47", "470", "4700", "10000", "220000")
EXAMPLE_FARADS = ("100E-12", "330E-12", "22E-9", "330E-9", "4.7E-6", "10E-6")


def markings_page(desk: Desk) -> str:
    """The page, printed."""
    page = MarkingsPage(
        colours=[_colour(colour) for colour in dict.fromkeys((*RING_COLOURS, *RING_TENTHS.values()))],
        examples=[_example(*each) for each in RINGED],
        tolerances=_tolerances(),
        volts=[(letter, quantity(volt, "V")) for volt, letter in VOLT_LETTERS.items()],
        resistors=[_resistor(Decimal(value)) for value in EXAMPLE_OHMS],
        capacitors=[_capacitor(Decimal(value)) for value in EXAMPLE_FARADS],
    )
    frame = loose_frame(desk, "All machines", "How resistors and capacitors are marked")
    return desk.printed("markings.html", page=page, frame=frame)


def _colour(colour: str) -> ColourRow:
    digit = RING_COLOURS.index(colour) if colour in RING_COLOURS else None
    power = next((power for power, name in RING_TENTHS.items() if name == colour), digit)
    tolerance = next((share for share, name in RING_TOLERANCES.items() if name == colour), None)
    drift = next((drift for drift, name in RING_DRIFTS.items() if name == colour), None)
    return ColourRow(
        colour=colour,
        digit="" if digit is None else str(digit),
        times="" if power is None else f"{Decimal(10) ** power:,f}" if power >= 0 else f"{Decimal(10) ** power:f}",
        tolerance="" if tolerance is None else quantity(tolerance, "%"),
        drift="" if drift is None else str(drift),
    )


def _example(ohm: str, share: str, places: int, drift: int | None) -> RingExample:
    rings = ring_colours(Decimal(ohm), Decimal(share), places, drift)
    assert rings is not None
    more = f", {drift} millionths for each kelvin" if drift is not None else ""
    return RingExample(
        picture=new_resistor(rings, f"rings-{len(rings)}"),
        rings=", ".join(rings),
        says=f"{quantity(Decimal(ohm).normalize(), 'ohm')}, {quantity(Decimal(share), '%')} to both sides{more}",
    )


def _tolerances() -> list[tuple[str, str]]:
    """Each letter with what it means; under 10 pF some mean picofarads."""
    small = {letter: quantity(farad, "F") for farad, letter in PICOFARAD_LETTERS.items()}
    even = [
        (letter, f"{quantity(share, '%')} to both sides{f'; under 10 pF: {small[letter]}' if letter in small else ''}")
        for share, letter in TOLERANCE_LETTERS.items()
    ]
    uneven = [
        (letter, f"{number(up * 100)} % up, {number(down * 100)} % down")
        for (up, down), letter in UNEVEN_LETTERS.items()
    ]
    return even + uneven


def _resistor(ohm: Decimal) -> Codes:
    codes = (*letter_codes(ohm, OHM_LETTERS), digit_code(ohm, 2, "R"), digit_code(ohm, 3, "R"), e96_code(ohm))
    return Codes(value=quantity(ohm.normalize(), "ohm"), codes=[each for each in dict.fromkeys(codes) if each])


def _capacitor(farad: Decimal) -> Codes:
    codes = (digit_code(farad.scaleb(12), 2, "R"), *letter_codes(farad, FARAD_LETTERS))
    return Codes(value=quantity(farad.normalize(), "F"), codes=[each for each in dict.fromkeys(codes) if each])
