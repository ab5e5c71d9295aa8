"""The tables of markings turned round, since a part is read from its colours and letters to its figures."""

from collections.abc import Mapping
from decimal import Decimal

from benchsheaf.component_standards import (
    E96_LETTERS,
    PICOFARAD_LETTERS,
    RING_COLOURS,
    RING_DRIFTS,
    RING_TENTHS,
    RING_TOLERANCES,
    TOLERANCE_LETTERS,
    UNEVEN_LETTERS,
    VOLT_LETTERS,
)

RING_POWERS: Mapping[str, int] = {colour: power for power, colour in enumerate(RING_COLOURS)} | {
    colour: power for power, colour in RING_TENTHS.items()
}
RING_SHARES: Mapping[str, Decimal] = {colour: share for share, colour in RING_TOLERANCES.items() if colour != "none"}
NO_RING_SHARE = next(share for share, colour in RING_TOLERANCES.items() if colour == "none")
RING_PPM: Mapping[str, int] = {colour: drift for drift, colour in RING_DRIFTS.items()}
LETTER_SHARES: Mapping[str, Decimal] = {letter: share for share, letter in TOLERANCE_LETTERS.items()}
LETTER_FARADS: Mapping[str, Decimal] = {letter: farad for farad, letter in PICOFARAD_LETTERS.items()}
UNEVEN_SHARES: Mapping[str, tuple[Decimal, Decimal]] = {letter: shares for shares, letter in UNEVEN_LETTERS.items()}
VOLTAGE_LETTERS: Mapping[str, Decimal] = {letter: volts for volts, letter in VOLT_LETTERS.items()}
SHORT_POWERS: Mapping[str, int] = {letter: power for power, letter in E96_LETTERS.items()}
