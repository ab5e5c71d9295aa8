"""Our figures held against figures from outside: each row of `references` names where it comes from."""

from decimal import Decimal
from math import pi

import bitmath
import eseries
import pytest

from benchsheaf.compute.capacitors import stress_figures
from benchsheaf.compute.clocks import clock_figures, refresh_figures
from benchsheaf.compute.laws import heat, seconds_to_fall, standard_at_most, stored_energy, volts_after
from benchsheaf.compute.memory_map import FillFigures, fill_figures
from benchsheaf.compute.power import Load, copper_ohm, power_figures, resistor_figures, resistor_for
from benchsheaf.compute.reservoir import reservoir_figures
from benchsheaf.compute.storage import (
    capacity_figures,
    format_figures,
    interleave_figures,
    interleave_order,
    read_slots,
    track_figures,
)
from benchsheaf.compute.video import mode_figures
from benchsheaf.model.boards import Draw, Part, Volts
from benchsheaf.model.drives import Geometry, LowLevelFormat
from benchsheaf.model.machine import DummyLoad, Rail
from benchsheaf.model.memory import Bank, Fill, FillGroup, Memory, MemoryChip, Refresh
from benchsheaf.model.signals import Clock, Mode
from benchsheaf.model.supply import Discharge, Reservoir, Supply
from benchsheaf.quantities import read_quantity
from benchsheaf.standards import E24, EXTRA_LOW_V, MEBIBYTE, MEGABYTE, TANTALUM_SHARE
from expected import record, table, to_the_digits, written

Row = dict[str, str]


def geometry(row: Row, **default: str) -> Geometry:
    """The geometry that a row names."""
    names = ("cylinders", "heads", "sectors", "sector_bytes")
    return record(Geometry, {name: row.get(name) or default[name] for name in names})


def seconds_a_turn(row: Row) -> Decimal:
    """How long one turn takes."""
    return 60 / Decimal(row["turns_rpm"])


def rail(nominal_v: str, low_v: str, high_v: str, name: str = "R") -> Rail:
    """A rail with its window."""
    return record(Rail, {"name": name, "nominal_v": nominal_v, "window": {"low_v": low_v, "high_v": high_v}})


def capacitor(rated_v: str) -> Part:
    """A capacitor on the rail R, with its rating."""
    size = {"x_mm": "5", "y_mm": "5"}
    return record(Part, {"ref": "C1", "kind": "tantalum", "at": size, "body": size, "rated_v": rated_v, "across": "R"})


def supply(rails: list[str], special: Row | None = None, together_w: str = "1000") -> Supply:
    """A supply that gives each rail more than is asked of it; `special` is what a row says of one rail's output."""
    outputs = [{"rail": name, "most_a": "100"} for name in rails]
    for output in outputs:
        if special and special["rail"] == output["rail"]:
            output.update(special)
    mains = {"low_v": "220", "high_v": "240"}
    given = {"slug": "s", "name": "S", "summary": "", "mains": mains, "outputs": outputs, "together_w": together_w}
    return record(Supply, given)


@table("drive_capacity")
def test_a_geometry_holds_what_the_row_says(row: Row) -> None:
    """Sectors and bytes to the last one, MB and MiB to the digits of the row."""
    figures = capacity_figures(geometry(row))
    assert figures.capacity_bytes == int(row["capacity_bytes"])
    assert figures.capacity_megabytes == to_the_digits(row["capacity_megabytes"])
    if row["sectors_in_all"]:
        assert figures.sectors == int(row["sectors_in_all"])
        assert figures.capacity_mebibytes == to_the_digits(row["capacity_mebibytes"])


@table("unformatted_track")
def test_formatting_leaves_of_a_track_what_the_row_says(row: Row) -> None:
    """Raw bytes of one turn, the share that holds data, and what each sector costs besides."""
    figures = track_figures(
        geometry(row, cylinders="1", heads="1"), Decimal(row["turns_rpm"]), Decimal(row["rate_bits_per_s"])
    )
    assert figures.raw_track_bytes == to_the_digits(row["raw_track_bytes"])
    assert figures.formatted_track_bytes == int(row["formatted_track_bytes"])
    assert figures.format_share * 100 == to_the_digits(row["format_percent"])
    assert figures.overhead_sector_bytes == to_the_digits(row["overhead_sector_bytes"])


