"""The handbook: figures against tables from outside, each on its page, cautions first, ways in both directions."""

import re
import shutil
import zlib
from collections.abc import Callable
from decimal import Decimal
from html import unescape
from pathlib import Path

import eseries
import pytest
from hypothesis import given
from hypothesis import strategies as st

from benchsheaf import urls
from benchsheaf.compute.handbook import (
    MarkFigures,
    capacitor_of_code,
    crc_sum,
    lead_drop,
    preferred_values,
    resistor_of_code,
    resistor_of_rings,
    sum_figures,
    wire_figures,
)
from benchsheaf.compute.handbook.polynomials import CRC_32, DISK_CRC, MIRRORED_CRC, SHORT_CRC, ZERO_CRC, Crc
from benchsheaf.compute.proof import hours_figures, starts_figures
from benchsheaf.fields import built_in_schemas
from benchsheaf.pages.finding import found_entries
from benchsheaf.pages.handbook.leaves import LEAVES, Leaf
from benchsheaf.pages.handbook.practice_page import TOPICS
from benchsheaf.pages.shelf import Shelf
from benchsheaf.site import Judgement, edition, judgement
from benchsheaf.standards import RING_DIGITS, RING_POWERS, RING_SHARES, VOLTAGE_LETTERS
from expected import rows, table, to_the_digits

Row = dict[str, str]
Text = Callable[[str], str]
FLOPPIES = [row for row in rows("drive_capacity") if int(row["cylinders"]) <= 80]
"""Rows of disks that the page has; the others are fixed disks."""


@pytest.fixture(scope="module")
def judged(repository: Path) -> Judgement:
    """The descriptions that travel with the program."""
    return judgement(repository / "machines")


@pytest.fixture(scope="module")
def pages(judged: Judgement) -> dict[str, str]:
    """Every page of the demonstration, written."""
    whole = edition(judged)
    found = {page.address: page.written() for page in whole.pages}
    assert list(whole.astray()) == []
    return found


@pytest.fixture(scope="module")
def text(pages: dict[str, str]) -> Text:
    """The words of one page of the handbook, cells apart, without its pictures."""

    def words(name: str) -> str:
        return plain(pages[urls.handbook(name)])

    return words


def plain(markup: str) -> str:
    """Markup without tags and pictures; no-break spaces are spaces."""
    bare = re.sub(r"<svg.*?</svg>", "", markup, flags=re.DOTALL)
    bare = re.sub(r"</t[hd]>", " | ", bare)
    return " ".join(unescape(re.sub(r"<[^>]+>", "", bare)).replace("\u00a0", " ").split())


def place(markup: str, ident: str) -> str:
    """The words of the point with an id, up to the next one."""
    return plain(markup.partition(f'id="{ident}"')[2].partition('<section class="handbook-point"')[0])


@table("copper_wire")
def test_a_wire_is_as_thick_as_the_row_says_and_stands_on_the_page(row: Row, text: Text) -> None:
    """Diameter, area and resistance of a metre, computed and printed with the digits of the row."""
    figures = wire_figures(int(row["gauge"]))
    assert figures.diameter_mm == to_the_digits(row["diameter_mm"])
    assert figures.area_mm2 == to_the_digits(row["area_mm2"])
    assert figures.metre_ohm * 1000 == to_the_digits(row["milliohm_a_metre"])
    assert f"{row['gauge']} | {row['diameter_mm']} | {row['area_mm2']} | {row['milliohm_a_metre']} |" in text("wires")


@table("resistor_marking")
def test_a_resistor_says_what_the_row_says(row: Row, text: Text) -> None:
    """Ohm, tolerance and change with temperature; and the marking stands on its page."""
    rings = row["marking"].split()
    figures = resistor_of_rings(rings) if row["kind"] == "rings" else resistor_of_code(row["marking"])
    assert figures.value == Decimal(row["resistance_ohm"])
    assert shares(figures) == ([row["tolerance_percent"]] * 2 if row["tolerance_percent"] else None)
    assert figures.ppm == (int(row["ppm"]) if row["ppm"] else None)
    page, marking = ("rings", ", ".join(rings)) if row["kind"] == "rings" else ("codes", row["marking"])
    found = re.search(rf"(?:^|\s){re.escape(marking)} \| ([\d.]+) ([kM]?)Ω", text(page))
    assert found is not None
    printed = Decimal(found[1]).scaleb({"": 0, "k": 3, "M": 6}[found[2]])
    assert printed == Decimal(row["resistance_ohm"])


