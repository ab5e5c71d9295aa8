"""How text becomes the words that are looked for: one spelling for each value, sign and name, however it is written.

`words` is written a second time in `site_overrides/assets/benchsheaf/search.js`, because what a visitor types is read
there; tests hold the two to the same answers. What only the build adds, other spellings of the same thing, is in
`spellings`.
"""

import re
from decimal import Decimal
from functools import lru_cache
from itertools import chain, pairwise
from unicodedata import category, normalize

# After compatibility forms and accents are gone: the micro sign is a Greek mu by then, the ohm sign an omega.
_OTHERWISE = str.maketrans(
    {"μ": "u", "ω": "ohm", "ς": "σ", "ß": "ss", "æ": "ae", "œ": "oe", "ø": "o", "ł": "l", "đ": "d", "\u0131": "i"}
    | {"×": "x"}
    | dict.fromkeys("\u2010\u2011\u2012\u2013\u2014\u2015\u2212", "-")
    | dict.fromkeys("'\u2018\u2019\u02bc°", "")
)
_DROPPED = {"Mn", "Cf"}  # accents; soft hyphens, direction marks and other signs without a width


class _Plain(dict[int, str | None]):
    """What each sign becomes, worked out when it first comes up."""

    def __missing__(self, code: int) -> str | None:
        kept = None if category(chr(code)) in _DROPPED else chr(code)
        self[code] = plain = _OTHERWISE.get(code, kept)
        return plain


_PLAIN = _Plain()

# Spellings that a number takes into one word with it, whether a space stands between or not.
_METRIC = {"v": "ukm", "a": "um", "w": "mk", "j": "mk", "f": "pnum", "h": "num", "ohm": "mk", "hz": "km", "s": "num"}
_SPOKEN = {
    "v": "volt volts vdc vac",
    "a": "amp amps ampere amperes",
    "w": "watt watts",
    "ohm": "ohms",
    "hz": "hertz",
    "uf": "mfd",
    "s": "sec secs second seconds",
    "min": "mins minute minutes",
    "h": "hour hours",
    "b": "byte bytes",
    "bit": "bits",
    "%": "percent",
}
_OTHERS = "min rpm b kb mb gb kib mib gib bit kbit mbit gbit kibit mibit gibit mm cm m um c mah ah %"
UNITS = (
    {prefix + unit: prefix + unit for unit, prefixes in _METRIC.items() for prefix in ("", *prefixes)}
    | {unit: unit for unit in _OTHERS.split()}
    | {spoken: unit for unit, several in _SPOKEN.items() for spoken in several.split()}
)

_CHUNK = re.compile(r"[+-]?(?:%|[^\W_]+(?:[-.,][^\W_]+)*%?)")
_SPACE = re.compile(r"[ \n\t]")
_BARE = re.compile(r"[+-]?[0-9]+(?:\.[0-9]+)?")
_VALUE = re.compile(
    r"([+-]?)([0-9]{1,3}(?:,[0-9]{3})+(?:\.[0-9]+)?|[0-9]+(?:[.,][0-9]+)?)(-?)((?:[^\W0-9_][^\W_]*)?%?)"
)
_GROUPED = re.compile(r"[1-9][0-9]{0,2}(?:,[0-9]{3})+(?:\.[0-9]+)?")
_RANGE = re.compile(r"([a-z]+)([0-9]+)-\1([0-9]+)")

# Entries come in the order of their titles, so that like texts of many machines follow each other.
_NEIGHBOURS = 1 << 10
_RECENT = 1 << 12


def folded(text: str) -> str:
    """A text without accents, capitals and signs of no width; one sign for all minus signs, `u` for micro."""
    if text.isascii():
        return text.lower().replace("'", "")
    return normalize("NFKD", text).lower().translate(_PLAIN)


@lru_cache(maxsize=_NEIGHBOURS)
def words(text: str) -> tuple[str, ...]:
    """The words of a text in their order: `10 µF` and `10uF` are `10uf`, `−12 V` is `-12v`, `SP-96` is `sp-96`."""
    found: list[str] = []
    is_open = False
    for piece in _SPACE.split(folded(text)):
        if piece:
            unit, rest, whole, ends_bare = _piece_words(piece)
            if unit and is_open:
                found[-1] += unit
                found += rest
            else:
                found += whole
            is_open = ends_bare
    return tuple(found)


@lru_cache(maxsize=_RECENT)
def _piece_words(piece: str) -> tuple[str, tuple[str, ...], tuple[str, ...], bool]:
    """Between two spaces: the unit at its head, the words after that, all words, whether a bare number ends it."""
    chunks = list(_CHUNK.finditer(piece))
    if not chunks:
        return "", (), (), False
    several = [_chunk_words(chunk[0]) for chunk in chunks]
    unit = UNITS.get(chunks[0][0], "") if chunks[0].start() == 0 else ""
    last = several[-1][-1] if several[-1] else ""
    ends_bare = chunks[-1].end() == len(piece) and _BARE.fullmatch(last) is not None
    return unit, tuple(chain(*several[1:])), tuple(chain(*several)), ends_bare


