"""Quantities as people write them become exact numbers in one base unit, and figures are printed the way people read them."""

import re
from collections.abc import Mapping
from dataclasses import dataclass
from decimal import ROUND_HALF_UP, Context, Decimal

from benchsheaf.mistakes import Code, nearest_name

EXACT = Context(prec=40)
MOST_DIGITS = 15

NO_UNIT = Code(
    id="UNIT-01",
    meaning="A quantity stands without its unit.",
    words="{noun} needs its unit, for example `{wanted}`.",
    example={"noun": "A voltage", "wanted": "16 V"},
)
OTHER_UNIT = Code(
    id="UNIT-02",
    meaning="The unit is not known here, or it measures something else.",
    words="`{unit}` is no unit of {noun}. Write it like `{wanted}`.",
    example={"unit": "ms", "noun": "a voltage", "wanted": "16 V"},
)
COMMA = Code(
    id="UNIT-03",
    meaning="A comma stands in a number.",
    words="A comma can be read in two ways. Write {wanted}.",
    example={"wanted": "`1.500 kΩ` or `1500 kΩ`"},
)
LETTER_FOR_POINT = Code(
    id="UNIT-04",
    meaning="A letter stands where the point belongs.",
    words="Write the point and the unit: `{wanted}`.",
    example={"wanted": "4.7 kΩ"},
)
NOT_A_NUMBER = Code(
    id="UNIT-05",
    meaning="What stands before the unit is not a plain number.",
    words="{noun} is a plain number and its unit, for example `{wanted}`.",
    example={"noun": "A voltage", "wanted": "16 V"},
)
TOO_MANY_DIGITS = Code(
    id="UNIT-06",
    meaning="A number has more digits than anything on a bench.",
    words="A number has at most {most} digits. Write it like `{wanted}`.",
    example={"most": "15", "wanted": "16 V"},
)
TWO_MEANINGS = Code(
    id="UNIT-07",
    meaning="A unit that some take for 1000 and others for 1024.",
    words="`{unit}` may mean 1000 or 1024. Write {wanted}.",
    example={"unit": "KB", "wanted": "`64 KiB` (of 1024) or `64 kB` (of 1000)"},
)
SEVERAL_NUMBERS = Code(
    id="UNIT-08",
    meaning="A range or a tolerance stands where one value belongs.",
    words="One value belongs here, for example `{wanted}`. A range has two fields, `low` and `high`.",
    example={"wanted": "16 V"},
)
NOT_WHOLE = Code(
    id="UNIT-09",
    meaning="A size is no whole number of bytes or bits.",
    words="{noun} is a whole number of {unit}, for example `{wanted}`.",
    example={"noun": "A size in bytes", "unit": "bytes", "wanted": "512 B"},
)


@dataclass(frozen=True, slots=True)
class Misread:
    """Why a text is no quantity: the code, the words of its sentence, and the unit that was probably meant."""

    code: Code
    fills: dict[str, str]
    nearest: str | None = None


@dataclass(frozen=True, slots=True)
class Measure:
    """One base unit: the suffix of its records, how people call it, its spellings and the prefixes it is printed with.

    `units` gives each spelling as (multiplier, power of ten). `ladder` gives prefixed units from the greatest down as
    (symbol, power of ten, from which power of ten on it is used).
    """

    suffix: str
    noun: str
    wanted: str
    units: Mapping[str, tuple[int, int]]
    ladder: tuple[tuple[str, int, int], ...]
    meant: Mapping[str, str]
    whole: bool = False


def _ladder(*steps: tuple[str, int] | tuple[str, int, int]) -> tuple[tuple[str, int, int], ...]:
    return tuple((step[0], step[1], step[2] if len(step) == 3 else step[1]) for step in steps)


POWER = {"p": -12, "n": -9, "µ": -6, "m": -3, "": 0, "c": -2, "k": 3, "M": 6, "G": 9}
BINARY = {"Ki": 1024, "Mi": 1024**2, "Gi": 1024**3}


