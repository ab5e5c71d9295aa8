"""New parts: ratings, limits and markings held against figures from outside; the sheet and the spreadsheet's table."""

import csv
import io
import re
from decimal import Decimal
from pathlib import Path

import eseries
import pytest
from hypothesis import given
from hypothesis import strategies as st

from benchsheaf.component_standards import (
    E6,
    E96,
    PICOFARAD_LETTERS,
    TOLERANCE_LETTERS,
    UNEVEN_LETTERS,
    USED_SHARES,
    VOLT_LETTERS,
)
from benchsheaf.compute.capacitors import (
    limit_figures,
    old_leakage,
    rating_figures,
    series_resistance,
    smoothing_figures,
    sold_value,
    usual_tan_delta,
    way_round,
)
from benchsheaf.compute.markings import capacitor_marking, resistor_marking, ring_colours
from benchsheaf.drawing.new_part import new_capacitor, new_resistor
from benchsheaf.drawing.picture import Box, Words, every_shape
from benchsheaf.export import as_csv, inert
from benchsheaf.model.boards import Part, Volts
from benchsheaf.model.supply import Output
from benchsheaf.site import Edition, edition, judgement
from expected import record, table, to_the_digits

Row = dict[str, str]
MICRO = Decimal(10) ** -6
PICO = Decimal(10) ** -12
PREFERRED = st.builds(lambda step, decade: Decimal(step).scaleb(decade), st.sampled_from(E6), st.integers(-11, -3))


def electrolytic(row: Row) -> Part:
    """An aluminium electrolytic with the value and the rating of a row."""
    size = {"x_mm": "5", "y_mm": "5"}
    given = {"ref": "C1", "kind": "electrolytic", "at": size, "body": size, "rated_v": row["rated_v"]}
    return record(Part, {**given, "capacitance_f": str(Decimal(row["capacitance_uf"]) * MICRO)})


@table("esr_limit")
def test_a_loss_stands_for_the_resistance_of_the_row(row: Row) -> None:
    """ESR from tan δ at the row's frequency; the usual table gives the row's tan δ, and a part without gets it."""
    part = electrolytic(row)
    farad, volt = Decimal(row["capacitance_uf"]) * MICRO, Decimal(row["rated_v"])
    assert usual_tan_delta(farad, volt) == Decimal(row["tan_delta"])
    at = series_resistance(Decimal(row["tan_delta"]), Decimal(row["at_hz"]), farad)
    assert at == to_the_digits(row["esr_ohm"])
    limits = limit_figures(part)
    assert limits is not None
    assert limits.usual_tan_delta
    if row["at_hz"] == "120":
        assert limits.esr_ohm == at


@table("leakage_limit")
def test_a_part_may_leak_what_the_row_says(row: Row) -> None:
    """By today's data sheets, and by old papers."""
    limits = limit_figures(electrolytic(row))
    assert limits is not None
    found = limits.leakage_a if row["rule"] == "today" else limits.old_leakage_a
    assert found == Decimal(row["leakage_ua"]) * MICRO


@table("aluminium_rating")
def test_an_aluminium_electrolytic_needs_the_rating_of_the_row(row: Row) -> None:
    """Volts over 80 %, and the next rating that is sold."""
    volts = Decimal(row["volts_v"])
    figures = rating_figures("electrolytic", volts, Volts(low_v=volts, high_v=volts))
    assert figures is not None
    assert (figures.least_v, figures.rated_v) == (Decimal(row["least_v"]), Decimal(row["sold_v"]))


@table("tantalum_rating")
def test_a_bead_needs_the_rating_of_the_row(row: Row) -> None:
    """The next rating that is sold, by the nominal volts and by the high end of the rail."""
    ends = sorted((Decimal(row["nominal_v"]), Decimal(row["worst_v"])))
    figures = rating_figures("tantalum", Decimal(row["nominal_v"]), Volts(low_v=ends[0], high_v=ends[1]))
    assert figures is not None
    wanted = (Decimal(row["enough_at_nominal_v"]), Decimal(row["enough_at_worst_v"]))
    assert (figures.rated_v, figures.worst_rated_v) == wanted