@table("capacitor_marking")
def test_a_capacitor_says_what_the_row_says(row: Row, text: Text) -> None:
    """Farad and tolerance, a share or picofarads; and the marking stands on its page."""
    figures = capacitor_of_code(row["marking"])
    assert figures.value == Decimal(row["picofarad"]).scaleb(-12)
    wide = row["more_less_percent"].split()
    assert shares(figures) == (wide or ([row["tolerance_percent"]] * 2 if row["tolerance_percent"] else None))
    either = Decimal(row["either_pf"]).scaleb(-12) if row["either_pf"] else None
    assert figures.either_f == either
    found = re.search(rf"(?:^|\s){re.escape(row['marking'])} \| ([\d.]+) ([pnµ])F", text("codes"))
    assert found is not None
    assert Decimal(found[1]).scaleb({"p": 0, "n": 3, "µ": 6}[found[2]]) == Decimal(row["picofarad"])


def shares(figures: MarkFigures) -> list[str] | None:
    """A tolerance up and down in per cent, as rows have it."""
    if figures.more_share is None or figures.less_share is None:
        return None
    return [f"{(share * 100).normalize():f}" for share in (figures.more_share, figures.less_share)]


@table("voltage_letter")
def test_a_letter_is_the_voltage_of_the_row(row: Row, text: Text) -> None:
    """Capital and small e are two letters."""
    assert VOLTAGE_LETTERS[row["letter"]] == Decimal(row["rated_v"])
    assert f" {row['letter']} | {row['rated_v']} V |" in text("codes")


@table("checksum_kinds")
def test_every_kind_of_check_has_the_value_of_the_row(row: Row, text: Text) -> None:
    """The check values that every list of such kinds has, computed and printed."""
    kinds = {
        "crc_32": CRC_32,
        "from_ffff": DISK_CRC,
        "from_0000": ZERO_CRC,
        "mirrored_8005": MIRRORED_CRC,
        "crc_8": SHORT_CRC,
    }
    for name, kind in kinds.items():
        assert crc_sum(row["content"].encode(), kind) == int(row[name], 16), name
        assert f"| {row[name]} |" in text("sums"), name


@table("sector_checksum")
def test_a_field_of_a_sector_has_the_check_of_the_row(row: Row, text: Text) -> None:
    """With the marks before it, as a controller computes it."""
    begins = bytes.fromhex(row["begins"])
    content = begins.ljust(int(row["bytes"]), bytes.fromhex(row["filled_with"]))
    assert f"{crc_sum(content, DISK_CRC):04X}" == row["crc"]
    assert f"| {row['crc']} |" in text("sums")


@table("rom_image")
def test_an_image_has_the_sums_of_the_row(row: Row, text: Text) -> None:
    """Simple sums and cyclic checks; those of 8192 bytes stand on the page."""
    length = int(row["bytes"])
    content = {
        "blank": b"\xff" * length,
        "zero": bytes(length),
        "climbing": bytes((7 * place + 3) % 256 for place in range(length)),
    }[row["kind"]]
    simple = sum_figures(content)
    assert f"{simple.sum_8:02X} {simple.sum_16:04X} {simple.exclusive_or:02X}" == " ".join(
        row[name] for name in ("sum_8", "sum_16", "exclusive_or")
    )
    for name, kind in (("from_ffff", DISK_CRC), ("mirrored_8005", MIRRORED_CRC), ("crc_32", CRC_32)):
        assert crc_sum(content, kind) == int(row[name], 16)
    if length == 8192:
        cells = [row[name] for name in ("sum_8", "sum_16", "exclusive_or", "from_ffff", "crc_32")]
        assert " | ".join(cells) in text("sums")