def _units(symbols: str, prefixes: str, binary: bool = False) -> dict[str, tuple[int, int]]:
    """Spellings of a unit with each of its prefixes; `_` stands for no prefix."""
    units: dict[str, tuple[int, int]] = {}
    for symbol in symbols.split():
        for prefix in prefixes.replace("_", " ").split(",") if prefixes else []:
            units[prefix.strip() + symbol] = (1, POWER[prefix.strip()])
        for prefix, size in BINARY.items() if binary else ():
            units[prefix + symbol] = (size, 0)
    return units


SECONDS = {**_units("s", "n,µ,m,_"), "min": (60, 0), "h": (3600, 0)}
TIME_MEANT = {
    "sec": "s", "secs": "s", "second": "s", "seconds": "s", "msec": "ms", "usec": "µs", "µsec": "µs",
    "mins": "min", "minute": "min", "minutes": "min", "m": "min", "hr": "h", "hrs": "h", "hour": "h", "hours": "h",
}  # fmt: skip
OHM_MEANT = {"R": "Ω", "r": "Ω", "k": "kΩ", "K": "kΩ", "kR": "kΩ", "KΩ": "kΩ", "M": "MΩ", "meg": "MΩ", "Meg": "MΩ"}

MEASURES: Mapping[str, Measure] = {
    "V": Measure("v", "A voltage", "16 V", _units("V", "µ,m,_,k"), _ladder(("kV", 3), ("V", 0), ("mV", -3), ("µV", -6)),
                 {"volt": "V", "volts": "V", "VDC": "V", "Vdc": "V", "VAC": "V", "Vac": "V", "v": "V"}),
    "A": Measure("a", "A current", "0.35 A", _units("A", "µ,m,_"), _ladder(("A", 0, -1), ("mA", -3, -4), ("µA", -6)),
                 {"amp": "A", "amps": "A", "ampere": "A", "amperes": "A", "a": "A"}),
    "ohm": Measure("ohm", "A resistance", "4.7 kΩ", _units("Ω", "m,_,k,M"),
                   _ladder(("MΩ", 6), ("kΩ", 3), ("Ω", 0), ("mΩ", -3)), OHM_MEANT),
    "F": Measure("f", "A capacitance", "10 µF", _units("F", "p,n,µ,m,_"),
                 _ladder(("µF", -6), ("nF", -9), ("pF", -12)),
                 {"p": "pF", "n": "nF", "µ": "µF", "mfd": "µF", "MFD": "µF", "µfd": "µF", "MF": "µF", "farad": "F"}),
    "H": Measure("h", "An inductance", "47 µH", _units("H", "n,µ,m,_"),
                 _ladder(("H", 0), ("mH", -3), ("µH", -6), ("nH", -9)), {"henry": "H", "µ": "µH", "n": "nH"}),
    "W": Measure("w", "A power", "5 W", _units("W", "m,_,k"), _ladder(("kW", 3), ("W", 0, -1), ("mW", -3)),
                 {"watt": "W", "watts": "W", "w": "W"}),
    "J": Measure("j", "An energy", "7 J", _units("J", "m,_,k"), _ladder(("kJ", 3), ("J", 0, -1), ("mJ", -3)),
                 {"joule": "J", "joules": "J", "Ws": "J"}),
    "s": Measure("s", "A time", "17 ms", SECONDS, _ladder(("s", 0), ("ms", -3), ("µs", -6), ("ns", -9)), TIME_MEANT),
    "min": Measure("minutes", "A time", "5 min", SECONDS, _ladder(("min", 0)), TIME_MEANT),
    "h": Measure("hours", "A time", "3 h", SECONDS, _ladder(("h", 0)), TIME_MEANT),
    "Hz": Measure("hz", "A frequency", "750 Hz", _units("Hz", "_,k,M"), _ladder(("MHz", 6), ("kHz", 3), ("Hz", 0)),
                  {"cps": "Hz", "hertz": "Hz", "k": "kHz", "M": "MHz"}),
    "rpm": Measure("rpm", "A speed of rotation", "300 rpm", {"rpm": (1, 0), "r/min": (1, 0)}, _ladder(("rpm", 0)),
                   {"min⁻¹": "rpm", "1/min": "rpm", "/min": "rpm"}),
    "B": Measure("bytes", "A size in bytes", "64 KiB", {**_units("B", "_,k,M,G", True), "byte": (1, 0), "bytes": (1, 0)},
                 _ladder(("B", 0)), {"b": "B"}, whole=True),
    "bit": Measure("bit", "A size in bits", "64 Kibit", {**_units("bit", "_,k,M,G", True), "bits": (1, 0)},
                   _ladder(("bit", 0)), {"b": "bit"}, whole=True),
    "bit/s": Measure("bits_per_s", "A bit rate", "5 Mbit/s", _units("bit/s", "_,k,M"),
                     _ladder(("Mbit/s", 6), ("kbit/s", 3), ("bit/s", 0)),
                     {"bps": "bit/s", "baud": "bit/s", "Bd": "bit/s", "kbps": "kbit/s", "Mbps": "Mbit/s", "b/s": "bit/s",
                      "kb/s": "kbit/s", "Mb/s": "Mbit/s", "bits/s": "bit/s"}),
    "B/s": Measure("bytes_per_s", "A byte rate", "522 kB/s", _units("B/s", "_,k,M", True),
                   _ladder(("MB/s", 6), ("kB/s", 3), ("B/s", 0)), {"bytes/s": "B/s"}),
    "mm": Measure("mm", "A length", "7.5 mm", {"mm": (1, 0), "cm": (1, 1), "m": (1, 3), "µm": (1, -3)},
                  _ladder(("mm", 0)), {"in": "mm", "inch": "mm", "inches": "mm", '"': "mm"}),
    "%": Measure("share", "A share", "15 %", {"%": (1, -2)}, _ladder(("%", -2)), {"percent": "%", "per cent": "%", "pct": "%"}),
    "°C": Measure("celsius", "A temperature", "85 °C", {"°C": (1, 0)}, _ladder(("°C", 0)),
                  {"C": "°C", "°": "°C", "deg": "°C", "degC": "°C", "c": "°C"}),
    "mAh": Measure("mah", "A charge", "1900 mAh", {"mAh": (1, 0), "Ah": (1, 3)}, _ladder(("mAh", 0)), {}),
}  # fmt: skip

