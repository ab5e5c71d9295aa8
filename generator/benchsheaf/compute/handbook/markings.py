"""What rings, letters and digits on a resistor or a capacitor say."""

import re
from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal

from benchsheaf.component_standards import RING_COLOURS
from benchsheaf.compute.handbook.reading import (
    LETTER_FARADS,
    LETTER_SHARES,
    NO_RING_SHARE,
    RING_POWERS,
    RING_PPM,
    RING_SHARES,
    SHORT_POWERS,
    UNEVEN_SHARES,
)
from benchsheaf.compute.handbook.series import preferred_values

FOUR_OR_LESS = 4
POINTS = {"R": 0, "K": 3, "M": 6, "G": 9}
FARADS = {"p": -12, "n": -9, "u": -6, "µ": -6, "m": -3}
SMALL_F = Decimal("10e-12")
BARE = re.compile(r"(\d\d)(\d)([A-Z]?)")
POINTED = re.compile(r"(\d*)([A-Za-zµ])(\d*)([A-Z]?)")


@dataclass(frozen=True, kw_only=True, slots=True)
class MarkFigures:
    """What a part is by its marking, in ohm or in farad.

    The tolerance is a share more and a share less, or farads either way; None where the marking does not tell.
    """

    value: Decimal
    more_share: Decimal | None = None
    less_share: Decimal | None = None
    either_f: Decimal | None = None
    ppm: int | None = None


def resistor_of_rings(rings: Sequence[str]) -> MarkFigures:
    """A resistor by three to six rings: two digits up to four rings, three from five on, then the multiplier.

    Units: ohm. Three rings stand for 20 %.
    Errors: ValueError for another number of rings; KeyError or ValueError for a colour that means nothing there.
    Source: IEC 60062, clause 3.
    """
    if not 3 <= len(rings) <= 6:
        raise ValueError(f"three to six rings, not {len(rings)}")
    count = 2 if len(rings) <= FOUR_OR_LESS else 3
    digits = int("".join(str(RING_COLOURS.index(ring)) for ring in rings[:count]))
    share = RING_SHARES[rings[count + 1]] if len(rings) > count + 1 else NO_RING_SHARE
    ppm = RING_PPM[rings[count + 2]] if len(rings) > count + 2 else None
    value = Decimal(digits).scaleb(RING_POWERS[rings[count]])
    return MarkFigures(value=value, more_share=share, less_share=share, ppm=ppm)


def resistor_of_code(code: str) -> MarkFigures:
    """A resistor by `4K7J`, `R10K`, `103`, `1001`, `49R9` or by two digits and a letter such as `01C`.

    Units: ohm. What two digits and a letter mean is a value of E96, so within 1 %.
    Errors: ValueError if it is none of these.
    Source: IEC 60062, clauses 4 and 5, annex A.
    """
    if re.fullmatch(r"\d\d[A-FXYZ]", code) and 1 <= int(code[:2]) <= 96:
        value = preferred_values(96)[int(code[:2]) - 1] * 10
        percent = LETTER_SHARES["F"]
        return MarkFigures(value=value.scaleb(SHORT_POWERS[code[2]]), more_share=percent, less_share=percent)
    if re.fullmatch(r"\d{3,4}", code):
        return MarkFigures(value=Decimal(int(code[:-1])).scaleb(int(code[-1])))
    found = POINTED.fullmatch(code)
    if not found or found[2] not in POINTS or not (found[1] or found[3]):
        raise ValueError(f"no marking of a resistor: {code}")
    share = LETTER_SHARES[found[4]] if found[4] else None
    value = Decimal(f"{found[1] or 0}.{found[3] or 0}").scaleb(POINTS[found[2]])
    return MarkFigures(value=value, more_share=share, less_share=share)


def capacitor_of_code(code: str) -> MarkFigures:
    """A capacitor by three digits (`474K`, `479C`), or by a letter at the place of the point (`3u3`, `8R2D`).

    Units: farad. The third digit is the number of zeros behind picofarads; 9 means a tenth, 8 a hundredth.
    Errors: ValueError if it is none of these.
    Source: IEC 60062, clauses 4 and 5; 8 and 9 common practice.
    """
    bare, pointed = BARE.fullmatch(code), POINTED.fullmatch(code)
    if bare:
        power = {"9": -1, "8": -2}.get(bare[2], int(bare[2]))
        return _tolerated(Decimal(int(bare[1])).scaleb(power - 12), bare[3])
    if not pointed or pointed[2] not in {**FARADS, "R": 0} or not (pointed[1] or pointed[3]):
        raise ValueError(f"no marking of a capacitor: {code}")
    value = Decimal(f"{pointed[1] or 0}.{pointed[3] or 0}").scaleb(FARADS.get(pointed[2], -12))
    return _tolerated(value, pointed[4])


def _tolerated(value_f: Decimal, letter: str) -> MarkFigures:
    """The value with the tolerance of its letter, which below 10 pF is in picofarads."""
    if letter in UNEVEN_SHARES:
        more, less = UNEVEN_SHARES[letter]
        return MarkFigures(value=value_f, more_share=more, less_share=less)
    if letter and value_f < SMALL_F:
        return MarkFigures(value=value_f, either_f=LETTER_FARADS[letter])
    share = LETTER_SHARES[letter] if letter else None
    return MarkFigures(value=value_f, more_share=share, less_share=share)
