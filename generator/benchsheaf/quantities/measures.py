"""The closed table of base units: their spellings, the prefixes they take, and those they are printed with."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from decimal import Context

EXACT = Context(prec=28)
"""Fifteen digits of a person times ten of a binary prefix stay exact in it, whatever a caller's own context says."""

# Source: the SI brochure (metric prefixes) and IEC 80000-13 (binary prefixes).
POWERS = {"p": -12, "n": -9, "µ": -6, "m": -3, "c": -2, "": 0, "k": 3, "M": 6, "G": 9}
BINARY = {"Ki": 1024, "Mi": 1024**2, "Gi": 1024**3}


@dataclass(frozen=True, slots=True)
class Rung:
    """A unit with its prefix: in print, the power of ten it stands for, and the one from which on it is used."""

    symbol: str
    power: int
    least: int


@dataclass(frozen=True, slots=True)
class Measure:
    """One base unit.

    `suffix` ends the names of records' fields, `noun` and `wanted` are words of mistakes, `symbol` stands for it bare.
    `units` gives every spelling as (multiplier, power of ten). `rungs` are for print, the greatest first. `meant` gives
    the spelling for what people write instead. `whole` is a noun where there are no fractions.
    """

    suffix: str
    noun: str
    wanted: str
    symbol: str
    units: Mapping[str, tuple[int, int]]
    rungs: tuple[Rung, ...]
    meant: Mapping[str, str] = field(default_factory=dict)
    whole: str = ""


def _units(symbol: str, prefixes: str, *, binary: bool = False) -> dict[str, tuple[int, int]]:
    """The spellings of a unit, bare and with each prefix."""
    units = {prefix + symbol: (1, POWERS[prefix]) for prefix in ("", *prefixes)}
    return units | {prefix + symbol: (size, 0) for prefix, size in BINARY.items() if binary}


def _rungs(symbol: str, prefixes: str, **least: int) -> tuple[Rung, ...]:
    """Prefixes from the greatest down, `-` for none; each is used from one on, or from the power that `least` gives."""
    names = ["" if prefix == "-" else prefix for prefix in prefixes]
    return tuple(Rung(name + symbol, POWERS[name], least.get(name or "bare", POWERS[name])) for name in names)


_TIMES = {**_units("s", "nµm"), "min": (60, 0), "h": (3600, 0)}
_TIMES_MEANT = {
    **dict.fromkeys(("S", "sec", "secs", "second", "seconds"), "s"),
    **dict.fromkeys(("m", "mn", "mins", "minute", "minutes"), "min"),
    **dict.fromkeys(("H", "hr", "hrs", "hour", "hours"), "h"),
    "msec": "ms",
    "µsec": "µs",
}
_OHM_MEANT = {
    **dict.fromkeys(("R", "r", "E"), "Ω"),
    **dict.fromkeys(("k", "K", "KΩ", "kR", "KR"), "kΩ"),
    **dict.fromkeys(("M", "meg", "Meg", "MR"), "MΩ"),
}
_VOLT_MEANT = dict.fromkeys(("v", "volt", "volts", "VDC", "Vdc", "VAC", "Vac", "V DC", "V AC", "V dc", "V ac"), "V")
_FARAD_MEANT = {"p": "pF", "n": "nF", "µ": "µF", "mfd": "µF", "MFD": "µF", "µfd": "µF", "MF": "µF", "UF": "µF"}
_BIT_RATE_MEANT = {
    **dict.fromkeys(("bps", "baud", "Bd", "b/s", "bits/s"), "bit/s"),
    **dict.fromkeys(("kbps", "kb/s", "Kb/s", "Kbit/s", "kbits/s"), "kbit/s"),
    **dict.fromkeys(("Mbps", "Mb/s", "Mbits/s"), "Mbit/s"),
}