@table("unformatted_disk")
def test_a_disk_holds_raw_what_its_standard_says(row: Row) -> None:
    """Bytes of a track and of the whole disk before formatting, from the density of a standard."""
    rate = Decimal(row["bits_a_turn"]) / seconds_a_turn(row)
    figures = track_figures(geometry(row, sectors="1", sector_bytes="1"), Decimal(row["turns_rpm"]), rate)
    assert figures.raw_track_bytes == to_the_digits(row["raw_track_bytes"])
    assert figures.raw_megabytes == to_the_digits(row["raw_megabytes"])


@table("interleave_order")
def test_sectors_pass_in_the_order_of_the_row(row: Row) -> None:
    """Every place of the track, those that were taken too."""
    order = interleave_order(int(row["sectors"]), int(row["factor"]), int(row["first"]))
    assert order == tuple(int(number) for number in row["order"].split())


@table("interleave_rate")
def test_a_track_is_read_at_the_rate_of_the_row(row: Row) -> None:
    """Time of a track and bytes a second at one turn for each step of the factor."""
    figures = interleave_figures(geometry(row, cylinders="1", heads="1"), int(row["factor"]), seconds_a_turn(row))
    assert figures.rate_bytes_per_s == to_the_digits(row["rate_bytes_per_s"])
    assert figures.track_s * 1000 == to_the_digits(row["track_ms"])


@table("low_level_format")
def test_a_low_level_format_takes_as_long_as_the_row_says(row: Row) -> None:
    """Rows with half a turn of waiting give our longer figure; the others the turning alone and the steps."""
    drive = geometry(row, sectors="17", sector_bytes="512")

    def waiting(step_s: Decimal) -> Decimal:
        way = LowLevelFormat(turns=int(row["turns"]), step_s=step_s)
        return format_figures(drive, seconds_a_turn(row), way).waiting_s

    step_s = Decimal(row["step_ms"]) / 1000
    found = waiting(step_s)
    if row["waiting"] == "no":
        way = LowLevelFormat(turns=int(row["turns"]), step_s=step_s)
        found += format_figures(drive, seconds_a_turn(row), way).turning_s - waiting(Decimal(0))
    assert found == to_the_digits(row["seconds"])


@table("interleave_exact")
def test_a_track_is_read_in_the_places_of_the_row(row: Row) -> None:
    """Places and turns from the first sector to the last; where the row says so, time and rate at 3600 rpm."""
    sectors, factor = int(row["sectors"]), int(row["factor"])
    slots = read_slots(interleave_order(sectors, factor), Decimal(row["gap"]))
    assert slots == int(row["slots"])
    assert Decimal(slots) / sectors == to_the_digits(row["turns"])
    if row["track_ms"]:
        seconds = Decimal(slots) / sectors / 60
        assert seconds * 1000 == to_the_digits(row["track_ms"])
        assert sectors * 512 / seconds == to_the_digits(row["rate_bytes_per_s"])


def test_the_range_of_a_format_holds_what_practice_sees() -> None:
    """A drive of 10 MB, 306 x 4 x 17 at 3600 rpm: bare turns under a minute, about five minutes with verification.

    Source: common practice.
    """
    drive = Geometry(cylinders=306, heads=4, sectors=17, sector_bytes=512)
    figures = format_figures(drive, Decimal(60) / 3600, LowLevelFormat(turns=2, step_s=Decimal("0.018")))
    assert figures.turning_s < 60
    assert figures.turning_s <= figures.waiting_s <= 300 <= figures.sector_by_sector_s


