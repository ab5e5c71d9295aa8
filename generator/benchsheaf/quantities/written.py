"""Quantities as people write them: number, unit, and what is said where one is not understood."""

import re
from dataclasses import dataclass
from decimal import Decimal
from functools import lru_cache

from benchsheaf.mistakes import Code
from benchsheaf.quantities.measures import EXACT, MEASURES, Measure

MOST_DIGITS = 15
LONGEST = 60

NO_UNIT = Code(
    id="UNIT-01",
    meaning="A quantity stands without its unit.",
    words="{Noun} needs its unit, for example `{wanted}`.",
    example={"Noun": "A voltage", "wanted": "16 V"},
)
OTHER_UNIT = Code(
    id="UNIT-02",
    meaning="A unit is not known, or it measures something else.",
    words="`{unit}` is no unit of {noun}.{like}",
    example={"unit": "ms", "noun": "a voltage", "like": " Write it like `16 V`."},
)
COMMA = Code(
    id="UNIT-03",
    meaning="A comma stands in a number.",
    words="A comma in a number can be read in two ways. Write {wanted}.",
    example={"wanted": "`1.500 kΩ` or `1500 kΩ`"},
)
LETTER_FOR_POINT = Code(
    id="UNIT-04",
    meaning="A letter stands where the point of a number belongs.",
    words="Write the point, and the unit after the number: `{wanted}`.",
    example={"wanted": "4.7 kΩ"},
)
NOT_A_NUMBER = Code(
    id="UNIT-05",
    meaning="What stands before the unit is no plain number.",
    words="Here {noun} is wanted, a plain number and its unit, for example `{wanted}`.",
    example={"noun": "a voltage", "wanted": "16 V"},
)
TOO_MANY_DIGITS = Code(
    id="UNIT-06",
    meaning="A number has more digits than anything on a bench can be known to.",
    words="A number has at most {most} digits. Write it like `{wanted}`.",
    example={"most": "15", "wanted": "16 V"},
)
TWO_MEANINGS = Code(
    id="UNIT-07",
    meaning="A unit of size that some take for 1000 and others for 1024.",
    words="`{unit}` can mean 1000 or 1024. Write `{binary}` for 1024 or `{decimal}` for 1000.",
    example={"unit": "KB", "binary": "64 KiB", "decimal": "64 kB"},
)
SEVERAL_NUMBERS = Code(
    id="UNIT-08",
    meaning="A range or a tolerance stands where one value belongs.",
    words="One value belongs here, for example `{wanted}`. A range is written in two fields, `low` and `high`.",
    example={"wanted": "16 V"},
)
NOT_WHOLE = Code(
    id="UNIT-09",
    meaning="A size is no whole number of bytes or bits.",
    words="This is no whole number of {whole}. Write it like `{wanted}`.",
    example={"whole": "bytes", "wanted": "64 KiB"},
)

_GAP = "[ \u00a0\u2009\u202f]"
_PLAIN = re.compile(rf"([+\-\u2212]?){_GAP}*([0-9]+(?:\.[0-9]+)?){_GAP}*((?:[^0-9\s.,+\-\u2212][^0-9.,]*)?)")
_WITH_COMMA = re.compile(rf"([+\-\u2212]?){_GAP}*([0-9]+(?:,[0-9]+)+(?:\.[0-9]+)?){_GAP}*([^0-9.,]*)")
_LETTERED = re.compile(r"([+\-\u2212]?)([0-9]+)([pnu\u00b5\u03bcmkKMGRrEVAFHW\u03a9\u2126])([0-9]+)(?:[^0-9].*)?")
_SEVERAL = re.compile(
    r"[0-9].*(?:[–—±…]|\+-|\.\.|\bto\b|[0-9]\s?[^0-9\s]*\s?[-\u2212]\s?[0-9]).*[0-9]"
    r"|[0-9]\s?[^0-9\seE]*\s?[-\u2212]\s?[0-9]"
)
_TWO_MEANINGS = {
    "bytes": re.compile(r"([kKmMgG])(?:[bB]|[bB]ytes?)?"),
    "bits": re.compile(r"([kKmMgG])(?:[bB]|[bB]its?)?"),
}


@dataclass(frozen=True, slots=True)
class Misread:
    """Why a text is no quantity: the code, the words of its sentence, and the quantity that was probably meant."""

    code: Code
    fills: dict[str, str]
    nearest: str | None = None


