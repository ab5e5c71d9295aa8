"""Quantities: read exactly as people write them, refused in words, and printed as people read them."""

import csv
import re
from decimal import Context, Decimal, localcontext
from pathlib import Path
from typing import Any

import bitmath
import pytest
import yaml
from hypothesis import given
from hypothesis import strategies as st

from benchsheaf.mistakes import Code
from benchsheaf.quantities import (
    SUFFIX,
    Misread,
    measures,
    printed,
    printed_binary,
    printed_decimal,
    printed_range,
    read_quantity,
    written,
)

HERE = Path(__file__).parent
CODES = {code.id: code for code in vars(written).values() if isinstance(code, Code)}


def cases(name: str) -> Any:
    """The cases of a file."""
    return yaml.safe_load((HERE / "cases" / "quantities" / f"{name}.yml").read_text(encoding="utf-8"))


def rows() -> list[dict[str, str]]:
    """The rows of the reference table, comments left out."""
    text = (HERE / "references" / "quantities.csv").read_text(encoding="utf-8")
    return list(csv.DictReader(line for line in text.splitlines() if not line.startswith("#")))


WORDS = cases("words")


def test_every_code_has_its_words() -> None:
    """No code is without a hand-written sentence, and no sentence without a code."""
    assert sorted(WORDS) == sorted(CODES)


@pytest.mark.parametrize("name", sorted(WORDS))
def test_the_words_of_a_code(name: str) -> None:
    """A code's sentence, filled as its example says, is the one that was written for it by hand."""
    code = CODES[name]
    assert code.words.format_map(code.example) == WORDS[name]
    assert code.meaning.endswith(".")


@pytest.mark.parametrize("row", rows(), ids=lambda row: f"{row['written']} in {row['unit']}")
def test_what_is_read_is_exact(row: dict[str, str]) -> None:
    """The very number, not one near it; the source stands in the row."""
    assert row["source"]
    assert read_quantity(row["written"], row["unit"]) == Decimal(row["exact"])


@pytest.mark.parametrize("case", cases("refused"), ids=lambda case: case["why"])
def test_what_is_refused(case: dict[str, str]) -> None:
    """A text that is no quantity is answered with the wanted form."""
    found = read_quantity(case["text"], case["unit"])
    assert isinstance(found, Misread)
    assert found.code.words.format_map(found.fills) == case["says"]
    assert found.nearest == case.get("nearest")


@pytest.mark.parametrize("case", cases("printed"), ids=lambda case: case["why"])
def test_how_figures_are_printed(case: dict[str, Any]) -> None:
    """Number, no-break space, unit."""
    shown = printed(Decimal(case["value"]), case["unit"], case.get("places"), case.get("rounds", "half"))
    assert shown == case["shows"].replace("_", "\u00a0")


@pytest.mark.parametrize("text,unit", [("1.8 kΩ", "ohm"), ("3.0 kΩ", "ohm"), ("11.40 V", "V"), ("10 µF", "F")])
def test_digits_are_printed_as_they_were_written(text: str, unit: str) -> None:
    """A zero that somebody wrote says how well they know it."""
    found = read_quantity(text, unit)
    assert isinstance(found, Decimal)
    assert printed(found, unit) == text.replace(" ", "\u00a0")


def test_counted_numbers_have_no_digits_to_keep() -> None:
    """A whole number is printed with the fewest digits that say it."""
    assert printed(100_000, "ohm") == "100\u00a0kΩ"
    assert printed(14_131_200, "B") == "14,131,200\u00a0B"


def test_ranges_have_one_unit() -> None:
    """A dash between, a word where a bound has a minus; both under the prefix of the greater."""
    assert printed_range(Decimal("4.75"), Decimal("5.25"), "V") == "4.75–5.25\u00a0V"
    assert printed_range(Decimal("-13.20"), Decimal("-10.80"), "V") == "−13.20 to −10.80\u00a0V"
    assert printed_range(Decimal("1.8E+3"), Decimal("3.0E+3"), "ohm") == "1.8–3.0\u00a0kΩ"
    assert printed_range(Decimal("8E+2"), Decimal("1.2E+3"), "ohm") == "0.8–1.2\u00a0kΩ"
    assert printed_range(Decimal("0.10"), Decimal("0.50"), "%") == "10–50\u00a0%"
    assert printed_range(Decimal("-0.1"), Decimal("0.1"), "V", 0) == "−100 to 100\u00a0mV"


def test_sizes_are_printed_in_both_families_of_prefixes() -> None:
    """The fixed disk of the demonstration: 14,131,200 bytes are 14.131 MB and 13.477 MiB, as its notes say."""
    assert printed_decimal(14_131_200, places=3) == "14.131\u00a0MB"
    assert printed_binary(14_131_200, places=3) == "13.477\u00a0MiB"


def test_sizes_are_printed_in_full_where_no_places_are_asked_for() -> None:
    """Powers of two have an end in decimals."""
    assert printed_binary(655_360) == "640\u00a0KiB"
    assert printed_binary(1536) == "1.5\u00a0KiB"
    assert printed_binary(65_536, "bit") == "64\u00a0Kibit"
    assert printed_binary(512, places=2) == "512\u00a0B"
    assert printed_decimal(999, places=1) == "999\u00a0B"
    # 1 / 2**30 by hand: 5**30 / 10**30, with 5**30 = 931322574615478515625.
    assert printed_binary(2**30 + 1) == "1.000000000931322574615478515625\u00a0GiB"