SUFFIX: Mapping[str, str] = {unit: measure.suffix for unit, measure in MEASURES.items()}
"""The base units, by the name a schema gives them, and the ending of the records' fields that hold them."""

_SPACES = "[ \u00a0\u2009\u202f]*"
_PLAIN = re.compile(rf"([+\-\u2212]?){_SPACES}([0-9]+(?:\.[0-9]+)?){_SPACES}([^0-9\s.,+\-\u2212][^0-9.,]*)?")
_WITH_COMMA = re.compile(rf"([+\-\u2212]?)([0-9]+(?:,[0-9]+)+(?:\.[0-9]+)?){_SPACES}([^0-9.,]*)")
_LETTERED = re.compile(r"([+\-\u2212]?)([0-9]+)([pnuµmkKMGRrVAFHWΩ])([0-9]+)(.*)")
_SEVERAL = re.compile(r"[0-9].*(?:[–—±]|\+/-|\.\.|…|\bto\b|[0-9] ?[^0-9 ]* ?- ?[0-9]).*[0-9]")
_MILLS = re.compile(r"(?:K|Kb|kb|KB|Kbit|KBit|KiB/|KBytes?|Kbytes?|kbytes?|k|M|Mb|mb|mB|G|Gb|gb|KBit)")


def _one_spelling(unit: str) -> str:
    unit = unit.strip(" \u00a0\u2009\u202f").replace("\u03bc", "µ").replace("\u2126", "Ω").replace("\u2103", "°C")
    unit = re.sub(r"^u(?=[A-Za-zΩ])", "µ", unit)
    return re.sub(r"^([munpkKM]?) ?[oO]hms?$", lambda found: found[1] + "Ω", unit)