@lru_cache(maxsize=1 << 13)  # the same few thousand stand in all descriptions
def read_quantity(text: str, unit: str) -> Decimal | Misread:
    """The quantity in its base unit with the digits that were written, or why it is none.

    `unit` is one of `SUFFIX`. `10 µF` in F gives 0.000010, `1.8 kΩ` in ohm 1.8E+3, `15 %` gives 0.15.
    """
    measure = MEASURES[unit]
    wanted = {"wanted": measure.wanted}
    if len(text) > MOST_DIGITS and sum(map(str.isdigit, text)) > MOST_DIGITS:
        return Misread(TOO_MANY_DIGITS, {"most": str(MOST_DIGITS), **wanted})
    text = text.strip()
    plain = _PLAIN.fullmatch(text) if len(text) <= LONGEST else None
    if plain is None:
        return _misread(text, measure)
    sign, digits, spelled = plain.groups()
    if not spelled:
        return Misread(NO_UNIT, {"Noun": _capital(measure.noun), **wanted})
    found = measure.units.get(spelled) or measure.units.get(_one_spelling(spelled))
    if found is None:
        return _other_unit(spelled, sign + digits, measure)
    number = _in_base(Decimal(digits), found, unit)
    if measure.whole and number != number.to_integral_value():
        return Misread(NOT_WHOLE, {"whole": measure.whole, **wanted})
    return number.copy_negate() if sign in ("-", "\u2212") and number else number


def _in_base(number: Decimal, found: tuple[int, int], unit: str) -> Decimal:
    multiplier, power = found
    seconds = {"min": 60, "h": 3600}.get(unit, 1)
    if multiplier != seconds:
        number = EXACT.divide(EXACT.multiply(number, Decimal(multiplier)), Decimal(seconds))
    return number.scaleb(power, EXACT)


def _one_spelling(unit: str) -> str:
    """A unit with one sign for micro and one for ohm, as the table has it."""
    unit = unit.replace("\u03bc", "µ").replace("\u2126", "Ω").replace("\u2103", "°C")
    unit = re.sub(r"^u(?!/)(?=[A-Za-zΩ])|^u$", "µ", unit)
    return re.sub(r"^([munµkKM]?) ?[oO]hms?$", lambda found: found[1] + "Ω", unit)


def _other_unit(spelled: str, digits: str, measure: Measure) -> Misread:
    double = _TWO_MEANINGS[measure.whole].fullmatch(spelled) if measure.whole else None
    if double:
        letter = double[1].upper()
        binary = f"{digits} {letter}i{measure.symbol}"
        decimal = f"{digits} {'k' if letter == 'K' else letter}{measure.symbol}"
        return Misread(TWO_MEANINGS, {"unit": spelled, "binary": binary, "decimal": decimal})
    one = _one_spelling(spelled)
    # Nothing that merely looks alike is offered: a prefix more or less is another size.
    alike = {spelling.lower(): spelling for spelling in measure.units}
    nearest = measure.meant.get(one) or alike.get(one.replace(" ", "").lower())
    like = "" if nearest else f" Write it like `{measure.wanted}`."
    fills = {"unit": spelled, "noun": measure.noun, "like": like}
    return Misread(OTHER_UNIT, fills, f"{digits} {nearest}" if nearest else None)


def _misread(text: str, measure: Measure) -> Misread:
    """Why a text is not even number and unit."""
    text = text[:LONGEST]
    comma = _WITH_COMMA.fullmatch(text)
    if comma:
        return Misread(COMMA, {"wanted": _without_comma(comma, measure)})
    lettered = _LETTERED.fullmatch(text)
    if lettered:
        return Misread(LETTER_FOR_POINT, {"wanted": _with_point(lettered, measure)})
    if _SEVERAL.search(text):
        return Misread(SEVERAL_NUMBERS, {"wanted": measure.wanted})
    return Misread(NOT_A_NUMBER, {"noun": measure.noun, "wanted": measure.wanted})


def _without_comma(comma: re.Match[str], measure: Measure) -> str:
    """What a number with a comma can have meant, with its unit if that is one."""
    sign, digits, spelled = comma.groups()
    unit = _one_spelling(spelled)
    unit = unit if unit in measure.units else measure.wanted.split()[1]
    joined, pointed = (f"`{sign}{digits.replace(',', instead)} {unit}`" for instead in ("", "."))
    if digits.count(",") > 1 or "." in digits:
        return joined
    return f"{pointed} or {joined}" if len(digits.split(",")[1]) == 3 else pointed


def _with_point(lettered: re.Match[str], measure: Measure) -> str:
    """`4k7` as `4.7 kΩ`; an example where the letter makes no unit."""
    sign, whole, letter, rest = lettered.groups()
    for unit in (letter + measure.symbol, letter.lower() + measure.symbol, measure.meant.get(letter, ""), letter):
        spelled = _one_spelling(unit)
        if spelled in measure.units:
            return f"{sign}{whole}.{rest} {spelled}"
    return measure.wanted


def _capital(noun: str) -> str:
    return noun[0].upper() + noun[1:]