def test_rounding_takes_the_next_prefix_of_a_size() -> None:
    """No 1024.0 KiB and no 1000.0 kB."""
    assert printed_binary(2**20 - 1, places=1) == "1.0\u00a0MiB"
    assert printed_decimal(999_999, places=1) == "1.0\u00a0MB"


def test_suffixes_name_every_base_unit_once() -> None:
    """One name everywhere: two units with one suffix would give two fields one name."""
    assert len(set(SUFFIX.values())) == len(SUFFIX)
    assert {unit: SUFFIX[unit] for unit in ("V", "ohm", "B", "min", "%", "°C")} == {
        "V": "v",
        "ohm": "ohm",
        "B": "bytes",
        "min": "minutes",
        "%": "share",
        "°C": "celsius",
    }


@pytest.mark.parametrize("unit", SUFFIX)
def test_the_example_of_a_measure_is_a_quantity(unit: str) -> None:
    """What a mistake shows as the wanted form is accepted."""
    assert isinstance(read_quantity(measures.MEASURES[unit].wanted, unit), Decimal)


@pytest.mark.parametrize("unit", SUFFIX)
def test_what_is_offered_instead_is_a_quantity(unit: str) -> None:
    """Whoever takes the advice is not told of a mistake again."""
    measure = measures.MEASURES[unit]
    for spelling, meant in measure.meant.items():
        found = read_quantity(f"5 {spelling}", unit)
        assert isinstance(found, Misread), f"{spelling} is a unit and needs no advice"
        assert isinstance(read_quantity(f"5 {meant}", unit), Decimal)
        assert found.nearest == f"5 {meant}" or found.code.id == "UNIT-07"


FRACTIONS = st.decimals(min_value=-(10**6), max_value=10**6, places=6, allow_nan=False, allow_infinity=False)


@given(st.sampled_from([unit for unit in SUFFIX if unit not in ("B", "bit")]), FRACTIONS)
def test_what_is_printed_reads_as_the_same_number(unit: str, value: Decimal) -> None:
    """Nothing is lost on the way to the page and back, commas aside, which are for pages only."""
    assert read_quantity(printed(value, unit).replace(",", ""), unit) == value


@given(st.sampled_from(["B", "bit"]), st.integers(min_value=0, max_value=10**14))
def test_what_is_printed_of_a_size_reads_as_the_same_size(unit: str, value: int) -> None:
    """Bytes and bits one by one, and in full with a prefix, where the digits are not too many."""
    assert read_quantity(printed(value, unit).replace(",", ""), unit) == value
    assert read_quantity(printed_decimal(value, unit).replace(",", ""), unit) == value
    in_binary = printed_binary(value, unit).replace(",", "")
    if sum(map(str.isdigit, in_binary)) <= 15:
        assert read_quantity(in_binary, unit) == value


@given(st.integers(min_value=0, max_value=10**5), st.sampled_from(["KiB", "MiB", "GiB", "kB", "MB", "GB"]))
def test_sizes_agree_with_a_library_of_prefixes(count: int, prefixed: str) -> None:
    """A library made by others for such prefixes gives the same bytes."""
    assert read_quantity(f"{count} {prefixed}", "B") == int(getattr(bitmath, prefixed)(count).bytes)


@given(st.sampled_from(list(SUFFIX)), st.text(max_size=30))
def test_no_text_raises(unit: str, text: str) -> None:
    """Whatever a person writes is a number or an answer in words."""
    found = read_quantity(text, unit)
    assert isinstance(found, Decimal) or found.code.words.format_map(found.fills)


@given(
    st.sampled_from(list(SUFFIX)), st.from_regex(r"[+−-]?[0-9.,kKMRVun -]{1,12} ?[a-zA-ZµΩ%°/]{0,6}", fullmatch=True)
)
def test_no_nearly_good_text_raises(unit: str, text: str) -> None:
    """Texts that almost are quantities go through every answer."""
    found = read_quantity(text, unit)
    if isinstance(found, Misread):
        assert re.search(r"`.+`", found.code.words.format_map(found.fills)), "the wanted form is shown"


def test_long_texts_are_answered_at_once() -> None:
    """Five thousand digits, and a text that a careless pattern would chew on for hours."""
    for text in ("9" * 5000 + " V", "1" + "-" * 200_000, "1 " + "a" * 200_000, "1" + ",1" * 100_000):
        assert isinstance(read_quantity(text, "V"), Misread)


def test_the_context_of_a_caller_changes_nothing() -> None:
    """Three digits of precision somewhere else in the program do not reach the data."""
    with localcontext(Context(prec=3)):
        assert read_quantity("14.31818 MHz", "Hz") == Decimal("14318180")
        assert read_quantity("1048577 KiB", "B") == Decimal(1048577 * 1024)
        assert printed(Decimal("11.40123"), "V") == "11.40123\u00a0V"
        assert printed_binary(14_131_200, places=3) == "13.477\u00a0MiB"