def test_the_basis_of_a_rating_is_told() -> None:
    """12 V needs 24 V, sold as 25 V; 12.6 V needs 25.2 V, sold as 35 V (computed, a common error to mix the two)."""
    figures = rating_figures("tantalum", Decimal(12), Volts(low_v=Decimal("11.4"), high_v=Decimal("12.6")))
    assert figures is not None
    assert (figures.least_v, figures.rated_v) == (Decimal(24), Decimal(25))
    assert (figures.worst_least_v, figures.worst_rated_v) == (Decimal("25.2"), Decimal(35))


@given(kind=st.sampled_from(sorted(USED_SHARES)), volts=st.decimals("0.5", "600", places=2), more=st.decimals(0, 50))
def test_a_rating_is_always_enough_and_never_falls(kind: str, volts: Decimal, more: Decimal) -> None:
    """What is sold keeps to the share; more volts never need less; where nothing is enough nothing is told."""
    small = rating_figures(kind, -volts, Volts(low_v=-volts, high_v=-volts))
    large = rating_figures(kind, volts + more, Volts(low_v=volts, high_v=volts + more))
    assert small is not None
    assert large is not None
    if small.rated_v is not None:
        assert volts / small.rated_v <= USED_SHARES[kind]
    if large.rated_v is not None:
        assert small.rated_v is not None
        assert large.rated_v >= small.rated_v


@given(farad=PREFERRED, times=st.integers(1, 9))
def test_twice_the_capacitance_is_half_the_resistance(farad: Decimal, times: int) -> None:
    """ESR goes with the inverse of capacitance and frequency, and with the loss (definition of tan δ)."""
    once = float(series_resistance(Decimal("0.1"), Decimal(120), farad))
    assert float(series_resistance(Decimal("0.1"), Decimal(120), farad * times)) == pytest.approx(once / times)
    assert float(series_resistance(Decimal("0.1"), Decimal(120 * times), farad)) == pytest.approx(once / times)
    assert float(series_resistance(Decimal("0.1") * times, Decimal(120), farad)) == pytest.approx(once * times)


@given(most=st.decimals("0.1", 100, places=1), several=st.integers(1, 8))
def test_several_cans_share_a_ripple(most: Decimal, several: int) -> None:
    """Side by side each may have so many times the resistance and bears that part of the current."""
    names = tuple(f"C{number}" for number in range(several))
    output = Output(rail="R", most_a=most, choke_ripple_share=Decimal("0.2"), smoothed_by=names)
    figures = smoothing_figures(output, Decimal("0.05"))
    assert figures is not None
    assert float(figures.esr_each_ohm) == pytest.approx(float(figures.esr_ohm) * several)
    assert float(figures.ripple_each_a) * several == pytest.approx(float(figures.ripple_a))
    assert figures.ripple_a < figures.choke_ripple_a


def test_what_is_not_known_is_not_told() -> None:
    """No share, no rail, no loss, no limit: no figure."""
    volts = Volts(low_v=Decimal(5), high_v=Decimal(5))
    assert rating_figures("film", Decimal(5), volts) is None
    size = {"x_mm": "5", "y_mm": "5"}
    bare = record(Part, {"ref": "C1", "kind": "electrolytic", "at": size, "body": size})
    assert limit_figures(bare) is None
    assert way_round(bare, Decimal(5)) is None
    assert usual_tan_delta(MICRO, Decimal(400)) is None
    assert old_leakage(MICRO, Decimal(500)) is None
    assert smoothing_figures(Output(rail="R", most_a=Decimal(1)), Decimal("0.05")) is None


@given(farad=st.decimals("1E-12", "0.01", allow_nan=False, places=14).filter(lambda value: value > 0))
def test_the_next_value_is_the_librarys(farad: Decimal) -> None:
    """The smallest preferred value that is not under it, as a library of such series has it."""
    theirs = eseries.find_greater_than_or_equal(eseries.E6, float(farad))
    assert float(sold_value(farad)) == pytest.approx(theirs, rel=1e-9)


def test_the_series_of_one_percent_is_the_librarys() -> None:
    """E96, value by value (eseries; IEC 60063)."""
    assert list(E96) == list(eseries.series(eseries.E96))


