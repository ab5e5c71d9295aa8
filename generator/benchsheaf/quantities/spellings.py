"""Every way in which a unit may be spelt, for people who look it up and for editors that check while one writes."""

from collections.abc import Iterator

from benchsheaf.quantities.measures import MEASURES
from benchsheaf.quantities.written import LONGEST, MOST_DIGITS

# What a keyboard or another paper has for the same sign. The reader takes them for one.
_MICRO = ("\u00b5", "\u03bc", "u")
_OHM_SIGN = "\u2126"
_CELSIUS_SIGN = "\u2103"
_OHM_WORDS = ("ohm", "ohms", "Ohm", "Ohms")


def spellings(unit: str) -> dict[str, tuple[str, ...]]:
    """Each unit in which a quantity may be written, as the table has it, with every spelling of it that is read.

    `unit` is one of `SUFFIX`. In ohm, `kΩ` has the spellings `kΩ`, `kohm`, `k ohm` and so on; the table's comes first.
    """
    return {name: tuple(dict.fromkeys(_alike(name))) for name in MEASURES[unit].units}


def _alike(name: str) -> Iterator[str]:
    yield name
    if name.startswith("µ"):
        for sign in _MICRO:
            yield from _other_signs(sign + name[1:])
    else:
        yield from _other_signs(name)


def _other_signs(name: str) -> Iterator[str]:
    yield name
    if name.endswith("Ω"):
        prefix = name[:-1]
        yield prefix + _OHM_SIGN
        for word in _OHM_WORDS:
            yield prefix + word
            if prefix:
                yield f"{prefix} {word}"
    elif name == "°C":
        yield _CELSIUS_SIGN


def quantity_pattern(unit: str) -> str:
    """What a quantity looks like, as a regular expression that editors understand too.

    It says all that `read_quantity` asks but one thing: that a size is a whole number of bytes or bits.
    Source: the dialect is ECMA-262's, which JSON Schema names; it also works in Python.
    """
    gap = "[ \u00a0\u2009\u202f]*"
    words = sorted(
        (word for several in spellings(unit).values() for word in several), key=lambda word: (-len(word), word)
    )
    short = rf"(?=\S.{{0,{LONGEST - 1}}}\s*$)"
    few = rf"(?!(?:[^0-9]*[0-9]){{{MOST_DIGITS + 1}}})"
    return rf"^{few}\s*{short}[+\-\u2212]?{gap}[0-9]+(?:\.[0-9]+)?{gap}(?:{'|'.join(words)})\s*$"
