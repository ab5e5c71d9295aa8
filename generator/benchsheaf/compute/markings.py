"""What is printed on a new resistor or capacitor: rings of colour, digits, letters, volts, the side that is marked."""

from collections.abc import Mapping
from dataclasses import dataclass
from decimal import Decimal

from benchsheaf.component_standards import (
    E96,
    E96_LETTERS,
    RING_COLOURS,
    RING_DRIFTS,
    RING_TENTHS,
    RING_TOLERANCES,
    VOLT_LETTERS,
)
from benchsheaf.compute.laws import twelve

PICO = Decimal("1E-12")
MICRO = Decimal("1E-6")
OHM_LETTERS = {"R": 0, "K": 3, "M": 6, "G": 9}
FARAD_LETTERS = {"p": -12, "n": -9, "u": -6, "m": -3}
USUAL_RINGS = ((Decimal("0.05"), 2), (Decimal("0.01"), 3))
"""Tolerances that resistors are sold with, and how many digits their rings tell. Source: common practice."""

MARKED_SIDES = {"tantalum": "plus", "electrolytic": "minus"}
"""Which end of a polarised part its maker marks. Source: common practice; bar of a chip tantalum too."""


@dataclass(frozen=True, kw_only=True, slots=True)
class RingFigures:
    """The rings of a resistor from the end where they begin, for one tolerance."""

    rings: tuple[str, ...]
    tolerance_share: Decimal


@dataclass(frozen=True, kw_only=True, slots=True)
class ResistorMarking:
    """All usual ways to mark a resistance; `short` is the code of two digits and a letter, for surface parts of 1 %."""

    coloured: tuple[RingFigures, ...]
    letters: tuple[str, ...]
    digits: tuple[str, ...]
    short: str | None


@dataclass(frozen=True, kw_only=True, slots=True)
class CapacitorMarking:
    """All usual ways to mark a capacitor; `printed` stands on a body that has room, `chip` on a small surface part."""

    printed: str
    digits: tuple[str, ...]
    letters: tuple[str, ...]
    chip: str | None
    marked_side: str | None


def resistor_marking(resistance_ohm: Decimal) -> ResistorMarking:
    """How a resistance is marked.

    Units: ohm. Errors: none; what a code cannot say is left out.
    """
    coloured = [(ring_colours(resistance_ohm, share, places), share) for share, places in USUAL_RINGS]
    digits = [digit_code(resistance_ohm, places, "R") for places in (2, 3)]
    return ResistorMarking(
        coloured=tuple(RingFigures(rings=rings, tolerance_share=share) for rings, share in coloured if rings),
        letters=letter_codes(resistance_ohm, OHM_LETTERS),
        digits=tuple(code for code in digits if code),
        short=e96_code(resistance_ohm),
    )


def capacitor_marking(kind: str, capacitance_f: Decimal, rated_v: Decimal | None) -> CapacitorMarking:
    """How a capacitor is marked.

    Units: farad, volt. Errors: none; what a code cannot say is left out.
    """
    code = digit_code(capacitance_f / PICO, 2, "R")
    tenth = _tenth_code(capacitance_f)
    letter = VOLT_LETTERS.get(rated_v) if rated_v is not None and kind == "tantalum" else None
    return CapacitorMarking(
        printed=printed_value(kind, capacitance_f, rated_v),
        digits=tuple(each for each in (code, tenth) if each),
        letters=letter_codes(capacitance_f, FARAD_LETTERS),
        chip=f"{letter}{code}" if letter and code else None,
        marked_side=MARKED_SIDES.get(kind),
    )