def _chunk_words(chunk: str) -> list[str]:
    """The words of what stands together without a space: values, names with hyphens, ranges."""
    if chunk[:1].isalpha() and chunk.isalnum():
        return [chunk]
    value = _VALUE.fullmatch(chunk)
    if value:
        sign, number, hyphen, rest = value.groups("")
        if not hyphen or rest in UNITS:
            return [sign + _number(number) + UNITS.get(rest, rest)]
    chunk = chunk.lstrip("+-").rstrip("%")
    left, hyphen, right = chunk.partition("-")
    if hyphen and left[:1].isascii() and left[:1].isdigit():
        return _chunk_words(left) + _chunk_words(right)
    if "." in chunk or "," in chunk:
        return [word for piece in re.split("[.,]", chunk) for word in _chunk_words(piece)]
    both = _RANGE.fullmatch(chunk)
    if both:
        return [both[1] + both[2], both[1] + both[3]]
    return [chunk] if chunk else []


def _number(written: str) -> str:
    """One spelling of a number: a comma before three digits parts thousands, any other stands for the point."""
    number = written.replace(",", "" if _GROUPED.fullmatch(written) else ".")
    return number.rstrip("0").rstrip(".") if "." in number else number


# What only the build adds: other ways to say the same.

_SERIES = re.compile(r"([a-z]+)([0-9]+)(?:-| to )\1([0-9]+)(?![0-9a-z])")
_QUANTITY = re.compile(r"([0-9]+(?:\.[0-9]+)?)(pf|nf|uf|kohm|mohm|ohm|v)")
_LONGEST_SERIES = 100
_SPAN = re.compile(r"(?<![a-z0-9])([+-]?[0-9][0-9.,]*)(?:-| to )[+-]?[0-9][0-9.,]* ?([a-z]+|%)")


@lru_cache(maxsize=_NEIGHBOURS)
def spellings(text: str) -> frozenset[str]:
    """The words of a text and every other way to write them: parts of a name, `4k7`, each member of `C50–C53`."""
    found = set(words(text))
    for word in tuple(found):
        found |= _other_spellings(word)
    plain = folded(text)
    if "-" not in plain and " to " not in plain:
        return frozenset(found)
    for letters, first, last in _SERIES.findall(plain):
        if int(last) - int(first) < _LONGEST_SERIES:
            found |= {f"{letters}{number}" for number in range(int(first) + 1, int(last))}
    for bound, unit in _SPAN.findall(plain):
        found |= set(words(bound + unit)) if unit in UNITS else set()
    return frozenset(found)


@lru_cache(maxsize=_RECENT)
def _other_spellings(word: str) -> frozenset[str]:
    if word.startswith("+"):
        return frozenset({word[1:]}) | _other_spellings(word[1:])
    if "-" in word[1:]:
        parts = word.split("-")
        # `SP-96` is also written SP96, but way 3 of the block S1, `S1-3`, is no S13.
        mixed = any(left[-1:].isdigit() and right[:1].isdigit() for left, right in pairwise(parts))
        return frozenset(parts) if mixed else frozenset({*parts, "".join(parts)})
    quantity = _QUANTITY.fullmatch(word)
    return frozenset(_said(quantity[1], quantity[2])) if quantity else frozenset()


def _said(number: str, unit: str) -> set[str]:
    """What people of the trade call a value: `4.7kohm` is 4k7 and 4.7k, `100nf` is 100n, 0.1u and 0.1uf."""
    said = _short(number, unit)
    value = Decimal(number)
    for other, by, usual in (
        ("uf", 1000, unit == "nf"),
        ("nf", 1000, unit == "pf" and value >= 100),
        ("nf", Decimal("0.001"), unit == "uf" and value < 10),
        ("pf", Decimal("0.001"), unit == "nf" and value < 100),
        ("kohm", 1000, unit == "ohm" and value >= 1000),
        ("ohm", Decimal("0.001"), unit == "kohm" and value < 100),
    ):
        if usual:
            scaled = _number(f"{value / by:f}")
            said |= {scaled + other} | _short(scaled, other)
    return said


def _short(number: str, unit: str) -> set[str]:
    """A value with the letter of its prefix alone, behind it or in the place of its point."""
    letter = "r" if unit == "ohm" else unit[0]
    short = {number + letter}
    return short | {number.replace(".", letter)} if "." in number else short
