"""The preferred values that resistors and capacitors are sold in."""

from decimal import Decimal

from benchsheaf.standards import E24


def preferred_values(number: int) -> tuple[Decimal, ...]:
    """The values of one decade from 10: of E6 and E12 the standard's choice from E24, of E96 by the formula.

    Errors: ValueError for a series that is none of 6, 12, 24 and 96.
    Source: IEC 60063. E24 is a table, since eight of its values do not follow the formula; E96 is the formula
    10^(k/96) to three digits.
    """
    if number == 96:
        return tuple(Decimal(round(100 * 10 ** (place / 96))) / 10 for place in range(96))
    if number not in (6, 12, 24):
        raise ValueError(f"no series E{number} here")
    return tuple(Decimal(each) for each in E24[:: 24 // number])


def off_the_formula() -> tuple[tuple[int, int], ...]:
    """Each value of E24 that the formula would make another one: the formula's, then the standard's.

    Source: IEC 60063 against 10^(k/24), rounded to two digits.
    """
    made = [round(10 ** (1 + place / 24)) for place in range(24)]
    return tuple((formula, own) for formula, own in zip(made, E24, strict=True) if formula != own)