@table("stored_energy")
def test_a_bled_capacitor_falls_as_the_row_says(row: Row) -> None:
    """Energy, time, first current and heat, what is left; and the two laws of the fall undo each other."""
    farad = Decimal(row["capacitance_uf"]) / 10**6
    volt, ohm, end = Decimal(row["charged_v"]), Decimal(row["bleeder_ohm"]), Decimal(row["down_to_v"])
    seconds = seconds_to_fall(farad, ohm, volt, end)
    assert stored_energy(farad, volt) == to_the_digits(row["energy_j"])
    assert seconds == to_the_digits(row["fall_s"])
    assert volts_after(farad, ohm, volt, seconds) == pytest.approx(end, rel=Decimal("1e-9"))
    assert heat(volt, ohm) == to_the_digits(row["first_w"])
    assert stored_energy(farad, end) == to_the_digits(row["left_j"])


@table("stored_energy")
def test_a_reservoir_is_told_by_its_printed_values(row: Row) -> None:
    """The figures of a supply's page: energy, time constant, and the time to 60 V where the row falls to it."""
    figures = reservoir_figures(
        Reservoir(
            part="C1",
            capacitance_f=Decimal(row["capacitance_uf"]) / 10**6,
            charged_v=Decimal(row["charged_v"]),
            wait_minutes=Decimal(1),
            discharge=Discharge(resistance_ohm=Decimal(row["bleeder_ohm"]), bears_w=Decimal(10)),
            bleeder_ohm=Decimal(row["bleeder_ohm"]),
        )
    )
    assert figures.bleeder is not None
    assert figures.stored_energy_j == to_the_digits(row["energy_j"])
    assert figures.bleeder.time_constant_s == to_the_digits(row["time_constant_s"])
    if Decimal(row["down_to_v"]) == EXTRA_LOW_V:
        assert figures.bleeder.extra_low_s == to_the_digits(row["fall_s"])
    # The row starts from the charge itself, the page from the highest mains.
    worst_over = figures.worst_charged_v / Decimal(row["charged_v"])
    assert figures.discharge.first_a / worst_over * 1000 == to_the_digits(row["first_ma"])


def filled(row: Row) -> FillFigures:
    """The memory of a row, filled in all its banks from address 0 on."""
    together, times = int(row["banks_together"]), int(row["times"])
    bits, parity = int(row["bit_chips"]), int(row["parity_chips"])
    chip = MemoryChip(id="k", holds_bits=int(row["holds_bits"]), width_bits=int(row["width_bits"]))
    banks: list[Bank] = []
    groups: list[FillGroup] = []
    size = int(row["total_bytes"]) // times
    for group in range(times):
        names = tuple(f"b{group}-{lane}" for lane in range(together))
        for lane, name in enumerate(names):
            refs = tuple(f"N{len(banks)}{number:02}" for number in range(bits + parity))
            banks.append(Bank(id=name, lane=lane, bits=refs[:bits], parity=refs[bits:]))
        groups.append(FillGroup(banks=names, chip="k", base=f"{group * size:X}"))
    fill = Fill(id="f", name="F", groups=tuple(groups))
    memory = Memory(
        word_bits=8 * together,
        address_bits=max(20, (int(row["total_bytes"]) - 1).bit_length()),
        parity="odd" if parity else "none",
        chips=(chip,),
        banks=tuple(banks),
        fills=(fill,),
    )
    return fill_figures(memory, fill)


@table("memory_map")
def test_banks_stand_where_the_row_says(row: Row) -> None:
    """Total, and the first and last address of every bank."""
    figures = filled(row)
    assert figures.total_bytes == int(row["total_bytes"])
    ends = [tuple(int(end, 16) for end in span.split("-")) for span in row["areas"].split()]
    assert [(int(area.first, 16), int(area.last, 16)) for area in figures.areas] == ends
    assert [area.size_bytes for area in figures.areas] == [last - first + 1 for first, last in ends]


@table("parity_count")
def test_a_filling_takes_as_many_chips_as_the_row_says(row: Row) -> None:
    """Chips in all, and those of them that carry nothing but parity."""
    figures = filled(row)
    assert figures.total_bytes == int(row["total_bytes"])
    assert (figures.chips, figures.parity_chips) == (int(row["chips_in_all"]), int(row["parity_in_all"]))


BUDGET = written("references/power_budget.yml")


