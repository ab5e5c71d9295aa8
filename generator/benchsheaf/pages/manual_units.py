"""The manual's page about quantities: every unit, every spelling of it, and what is refused in its own words."""

import unicodedata
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from decimal import Decimal

from benchsheaf.quantities import MEASURES, Measure, Misread, read_quantity, spellings

# One text for each way of going wrong, and the unit that is wanted there. What is said of each, the reader says.
REFUSED = (
    ("16", "V"),
    ("16 ms", "V"),
    ("1,5 kΩ", "ohm"),
    ("4k7", "ohm"),
    ("nan V", "V"),
    ("1.0000000000000001 V", "V"),
    ("64 KB", "B"),
    ("11.4 to 12.6 V", "V"),
    ("0.5 B", "B"),
)


@dataclass(frozen=True, kw_only=True, slots=True)
class UnitRow:
    """A unit with its prefix: how it is written, how else it is read, and how much of the base unit it is.

    Signs that look the same in print, as the two for micro do, are told once.
    """

    name: str
    also: Sequence[str]
    worth: str


@dataclass(frozen=True, kw_only=True, slots=True)
class MeasureView:
    """What is measured: an example, its units, and what is written elsewhere with what to write here instead."""

    anchor: str
    noun: str
    example: str
    rows: Sequence[UnitRow]
    instead: Sequence[tuple[str, Sequence[str]]]


@dataclass(frozen=True, kw_only=True, slots=True)
class Refusal:
    """A text that is no quantity, and what is said of it."""

    code: str
    text: str
    words: str


@dataclass(frozen=True, kw_only=True, slots=True)
class UnitsPage:
    """All units, and all ways of going wrong."""

    measures: Sequence[MeasureView]
    refusals: Sequence[Refusal]
    mistakes: str


def units_page(mistakes: str) -> UnitsPage:
    """What the page says; `mistakes` is the way to the page about them."""
    return UnitsPage(measures=list(_measures()), refusals=list(_refusals()), mistakes=mistakes)


def _measures() -> Iterator[MeasureView]:
    """Each table of units once: seconds, minutes and hours share theirs."""
    seen: set[tuple[str, ...]] = set()
    for unit, measure in MEASURES.items():
        if tuple(measure.units) in seen:
            continue
        seen.add(tuple(measure.units))
        yield MeasureView(
            anchor=f"unit-{measure.suffix.replace('_', '-')}",
            noun=f"{measure.noun[0].upper()}{measure.noun[1:]}",
            example=measure.wanted,
            rows=[_row(unit, measure, name, several) for name, several in spellings(unit).items()],
            instead=list(_instead(measure)),
        )


def _row(unit: str, measure: Measure, name: str, several: Sequence[str]) -> UnitRow:
    worth = read_quantity(f"1 {name}", unit)
    assert not isinstance(worth, Misread)
    also = [each for each in several if _in_print(each) != _in_print(name)]
    number = worth.scaleb(2) if unit == "%" else worth
    bare = name == measure.symbol
    return UnitRow(name=name, also=also, worth="" if bare else f"{_plain(number)}\u00a0{measure.symbol}")


def _in_print(spelling: str) -> str:
    return unicodedata.normalize("NFKC", spelling)


def _plain(number: Decimal) -> str:
    whole, point, rest = f"{number.normalize():f}".partition(".")
    return f"{int(whole):,}{point}{rest}"


def _instead(measure: Measure) -> Iterator[tuple[str, Sequence[str]]]:
    """For each unit what people write for it that is not read."""
    for wanted in dict.fromkeys(measure.meant.values()):
        yield wanted, [written for written, meant in measure.meant.items() if meant == wanted]


def _refusals() -> Iterator[Refusal]:
    for text, unit in REFUSED:
        found = read_quantity(text, unit)
        assert isinstance(found, Misread)
        nearest = f" Did you mean `{found.nearest}`?" if found.nearest else ""
        yield Refusal(code=found.code.id, text=text, words=found.code.words.format_map(found.fills) + nearest)