# A capacitance is never printed in mF, which older papers use for µF; a current keeps A, a power W and an energy J down
# to a tenth, as papers of the trade do.
MEASURES: Mapping[str, Measure] = {
    "V": Measure("v", "a voltage", "16 V", "V", _units("V", "µmk"), _rungs("V", "k-mµ"), _VOLT_MEANT),
    "A": Measure(
        "a", "a current", "0.35 A", "A", _units("A", "µm"), _rungs("A", "-mµ", bare=-1, m=-4),
        dict.fromkeys(("a", "amp", "amps", "ampere", "amperes"), "A"),
    ),
    "ohm": Measure("ohm", "a resistance", "4.7 kΩ", "Ω", _units("Ω", "mkM"), _rungs("Ω", "Mk-m", bare=-1), _OHM_MEANT),
    "F": Measure("f", "a capacitance", "10 µF", "F", _units("F", "pnµm"), _rungs("F", "µnp", µ=-7), _FARAD_MEANT),
    "H": Measure("h", "an inductance", "47 µH", "H", _units("H", "nµm"), _rungs("H", "-mµn"), {"n": "nH", "µ": "µH"}),
    "W": Measure(
        "w", "a power", "5 W", "W", _units("W", "mk"), _rungs("W", "k-m", bare=-1),
        dict.fromkeys(("w", "watt", "watts"), "W"),
    ),
    "J": Measure(
        "j", "an energy", "7 J", "J", _units("J", "mk"), _rungs("J", "k-m", bare=-1),
        dict.fromkeys(("joule", "joules", "Ws"), "J"),
    ),
    "s": Measure("s", "a time", "17 ms", "s", _TIMES, _rungs("s", "-mµn"), _TIMES_MEANT),
    "min": Measure("minutes", "a time", "5 min", "min", _TIMES, (Rung("min", 0, 0),), _TIMES_MEANT),
    "h": Measure("hours", "a time", "3 h", "h", _TIMES, (Rung("h", 0, 0),), _TIMES_MEANT),
    "Hz": Measure(
        "hz", "a frequency", "750 Hz", "Hz", _units("Hz", "kM"), _rungs("Hz", "Mk-"),
        {"hertz": "Hz", "cps": "Hz", "c/s": "Hz", "k": "kHz", "kc": "kHz", "M": "MHz", "Mc": "MHz"},
    ),
    "rpm": Measure(
        "rpm", "a speed of rotation", "300 rpm", "rpm", {"rpm": (1, 0), "r/min": (1, 0)}, (Rung("rpm", 0, 0),),
        dict.fromkeys(("/min", "min⁻¹", "U/min"), "rpm"),
    ),
    "B": Measure(
        "bytes", "a size", "64 KiB", "B", {**_units("B", "kMG", binary=True), "byte": (1, 0), "bytes": (1, 0)},
        (Rung("B", 0, 0),), {"b": "B"}, whole="bytes",
    ),
    "bit": Measure(
        "bits", "a size", "64 Kibit", "bit", {**_units("bit", "kMG", binary=True), "bits": (1, 0)},
        (Rung("bit", 0, 0),), {"b": "bit"}, whole="bits",
    ),
    "bit/s": Measure(
        "bits_per_s", "a bit rate", "5 Mbit/s", "bit/s", _units("bit/s", "kM"), _rungs("bit/s", "Mk-"),
        _BIT_RATE_MEANT,
    ),
    "B/s": Measure(
        "bytes_per_s", "a byte rate", "522 kB/s", "B/s", _units("B/s", "kM", binary=True), _rungs("B/s", "Mk-"),
        {"bytes/s": "B/s", "KB/s": "kB/s"},
    ),
    "mm": Measure(
        "mm", "a length", "7.5 mm", "mm", {"mm": (1, 0), "cm": (1, 1), "m": (1, 3), "µm": (1, -3)}, (Rung("mm", 0, 0),),
    ),
    "%": Measure(
        "share", "a share", "15 %", "%", {"%": (1, -2)}, (Rung("%", -2, -2),),
        dict.fromkeys(("percent", "per cent", "pct"), "%"),
    ),
    "°C": Measure(
        "celsius", "a temperature", "85 °C", "°C", {"°C": (1, 0)}, (Rung("°C", 0, 0),),
        dict.fromkeys(("C", "c", "°", "deg", "deg C", "degC", "° C"), "°C"),
    ),
    "mAh": Measure("mah", "a charge", "1900 mAh", "mAh", {"mAh": (1, 0), "Ah": (1, 3)}, (Rung("mAh", 0, 0),)),
}  # fmt: skip

SUFFIX: Mapping[str, str] = {unit: measure.suffix for unit, measure in MEASURES.items()}
"""The base units by the names that schemas give them, and the ending of the records' fields that hold them."""