def budget_loads() -> list[Load]:
    """The loads of the rows about a power budget."""
    loads = []
    for number, load in enumerate(BUDGET["loads"]):
        draw = record(Draw, {"rail": load["rail"], "run_a": load["run"], "start_a": load.get("start", "null")})
        loads.append(Load(name=f"load {number}", draws=(draw,)))
    return loads


def budget_rails() -> list[Rail]:
    """The rails of the rows about a power budget; no row needs their windows."""
    return [rail(each["nominal_v"], each["nominal_v"], each["nominal_v"], each["rail"]) for each in BUDGET["rails"]]


def test_loads_add_up_to_the_budget_of_the_row() -> None:
    """Amperes and watts of each rail, running and starting, and of all together."""
    names = [each["rail"] for each in BUDGET["rails"]]
    figures = power_figures(supply(names), budget_rails(), budget_loads(), [])
    for wanted, found in zip(BUDGET["rails"], figures.rails, strict=True):
        for key in ("run_a", "run_w", "start_a"):
            if key in wanted:
                assert getattr(found, key) == Decimal(wanted[key]), f"{wanted['rail']} {key}"
    assert figures.run_w == Decimal(BUDGET["together"][0]["run_w"])
    assert figures.start_w == Decimal(BUDGET["together"][0]["start_w"])


def test_loads_are_measured_against_the_supply_of_the_row() -> None:
    """Shares of what the supply gives together, and of what it gives for a short time on one rail."""
    (row,) = BUDGET["supply"]
    special = {name: row[name] for name in ("rail", "peak_a", "peak_for_s")}
    names = [each["rail"] for each in BUDGET["rails"]]
    figures = power_figures(supply(names, special, row["together_w"]), budget_rails(), budget_loads(), [])
    assert figures.run_share * 100 == to_the_digits(row["run_percent"])
    assert figures.start_share * 100 == to_the_digits(row["start_percent"])
    peak = next(each.peak_share for each in figures.rails if each.rail == row["rail"])
    assert peak is not None
    assert peak * 100 == to_the_digits(row["peak_percent"])


@table("minimum_load")
def test_the_least_load_is_met_by_the_resistor_of_the_row(row: Row) -> None:
    """The value that is chosen, also out of a whole supply, and why the next larger one is not."""
    own = rail(row["nominal_v"], row["low_v"], row["high_v"])
    figures = resistor_figures(Decimal(row["resistance_ohm"]), own)
    assert figures.nominal_a == to_the_digits(row["nominal_a"])
    assert figures.nominal_w == to_the_digits(row["nominal_w"])
    assert figures.least_a == to_the_digits(row["low_a"])
    wanted = Decimal(row["least_a"]) - Decimal(row["drawn_a"])
    if row["chosen"] == "no":
        assert figures.least_a < wanted
        return
    assert figures.worst_w == to_the_digits(row["worst_w"])
    assert resistor_for(wanted, own) == figures
    loads = [Load(name="board", draws=(Draw(rail="R", run_a=Decimal(row["drawn_a"])),))]
    (found,) = power_figures(supply(["R"], {"rail": "R", "least_a": row["least_a"]}), [own], loads, []).rails
    assert found.wanted is not None
    assert (found.least_met, found.wanted.chosen) == (False, figures)
    assert found.wanted.missing_a == wanted
    if row["body_w"]:
        assert figures.body_w == Decimal(row["body_w"])


@table("copper_wire")
def test_a_metre_of_wire_has_the_resistance_of_the_row(row: Row) -> None:
    """Milliohm a metre from its area and its diameter, as near as their last digits allow: within 2 in 10,000."""
    area = Decimal(row["area_mm2"]).scaleb(-6)
    round_area = Decimal(pi) / 4 * Decimal(row["diameter_mm"]).scaleb(-3) ** 2
    for each in (area, round_area):
        assert float(copper_ohm(Decimal(1), each)) * 1000 == pytest.approx(float(row["milliohm_a_metre"]), rel=2e-4)