def ring_colours(
    resistance_ohm: Decimal, tolerance_share: Decimal, places: int, drift: int | None = None
) -> tuple[str, ...] | None:
    """The rings of a resistance: its digits, the power of ten, the tolerance, and what a sixth says of its drift.

    Units: ohm; a share; millionths for each kelvin. None where its value has more digits, or no colour stands for a
    power or a tolerance. Source: IEC 60062, clause 3.
    """
    found = _digits(resistance_ohm, places)
    last = RING_TOLERANCES.get(tolerance_share)
    if found is None or last is None or (drift is not None and drift not in RING_DRIFTS):
        return None
    digits, power = found
    if not -2 <= power <= 9:
        return None
    times = RING_TENTHS[power] if power < 0 else RING_COLOURS[power]
    rings = (*(RING_COLOURS[int(digit)] for digit in digits), times)
    return (*rings, *((last,) if last != "none" else ()), *((RING_DRIFTS[drift],) if drift is not None else ()))


def digit_code(units: Decimal, places: int, point: str) -> str | None:
    """Digits and how many noughts follow: `103`, `1001`; below that the letter as a point: `4R7`, `49R9`; `000` for 0.

    Units: ohm of a resistor, picofarad of a capacitor. None where the value has more digits.
    Source: IEC 60062, clause 4; surface parts common practice.
    """
    if not units:
        return "0" * (places + 1)
    found = _digits(units, places)
    if found is None or found[1] > 9:
        return None
    digits, power = found
    if power >= 0:
        return f"{digits}{power}"
    before = len(digits) + power
    return f"{digits[:before]}{point}{digits[before:]}" if before >= 0 else None


def letter_codes(value: Decimal, letters: Mapping[str, int]) -> tuple[str, ...]:
    """A value with the letter of its prefix as the point: `4K7`, `n33`; of two ways the one without a point first.

    Units: ohm or farad. Errors: none; no code where there is no letter for it. Source: IEC 60062, clause 4.
    """
    codes = []
    for letter, power in letters.items():
        scaled = value.scaleb(-power).normalize()
        whole, _, part = _plain(scaled).partition(".")
        if 1 <= scaled < 1000 and len(whole + part) <= 4:
            codes.append(f"{whole}{letter}{part or '0' * (len(whole) == 1)}")
        elif Decimal("0.1") <= scaled < 1 and len(part) <= 3:
            codes.append(f"{letter}{part.ljust(2, '0')}")
    return tuple(codes)


def e96_code(resistance_ohm: Decimal) -> str | None:
    """Two digits for the place of a value in E96, and a letter for the power of ten; None where it has no place there.

    Units: ohm. Source: IEC 60062, annex A.
    """
    found = _digits(resistance_ohm, 3)
    if found is None or int(found[0]) not in E96 or found[1] not in E96_LETTERS:
        return None
    return f"{E96.index(int(found[0])) + 1:02}{E96_LETTERS[found[1]]}"


def printed_value(kind: str, capacitance_f: Decimal, rated_v: Decimal | None) -> str:
    """Microfarads, volts and, on a bead, the sign at its plus: `10 16 +`, `47 16V`.

    Units: farad, volt. Source: common practice.
    """
    micro = _plain(twelve(capacitance_f / MICRO))
    volts = "" if rated_v is None else _plain(rated_v)
    if kind == "tantalum":
        return " ".join(each for each in (micro, volts, "+") if each)
    return f"{micro} {volts}V" if volts else micro


def _plain(value: Decimal) -> str:
    return f"{value.normalize():f}"


def _tenth_code(capacitance_f: Decimal) -> str | None:
    """A value of 1 to 10 pF with a nine, which divides by ten: `479` is 4.7 pF."""
    tenths = capacitance_f / PICO * 10
    whole = tenths == tenths.to_integral_value()
    return f"{int(tenths)}9" if whole and 10 <= tenths < 100 else None


def _digits(value: Decimal, places: int) -> tuple[str, int] | None:
    """So many first digits and the power of ten of the last of them; None where a digit would be lost."""
    if value <= 0:
        return None
    power = value.adjusted() - places + 1
    scaled = value.scaleb(-power)
    return (str(int(scaled)), power) if scaled == scaled.to_integral_value() else None