def read_quantity(text: str, unit: str) -> Decimal | Misread:
    """The quantity in its base unit, its digits as they were written, or why it is none.

    `unit` is a name in `SUFFIX`. `10 µF` in F gives 0.000010, `1.8 kΩ` in ohm gives 1.8E+3, `15 %` gives 0.15.
    """
    measure = MEASURES[unit]
    text = text.strip(" \u00a0\u2009\u202f")
    if sum(map(str.isdigit, text)) > MOST_DIGITS:
        return Misread(TOO_MANY_DIGITS, {"most": str(MOST_DIGITS), "wanted": measure.wanted})
    plain = _PLAIN.fullmatch(text)
    if plain is None:
        return _misread(text, measure)
    sign, digits, spelled = plain.groups(default="")
    if not spelled:
        return Misread(NO_UNIT, {"noun": measure.noun, "wanted": measure.wanted})
    found = measure.units.get(_one_spelling(spelled))
    if found is None:
        return _other_unit(spelled, digits, measure)
    number = Decimal(digits).scaleb(found[1], EXACT)
    number = _in_base(EXACT.multiply(number, Decimal(found[0])) if found[0] != 1 else number, unit)
    if measure.whole and number != number.to_integral_value():
        return Misread(NOT_WHOLE, {"noun": measure.noun, "unit": measure.suffix.removesuffix("s") + "s", "wanted": measure.wanted})
    return number.copy_negate() if sign in ("-", "\u2212") and number else number


def _in_base(number: Decimal, unit: str) -> Decimal:
    seconds = {"min": 60, "h": 3600}.get(unit)
    return EXACT.divide(number, Decimal(seconds)) if seconds else number


def _other_unit(spelled: str, digits: str, measure: Measure) -> Misread:
    spelled = spelled.strip(" \u00a0\u2009\u202f")
    if measure.suffix in ("bytes", "bit") and _MILLS.fullmatch(spelled):
        sign = "B" if measure.suffix == "bytes" else "bit"
        letter = spelled[0].upper()
        small = "k" if letter == "K" else letter
        wanted = f"`{digits} {letter}i{sign}` (of 1024) or `{digits} {small}{sign}` (of 1000)"
        return Misread(TWO_MEANINGS, {"unit": spelled, "wanted": wanted})
    one = _one_spelling(spelled)
    nearest = measure.meant.get(one) or nearest_name(one, list(measure.units))
    noun = measure.noun[0].lower() + measure.noun[1:]
    return Misread(OTHER_UNIT, {"unit": spelled[:20], "noun": noun, "wanted": measure.wanted}, nearest)


def _misread(text: str, measure: Measure) -> Misread:
    comma = _WITH_COMMA.fullmatch(text)
    if comma:
        return Misread(COMMA, {"wanted": _without_comma(comma[1], comma[2], comma[3] or measure.wanted.split()[1])})
    lettered = _LETTERED.fullmatch(text)
    if lettered:
        return Misread(LETTER_FOR_POINT, {"wanted": _with_point(lettered, measure)})
    if _SEVERAL.search(text):
        return Misread(SEVERAL_NUMBERS, {"wanted": measure.wanted})
    return Misread(NOT_A_NUMBER, {"noun": measure.noun, "wanted": measure.wanted})


def _without_comma(sign: str, digits: str, unit: str) -> str:
    joined = f"`{sign}{digits.replace(',', '')} {unit}`"
    if digits.count(",") > 1 or "." in digits:
        return joined
    pointed = f"`{sign}{digits.replace(',', '.')} {unit}`"
    return f"{pointed} or {joined}" if len(digits.split(",")[1]) == 3 else pointed