@table("resistor_load")
def test_resistors_side_by_side_draw_what_the_row_says(row: Row) -> None:
    """The sum on the rail, and the heat of each."""
    put_on = [
        DummyLoad(rail="R", resistance_ohm=Decimal(ohm), bears_w=Decimal(10), between="here and there")
        for ohm in row["resistances_ohm"].split()
    ]
    volts = row["nominal_v"]
    figures = power_figures(supply(["R"]), [rail(volts, volts, volts)], [], put_on)
    assert figures.rails[0].run_a == to_the_digits(row["together_a"])
    assert figures.run_w == to_the_digits(row["together_w"])
    assert Decimal(volts) / figures.rails[0].run_a == to_the_digits(row["together_ohm"])
    for found, watts in zip(figures.resistors, row["each_w"].split(), strict=True):
        assert found.nominal_w == to_the_digits(watts)


@table("rail_window")
def test_the_ends_of_a_window_are_those_of_the_row(row: Row) -> None:
    """What draws at the low end and heats at the high end does so at the row's volts, whatever their sign."""
    ends = sorted((abs(Decimal(row["low_v"])), abs(Decimal(row["high_v"]))))
    own = rail(row["nominal_v"], row["low_v"], row["high_v"])
    one_ohm = resistor_figures(Decimal(1), own)
    assert one_ohm.least_a == ends[0]
    assert one_ohm.worst_w == ends[1] ** 2
    stress = stress_figures(capacitor("1"), own.nominal_v, own.window)
    assert stress is not None
    assert stress.worst_stress_share == ends[1]
    share = Decimal(row["tolerance_percent"]) / 100
    assert stress.worst_stress_share == stress.stress_share * (1 + share)


@table("capacitor_stress")
def test_a_capacitor_is_driven_as_hard_as_the_row_says(row: Row) -> None:
    """The share of its rating at the nominal voltage and at the high end."""
    window = Volts(low_v=Decimal(row["nominal_v"]), high_v=Decimal(row["worst_v"]))
    figures = stress_figures(capacitor(row["rated_v"]), Decimal(row["nominal_v"]), window)
    assert figures is not None
    assert figures.stress_share * 100 == to_the_digits(row["stress_percent"])
    assert figures.worst_stress_share * 100 == to_the_digits(row["worst_stress_percent"])
    assert figures.stress_share > TANTALUM_SHARE


@table("tantalum_rating")
def test_half_its_rating_is_kept_by_the_bead_of_the_row(row: Row) -> None:
    """The share that we go by keeps the ratings of the row and refuses the next smaller ones that are sold."""
    sold = ["4", "6.3", "10", "16", "20", "25", "35", "50"]
    ends = sorted((Decimal(row["nominal_v"]), Decimal(row["worst_v"])))
    window = Volts(low_v=ends[0], high_v=ends[1])

    def shares(rated_v: str) -> tuple[Decimal, Decimal]:
        figures = stress_figures(capacitor(rated_v), Decimal(row["nominal_v"]), window)
        assert figures is not None
        return figures.stress_share, figures.worst_stress_share

    for place, column in enumerate(("enough_at_nominal_v", "enough_at_worst_v")):
        smallest = next(rated for rated in sold if shares(rated)[place] <= TANTALUM_SHARE)
        assert smallest == row[column]


@table("prefix")
def test_a_size_with_a_prefix_is_what_the_row_says(row: Row) -> None:
    """Read by us, and by a library of such prefixes."""
    assert read_quantity(row["written"], "B") == Decimal(row["bytes"])
    assert bitmath.parse_string(row["written"]).bytes == int(row["bytes"])


@table("prefix_difference")
def test_a_mebibyte_is_more_than_a_megabyte_by_what_the_row_says(row: Row) -> None:
    """Both constants against each other, and against a library of such prefixes."""
    assert (Decimal(MEBIBYTE) / MEGABYTE - 1) * 100 == to_the_digits(row["more_percent"])
    assert (bitmath.MiB(1).bytes, bitmath.MB(1).bytes) == (MEBIBYTE, MEGABYTE)


@table("drive_capacity")
def test_capacities_agree_with_a_library_of_prefixes(row: Row) -> None:
    """MB and MiB of every geometry, by the library to nine digits."""
    figures = capacity_figures(geometry(row))
    size = bitmath.Byte(figures.capacity_bytes)
    assert float(figures.capacity_megabytes) == pytest.approx(size.to_MB().value, rel=1e-9)
    assert float(figures.capacity_mebibytes) == pytest.approx(size.to_MiB().value, rel=1e-9)