@table("resistor_rings")
def test_a_resistor_wears_the_rings_of_the_row(row: Row) -> None:
    """All rings in their order, and the drawing has them in that order with their words."""
    places = 2 if len(row["rings"].split()) == 4 else 3
    drift = int(row["drift_ppm"]) if row["drift_ppm"] else None
    share = Decimal(row["tolerance_percent"]) / 100
    rings = ring_colours(Decimal(row["resistance_ohm"]), share, places, drift)
    assert rings == tuple(row["rings"].split())
    shapes = list(every_shape(new_resistor(rings, "r").shapes))
    assert [shape.text for shape in shapes if isinstance(shape, Words)] == row["rings"].split()
    lefts = [shape.x for shape in shapes if isinstance(shape, Box) and shape.fill]
    assert lefts == sorted(lefts)
    assert len(lefts) == len(rings)


@table("resistor_codes")
def test_a_resistor_is_printed_as_the_row_says(row: Row) -> None:
    """Letters, three or four digits, two digits and a letter; and the letter of the tolerance."""
    marking = resistor_marking(Decimal(row["resistance_ohm"]))
    ways = {
        "letters": marking.letters,
        "three": marking.digits[:1],
        "four": marking.digits[-1:],
        "short": (marking.short,),
    }
    assert row["code"] in ways[row["way"]]
    if row["letter"]:
        assert TOLERANCE_LETTERS[Decimal(row["tolerance_percent"]) / 100] == row["letter"]


@table("capacitor_codes")
def test_a_capacitor_is_printed_as_the_row_says(row: Row) -> None:
    """Digits in picofarad or letters; and the letter of the tolerance, alike, uneven or in picofarad."""
    marking = capacitor_marking("ceramic", Decimal(row["capacitance_pf"]) * PICO, None)
    assert row["code"] in getattr(marking, row["way"])
    off = row["off_by"]
    if "/" in off:
        up, down = (abs(Decimal(each)) / 100 for each in off.split("/"))
        assert UNEVEN_LETTERS[up, down] == row["letter"]
    elif off.endswith(" pF"):
        assert PICOFARAD_LETTERS[Decimal(off.removesuffix(" pF")) * PICO] == row["letter"]
    elif off:
        assert TOLERANCE_LETTERS[Decimal(off) / 100] == row["letter"]


@table("capacitor_prints")
def test_a_polarised_part_is_printed_as_the_row_says(row: Row) -> None:
    """Value, volts and the side that is marked."""
    marking = capacitor_marking(row["kind"], Decimal(row["capacitance_uf"]) * MICRO, Decimal(row["rated_v"]))
    for name in ("printed", "chip", "marked_side"):
        assert not row[name] or getattr(marking, name) == row[name]
    assert not row["digits"] or row["digits"] in marking.digits


def test_the_letters_of_volts_are_those_of_the_row() -> None:
    """E 2.5, G 4, J 6.3, A 10, C 16, D 20, E 25, V 35, T 50 (MKC-28: common practice, from memory)."""
    told = "e 2.5, G 4, J 6.3, A 10, C 16, D 20, E 25, V 35, T 50"
    assert {letter: volt for volt, letter in VOLT_LETTERS.items()} == {
        letter: Decimal(volt) for letter, volt in (pair.split() for pair in told.split(", "))
    }


@pytest.fixture(scope="module")
def whole(repository: Path) -> Edition:
    """The demonstration."""
    return edition(judgement(repository / "machines"))


@pytest.fixture(scope="module")
def sheet(whole: Edition) -> str:
    """The sheet of new parts of the first machine, tags taken out."""
    page = next(each for each in whole.pages if each.address.endswith("bureau-8/new-parts.html"))
    return re.sub(r"\s+", " ", re.sub(r"<[^>]+>", " ", whole.html(page))).replace("\u00a0", " ")


@pytest.mark.parametrize(
    "wanted",
    [
        "Plus to ground , minus to −12 V",  # notes, section 11: C62 centre = ground; C431 plus to ground
        "Plus to +12 V , minus to ground",
        "50 mΩ each at 100 kHz",  # notes, SP-96: 50 milliohm each, 0.35 A each
        "0.35 A of ripple current",
        "red, red, yellow, gold",  # 220 kΩ by IEC 60062, clause 3
        "stripe is at minus",  # common practice (MKC-29)
        "note it before the old one comes out",
    ],
)
def test_the_sheet_says_what_a_hand_needs(sheet: str, wanted: str) -> None:
    """The facts of the pictures stand in words."""
    assert wanted.replace(" ,", ",") in sheet.replace(" ,", ",")