@table("slack")
def test_a_file_takes_the_clusters_of_the_row(row: Row, text: Text) -> None:
    """One file with its clusters, bytes taken and bytes lost stands in the table; a thousand are among the errors."""
    file, cluster, used = (int(row[name]) for name in ("file_bytes", "cluster_bytes", "used_bytes"))
    if row["files"] == "1":
        cells = (file, cluster, used // cluster, used, int(row["slack_bytes"]))
        assert " | ".join(f"{number:,}" for number in cells) in text("disks")
    else:
        assert f"{used:,} B with" in text("errors")


@table("clean_starts")
def test_so_many_starts_prove_it_as_the_row_says(row: Row, text: Text) -> None:
    """Whole starts upwards, with the risk that tables of samples take."""
    figures = starts_figures(Decimal(row["fails_percent"]) / 100)
    assert figures.clean_starts == int(row["clean_starts"])
    assert f"{row['fails_percent']} % | {row['clean_starts']} |" in text("proof")


@table("common_errors")
def test_an_error_stands_on_its_page_with_the_figures_of_the_row(row: Row, pages: dict[str, str]) -> None:
    """Wrong, right and every figure of the row, at the place of that error and at no other."""
    found = place(pages[urls.handbook("errors")], row["place"])
    assert found.find("Wrong:") < found.find("Right:")
    for wanted in row["figures"].split("|"):
        assert wanted in found, (row["subject"], wanted, found)


@pytest.mark.parametrize("row", FLOPPIES, ids=lambda row: row["id"])
def test_a_floppy_holds_what_the_row_says(row: Row, text: Text) -> None:
    """Rows that the page has stand there to the byte, with MB and MiB."""
    shape = " × ".join(row[name] for name in ("cylinders", "heads", "sectors", "sector_bytes"))
    line = text("disks").partition(f"{shape} | ")[2].split(" | ")[:4]
    assert line[0] == f"{int(row['capacity_bytes']):,}"
    assert line[2:] == [row["capacity_megabytes"], row["capacity_mebibytes"]]


@pytest.mark.parametrize("number", [6, 12, 24, 96])
def test_series_agree_with_a_library_of_them(number: int) -> None:
    """Value by value; E96 by the formula."""
    theirs = [Decimal(str(each)) for each in eseries.series(eseries.ESeries(number))]
    scale = 1 if number < 96 else 10
    assert [each * scale for each in preferred_values(number)] == theirs


def test_prefixes_stand_with_their_worths(text: Text) -> None:
    """IEC 80000-13, clause 4; the difference of MiB and MB is 4.8576 %."""
    found = text("units")
    for wanted in ("1 MB | 1,000,000 | 1 MiB | 1,048,576 | 4.8576 %", "1 GiB | 1,073,741,824", "1,024,000"):
        assert wanted in found


def test_limits_of_file_systems_stand_there(text: Text) -> None:
    """ECMA-107: 4084 and 65,524 clusters; 65,535 sectors by hand; 4084 clusters of 4 KiB by a formatter."""
    found = text("disks")
    for wanted in ("4,084", "65,524", "65,535", "33,553,920", "32 MiB", "16,728,064"):
        assert wanted in found


def test_limits_of_touch_are_classes_and_no_permission(text: Text) -> None:
    """IEC TS 60479-1 and IEC 60950-1 as given in public: 50/120, 25/60, 42.4 peak, 60; said to permit nothing."""
    found = text("touch")
    for wanted in (
        "50 V a.c. | 120 V d.c.",
        "25 V a.c. | 60 V d.c.",
        "42.4 V peak | 60 V d.c.",
        "0.1 µF",
        "45 µC",
        "350 mJ",
    ):
        assert wanted in found
    assert "None of these figures is a permission to touch." in found
    for permission in ("safe to touch", "harmless", "may be touched", "safe after"):
        for sentence in re.split(r"(?<=[.:]) ", found):
            assert permission not in sentence or "Nothing on this page" in sentence


def test_the_energy_of_a_reservoir_is_worked_out(text: Text) -> None:
    """220 µF at 325 V by hand: 11.6 J, 37.2 s to 60 V through 100 kΩ, 373 V at the highest mains."""
    for wanted in ("11.6 J", "37.2 s", "373 V", "100 kΩ"):
        assert wanted in text("touch")


def test_a_supply_lead_loses_what_is_computed_by_hand(text: Text) -> None:
    """0.90 m of 0.82 mm² at 6.45 A: 0.122 V."""
    assert "At 6.45 A they lose 0.122 V" in text("wires")


@pytest.mark.parametrize("leaf", LEAVES, ids=lambda leaf: leaf.name)
def test_a_page_is_reached_from_home_and_both_ways_from_sheets(
    leaf: Leaf, pages: dict[str, str], judged: Judgement
) -> None:
    """Home and every other page lead there; each sheet that asks the question leads there, and is led to."""
    address = urls.handbook(leaf.name)
    assert f'href="{address}"' in pages[urls.HOME]
    assert f">{leaf.title}<" in pages[urls.HANDBOOK] or leaf.name == "index"
    for slug in judged.collection.machines:
        for sheet in leaf.sheets:
            there = urls.sheet(slug, sheet)
            assert f'href="{urls.relative(there, address)}">{leaf.title}</a>' in pages[there]
            assert f'href="{urls.relative(address, there)}"' in pages[address]


def test_many_sheets_lead_into_the_handbook() -> None:
    """At least five kinds of sheet; named sheets are sheets."""
    asked = {sheet for leaf in LEAVES for sheet in leaf.sheets}
    assert len(asked) >= 5
    assert {"drives", "memory", "first-power", "firmware", "service"} <= asked


@pytest.mark.parametrize("name", ["index", "touch", "practice", "errors", "proof"])
def test_cautions_stand_before_everything(name: str, pages: dict[str, str]) -> None:
    """Where work can hurt the cautions come before the answer and defer to local rules."""
    page = pages[urls.handbook(name)]
    assert 0 < page.index('class="caution"') < page.index('class="answer"')
    assert "Local rules and licensed people come before this sheet." in page


@pytest.mark.parametrize("leaf", LEAVES, ids=lambda leaf: leaf.name)
def test_every_table_names_its_source(leaf: Leaf, pages: dict[str, str]) -> None:
    """The source stands directly below each table; every error has its mark."""
    page = pages[urls.handbook(leaf.name)]
    assert page.count('</table></div>\n<p class="note">Source: ') == page.count("</table>")


def test_every_fact_of_practice_stands_under_its_topic_with_its_mark(judged: Judgement, pages: dict[str, str]) -> None:
    """Words, mark and what paper says so; the topics of the schema and of the page are the same."""
    page = pages[urls.handbook("practice")]
    facts = judged.collection.practice
    assert len(facts) > 60
    for fact in facts:
        found = place(page, f"practice-{fact.id}")
        assert fact.says.replace("\u00a0", " ") in found
        assert fact.mark.replace("-", " ").capitalize() in found
        assert not fact.seen or fact.seen in found
    schema = built_in_schemas().kinds["practice"].fields["practice"].item
    assert schema is not None
    assert set(schema.fields["topic"].allowed) == set(TOPICS)
    assert {fact.topic for fact in facts} == set(TOPICS)


def test_over_a_hundred_volts_is_replaced_and_nothing_else(text: Text) -> None:
    """No page tells how to bring back a part for more than 100 V; what is for less is attended, out of circuit."""
    found = text("practice")
    assert "Over 100 V: replace it. Common practice." in found
    reforming = [sentence for sentence in found.split(". ") if "eform" in sentence]
    assert all("450 V" not in sentence and "kΩ" not in sentence for sentence in reforming)
    (told,) = (sentence for sentence in reforming if "100 V" in sentence)
    assert "out of circuit, attended" in told


def test_a_collection_without_practice_has_no_page_of_it(repository: Path, tmp_path: Path) -> None:
    """Nothing leads there then; the other questions stay."""
    folder = tmp_path / "machines"
    shutil.copytree(repository / "machines", folder)
    (folder / "_shared" / "practice.yml").unlink()
    whole = edition(judgement(folder))
    written = {page.address: page.written() for page in whole.pages}
    assert urls.handbook("practice") not in written
    assert urls.handbook("proof") in written
    assert list(whole.astray()) == []


def test_questions_errors_and_practice_can_be_found(judged: Judgement) -> None:
    """Entries of the kind Handbook, each with its way: of a page, a section, an error, a fact."""
    shelf = Shelf(collection=judged.collection, workup=judged.workup, links=judged.links, things=judged.things)
    found = {each.way: each for each in found_entries(shelf) if each.kind == "Handbook"}
    for way in (
        "handbook/proof.html",
        "handbook/wires.html#gauges",
        "handbook/errors.html#megabytes",
        "handbook/practice.html#practice-bead-half",
    ):
        assert way in found


@given(st.binary(max_size=300))
def test_a_long_check_agrees_with_a_library(content: bytes) -> None:
    """CRC-32 of any bytes is that of zlib, and the complement byte makes the sum zero."""
    assert crc_sum(content, CRC_32) == zlib.crc32(content)
    assert sum_figures(content + bytes([sum_figures(content).complement_8])).sum_8 == 0


@given(st.binary(min_size=1, max_size=100), st.sampled_from([DISK_CRC, ZERO_CRC]))
def test_a_block_with_its_check_behind_it_leaves_nothing(content: bytes, kind: Crc) -> None:
    """What a controller does at the end of a sector: over data and check together it comes to zero."""
    assert crc_sum(content + crc_sum(content, kind).to_bytes(2, "big"), kind) == 0


@given(st.binary(min_size=2, max_size=64), st.integers(0, 500), st.integers(1, 255))
def test_one_wrong_byte_never_passes_a_check(content: bytes, at: int, wrong: int) -> None:
    """A CRC of 16 bits finds every error within 16 bits in a row, and so every single byte."""
    at %= len(content)
    other = content[:at] + bytes([content[at] ^ wrong]) + content[at + 1 :]
    assert crc_sum(content, DISK_CRC) != crc_sum(other, DISK_CRC)


@given(st.decimals("0.01", "0.99", places=3), st.decimals("0.01", "0.99", places=3))
def test_rarer_failures_want_more_starts(one: Decimal, other: Decimal) -> None:
    """The risk left is at most 5 % with the starts that are told, and above it with one less."""
    rare, often = sorted((one, other))
    assert starts_figures(rare).clean_starts >= starts_figures(often).clean_starts
    figures = starts_figures(one)
    assert (1 - one) ** figures.clean_starts <= Decimal("0.0500000001")
    assert (1 - one) ** (figures.clean_starts - 1) > Decimal("0.0499999999")


@given(st.decimals("0.1", "1000", places=2))
def test_clean_hours_grow_with_the_time_between_failures(hours: Decimal) -> None:
    """Twice as rare takes twice as long, and always three times what was seen."""
    assert hours_figures(2 * hours).clean_hours == 2 * hours_figures(hours).clean_hours == 6 * hours


@given(st.integers(-3, 36))
def test_a_higher_gauge_is_thinner_and_loses_more(gauge: int) -> None:
    """Resistance times area is the same copper at every gauge."""
    here, thinner = wire_figures(gauge), wire_figures(gauge + 1)
    assert thinner.area_mm2 < here.area_mm2
    assert thinner.metre_ohm > here.metre_ohm
    assert float(here.metre_ohm * here.area_mm2) == pytest.approx(0.017241)
    assert lead_drop(here.area_mm2, Decimal(1), Decimal(1)).drop_v == pytest.approx(here.metre_ohm, rel=Decimal("1e-9"))


@given(st.integers(10, 99), st.sampled_from(sorted(RING_POWERS)), st.sampled_from(sorted(RING_SHARES)))
def test_rings_are_read_as_they_were_put_on(digits: int, multiplier: str, tolerance: str) -> None:
    """Two digits as rings are the same two digits, and three with a zero are the same resistor."""
    first, second = (RING_DIGITS[int(digit)] for digit in str(digits))
    four = resistor_of_rings([first, second, multiplier, tolerance])
    assert four.value == digits * Decimal(10) ** RING_POWERS[multiplier]
    assert four.more_share == RING_SHARES[tolerance]
    five = resistor_of_rings([first, second, "black", multiplier, tolerance])
    assert five.value == 10 * four.value