@table("e_series")
def test_coarser_series_stand_in_ours(row: Row) -> None:
    """E12 and E6 are every second and every fourth value of E24."""
    assert list(E24[:: int(row["every"])]) == [int(value) for value in row["values"].split()]


@table("e_series_exceptions")
def test_our_series_is_that_of_the_standard_and_not_of_the_formula(row: Row) -> None:
    """Eight values of the standard are not what the formula gives."""
    assert int(row["in_the_standard"]) in E24
    assert int(row["by_the_formula"]) not in E24
    places = [round(10 ** (1 + place / 24)) for place in range(24)]
    assert E24[places.index(int(row["by_the_formula"]))] == int(row["in_the_standard"])


@table("e_series_at_most")
def test_the_preferred_value_is_that_of_the_row(row: Row) -> None:
    """The largest value of the series that is not above."""
    assert standard_at_most(Decimal(row["resistance_ohm"])) == Decimal(row["at_most_ohm"])


def test_preferred_values_agree_with_a_library_of_such_series() -> None:
    """E24 value by value, and the largest that is not above a resistance over seven decades."""
    assert list(E24) == list(eseries.series(eseries.E24))
    for decade in range(-3, 4):
        for step in (*E24, 99):
            for beside in (Decimal("0.999"), Decimal(1), Decimal("1.001")):
                value = Decimal(step).scaleb(decade) * beside
                theirs = eseries.find_less_than_or_equal(eseries.E24, float(value))
                assert float(standard_at_most(value)) == pytest.approx(theirs, rel=1e-9), value


@table("picture_rates")
def test_a_picture_has_the_rates_of_the_row(row: Row) -> None:
    """Line and frame rate from the dots, and how much of a line is shown."""
    given = {"id": "m", "name": "M", "crystal": "Y1"} | {name: row[name] for name in ("dots", "lines", "shown_dots")}
    figures = mode_figures(record(Mode, given), Decimal(row["dot_rate_mhz"]) * 10**6)
    assert figures.line_rate_hz == to_the_digits(row["line_rate_hz"])
    assert figures.frame_rate_hz == to_the_digits(row["frame_rate_hz"])
    assert figures.shown_line_s is not None
    assert figures.shown_line_s * 10**6 == to_the_digits(row["shown_line_us"])


@table("divided_clocks")
def test_a_crystal_is_divided_as_the_row_says(row: Row) -> None:
    """One step down and, where the divisor is even, the same in two steps."""
    chains = [[row["divided_by"]]] + (
        [[str(int(row["divided_by"]) // 2), "2"]] if int(row["divided_by"]) % 2 == 0 else []
    )
    for chain in chains:
        clocks = [record(Clock, {"id": "0", "name": "Crystal", "part": "Y1"})]
        for number, step in enumerate(chain):
            given = {"id": str(number + 1), "name": "Divided", "of": str(number), "divided_by": step}
            clocks.append(record(Clock, given))
        figures = clock_figures(clocks, {"Y1": Decimal(row["crystal_hz"])})
        assert figures[-1].frequency_hz == to_the_digits(row["frequency_hz"])


@table("memory_refresh")
def test_a_row_of_memory_is_refreshed_as_often_as_the_row_says(row: Row) -> None:
    """At the interval of the papers all rows are done exactly within the limit; a clock slower by a hair, and not."""
    within_s = Decimal(row["within_ms"]) / 1000
    refresh = record(Refresh, {"clock": "c", "every": "1", "rows": row["rows"], "within_s": str(within_s)})
    just = refresh_figures(refresh, {"c": 1 / (Decimal(row["interval_us"]) / 10**6)})
    late = refresh_figures(refresh, {"c": 1 / (Decimal(row["interval_us"]) / 10**6) - 1})
    assert just is not None
    assert late is not None
    assert just.interval_s * 10**6 == to_the_digits(row["interval_us"])
    assert (just.holds, late.holds) == (True, False)