def _with_point(lettered: re.Match[str], measure: Measure) -> str:
    sign, whole, letter, rest, tail = lettered.groups()
    base = measure.wanted.split()[1].lstrip("kµm")
    for unit in (letter + base, letter.lower() + base, measure.meant.get(letter, ""), letter):
        spelled = _one_spelling(unit)
        if spelled in measure.units:
            return f"{sign}{whole}.{rest} {spelled}"
    return measure.wanted


def printed(value: Decimal | int, unit: str, places: int | None = None) -> str:
    """A figure as the site shows it: number, no-break space, unit with the prefix that suits its size.

    `places` None keeps the digits as they were written; otherwise halves are rounded away from zero.
    """
    number = Decimal(value)
    symbol, power = _prefix(number, unit, places)
    return f"{_digits(number, power, places)}\u00a0{symbol}"


def printed_range(low: Decimal | int, high: Decimal | int, unit: str, places: int | None = None) -> str:
    """Two bounds under one prefix: `4.75–5.25 V`; with `to` between them where a bound is negative."""
    ends = (Decimal(low), Decimal(high))
    symbol, power = _prefix(max(ends, key=abs), unit, places)
    between = " to " if min(ends) < 0 else "–"
    return between.join(_digits(end, power, places) for end in ends) + f"\u00a0{symbol}"


def printed_binary(value: Decimal | int, unit: str = "B", places: int | None = None) -> str:
    """A size in KiB, MiB or GiB (or Kibit …), in full or rounded: `10.160 MiB`; below 1024 in the unit itself."""
    number = Decimal(value)
    for prefix in ("Gi", "Mi", "Ki"):
        if abs(number) >= BINARY[prefix]:
            return f"{_digits(EXACT.divide(number, Decimal(BINARY[prefix])), 0, places)}\u00a0{prefix}{unit}"
    return f"{_digits(number, 0, places)}\u00a0{unit}"


def printed_decimal(value: Decimal | int, unit: str = "B", places: int | None = None) -> str:
    """A size in kB, MB or GB (or kbit …), in full or rounded: `10.654 MB`; below 1000 in the unit itself."""
    number = Decimal(value)
    for prefix in ("G", "M", "k"):
        if abs(number).adjusted() >= POWER[prefix] and number:
            return f"{_digits(number, POWER[prefix], places)}\u00a0{prefix}{unit}"
    return f"{_digits(number, 0, places)}\u00a0{unit}"


def _prefix(number: Decimal, unit: str, places: int | None) -> tuple[str, int]:
    ladder = MEASURES[unit].ladder
    if not number:
        return _at_zero(ladder)
    for place, (symbol, power, least) in enumerate(ladder):
        if number.adjusted() >= least or place == len(ladder) - 1:
            if places is not None and place and _rounded(number, power, places).adjusted() >= ladder[place - 1][2] - power:
                return ladder[place - 1][:2]
            return symbol, power
    raise AssertionError(unit)


def _at_zero(ladder: tuple[tuple[str, int, int], ...]) -> tuple[str, int]:
    return next(((symbol, power) for symbol, power, _ in ladder if not power), ladder[0][:2])


def _rounded(number: Decimal, power: int, places: int) -> Decimal:
    scaled = number.scaleb(-power, EXACT)
    return scaled.quantize(Decimal(1).scaleb(-places), ROUND_HALF_UP, EXACT)


def _digits(number: Decimal, power: int, places: int | None) -> str:
    scaled = number.scaleb(-power, EXACT) if places is None else _rounded(number, power, places)
    body = f"{abs(scaled):f}"
    whole, point, rest = body.partition(".")
    if len(whole) > 4:
        whole = f"{int(whole):,}"
    return ("\u2212" if scaled < 0 else "") + whole + point + rest