def test_cautions_stand_before_what_to_buy(sheet: str) -> None:
    """Stored charge first."""
    assert 0 < sheet.index("Supply open") < sheet.index("What to buy")


def cells(content: bytes) -> list[list[str]]:
    """The table as a spreadsheet reads it."""
    return list(csv.reader(io.StringIO(content.decode("utf-8-sig"))))


def test_the_table_holds_what_is_replaced_anyway(whole: Edition) -> None:
    """Typed from the notes of the machine, sections 11 and 18, and of SP-96 and OV-LN3."""
    head, *lines = cells(whole.files["data/shopping/ostervane-bureau-8.csv"])
    told = [dict(zip(head, line, strict=True)) for line in lines]
    bought = {each["for"]: (each["count"], each["rated"]) for each in told if each["when"] == "replaced anyway"}
    assert bought == {
        "C61 C62": ("2", "35\u00a0V"),
        "sp-96/CX1": ("1", ""),
        "sp-96/CS1": ("1", "50\u00a0V"),
        "ov-ln3/C430 ov-ln3/C431": ("2", "25\u00a0V"),
    }
    names = [name for each in told for name in each["for"].split()]
    assert len(names) == len(set(names))


@pytest.mark.parametrize("sign", ["=", "+", "-", "@", "\uff1d", "\uff0b", "\uff0d", "\uff20"])
@pytest.mark.parametrize(
    "before", ["", " ", "\u200b", "\ufeff", "a;", "a,", 'a"', "a; ", "\t", "\r", "\n", "\x00", "\x1b"]
)
def test_no_cell_is_a_formula(before: str, sign: str) -> None:
    """Neither at its start nor where a spreadsheet of another country cuts it; control signs are gone."""
    payload = f"{before}{sign}1+1"
    (cell,) = cells(as_csv([[payload]]))[0]
    for piece in re.split('[;,|"\t]', cell):
        assert not re.match("[\\s\u200b\ufeff]*[=+@\uff1d\uff0b\uff0d\uff20-]", piece), cell
    assert not re.search("[\\x00-\\x1f\\x7f]", cell)
    assert sign in cell


@given(text=st.text())
def test_a_cell_keeps_its_words(text: str) -> None:
    """Only apostrophes are added and control signs lost; a second time changes nothing that begins no formula."""
    kept = re.sub("[\x00-\x1f\x7f-\x9f\u2028\u2029]", " ", text)
    assert inert(text).replace("'", "") == kept.replace("'", "")


def test_harmless_cells_stay_as_they_are() -> None:
    """Values, names and a true minus are no formulas."""
    for text in ("10 µF", "C61 C62", "ov-ln3/C431", "−12 V", "6 × 6 mm", "dual-wipe socket", "it's"):
        assert inert(text) == text


def test_a_contributors_formula_reaches_no_spreadsheet(repository: Path, tmp_path: Path) -> None:
    """What a description says of a part to fit is a cell of the table."""
    folder = tmp_path / "machines"
    for path in (repository / "machines").rglob("*.yml"):
        text = path.read_text(encoding="utf-8")
        text = text.replace("kind: X2 film", 'kind: "=HYPERLINK(1;+2)"')
        target = folder / path.relative_to(repository / "machines")
        target.parent.mkdir(parents=True, exist_ok=True)
        target.write_text(text, encoding="utf-8")
    judged = judgement(folder)
    assert judged.mistakes == ()
    content = edition(judged).files["data/shopping/ostervane-bureau-8.csv"]
    (cell,) = [cell for line in cells(content) for cell in line if "HYPERLINK" in cell]
    assert cell == "film capacitor, '=HYPERLINK(1;'+2)"


def test_three_holes_have_their_words() -> None:
    """A bead of two legs in a place of three: plus in the middle, an outer hole stays empty (common practice)."""
    picture = new_capacitor("tantalum", ["10", "35"], ("ground", "−12 V"), "c", three_holes=True)
    places = {shape.text: shape.x for shape in every_shape(picture.shapes) if isinstance(shape, Words)}
    assert places["empty"] < places["plus"] < places["minus"]
    assert places["plus"] == places["ground"]
    assert "middle one of three holes for plus" in picture.label
