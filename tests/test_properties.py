"""Laws that hold for every number, not only for those of a case: sums, falls, preferred values, maps, interleaves."""

from decimal import Decimal
from itertools import pairwise
from random import Random

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from benchsheaf.compute.card_conflicts import answered_ports
from benchsheaf.compute.laws import (
    heat,
    seconds_to_fall,
    smallest_at_least,
    standard_at_most,
    stored_energy,
    twelve,
    volts_after,
)
from benchsheaf.compute.memory_map import AreaFigures, address, area_figures, fill_figures, map_figures
from benchsheaf.compute.power import (
    Load,
    copper_ohm,
    least_load_figures,
    power_figures,
    resistance_beside,
    resistor_for,
    track_figures,
)
from benchsheaf.compute.storage import format_figures, interleave_figures, interleave_order
from benchsheaf.model.boards import Draw
from benchsheaf.model.drives import Geometry, LowLevelFormat
from benchsheaf.model.machine import Rail
from benchsheaf.model.memory import Area, Bank, Fill, FillGroup, Memory, MemoryChip
from benchsheaf.model.signals import PortRange
from benchsheaf.model.supply import Supply
from benchsheaf.standards import E24, LARGEST_BODY_W
from expected import record


def quantities(least: str, most: str) -> st.SearchStrategy[Decimal]:
    """Exact numbers as papers give them, with up to six places."""
    return st.decimals(Decimal(least), Decimal(most), places=6, allow_nan=False, allow_infinity=False)


FARADS = quantities("0.000001", "0.1")
OHMS = quantities("0.1", "1000000")
VOLTS = quantities("0.5", "500")

# Twelve digits are kept of each figure, so what is computed from two of them agrees to about eleven.
NEARLY = 1e-10


@given(FARADS, VOLTS)
def test_twice_the_voltage_is_four_times_the_energy(farad: Decimal, volt: Decimal) -> None:
    """Energy grows with the square of the voltage and with the capacitance."""
    once = stored_energy(farad, volt)
    assert float(stored_energy(farad, 2 * volt)) == pytest.approx(float(4 * once), rel=NEARLY)
    assert float(stored_energy(2 * farad, volt)) == pytest.approx(float(2 * once), rel=NEARLY)


@given(FARADS, OHMS, VOLTS, VOLTS)
def test_falling_for_the_time_of_a_fall_ends_where_it_should(
    farad: Decimal, ohm: Decimal, one: Decimal, other: Decimal
) -> None:
    """The two laws of a bled capacitor undo each other; what is below already does not rise."""
    high, low = max(one, other), min(one, other)
    seconds = seconds_to_fall(farad, ohm, high, low)
    assert seconds >= 0
    assert float(volts_after(farad, ohm, high, seconds)) == pytest.approx(float(low), rel=NEARLY)
    assert seconds_to_fall(farad, ohm, low, high) == 0


@given(FARADS, OHMS, VOLTS, VOLTS, VOLTS)
def test_a_fall_in_two_steps_takes_as_long_as_in_one(
    farad: Decimal, ohm: Decimal, one: Decimal, two: Decimal, three: Decimal
) -> None:
    """Waiting to a voltage between and then on is the whole wait."""
    low, middle, high = sorted((one, two, three))
    steps = seconds_to_fall(farad, ohm, high, middle) + seconds_to_fall(farad, ohm, middle, low)
    assert float(steps) == pytest.approx(float(seconds_to_fall(farad, ohm, high, low)), rel=1e-9, abs=1e-12)


@given(VOLTS, OHMS)
def test_heat_knows_no_direction(volt: Decimal, ohm: Decimal) -> None:
    """A minus rail heats a resistor like a plus rail."""
    assert heat(volt, ohm) == heat(-volt, ohm) > 0


@given(st.decimals("0.000001", "1000000000", allow_nan=False, allow_infinity=False))
def test_the_preferred_value_is_the_largest_of_all_that_do(ohm: Decimal) -> None:
    """The same as by trying every value of E24 in every decade."""
    every = [Decimal(step).scaleb(decade) for decade in range(-9, 12) for step in E24]
    assert standard_at_most(ohm) == max(value for value in every if value <= ohm)


@given(st.lists(quantities("0", "100")), quantities("0", "100"))
def test_what_is_taken_is_enough_and_nothing_smaller_would_be(offered: list[Decimal], wanted: Decimal) -> None:
    """Nothing is taken only where nothing does."""
    taken = smallest_at_least(wanted, offered)
    enough = [each for each in offered if each >= wanted]
    assert taken in enough if enough else taken is None
    assert all(taken is not None and taken <= each for each in enough)


@given(st.decimals("-1000000000000", "1000000000000", allow_nan=False, allow_infinity=False))
def test_twelve_digits_stay_what_they_are(value: Decimal) -> None:
    """Rounding once is enough, and moves nothing by more than half of the last digit."""
    rounded = twelve(value)
    assert twelve(rounded) == rounded
    assert len(rounded.as_tuple().digits) <= 12
    assert abs(rounded - value) <= abs(value) * Decimal("5e-12")


@given(quantities("0.001", "20"), quantities("1", "50"), quantities("0", "0.2"))
def test_the_resistor_draws_enough_and_the_next_larger_one_would_not(
    wanted_a: Decimal, nominal_v: Decimal, share: Decimal
) -> None:
    """Even at the low end of its rail, and no resistor of the series is larger and does."""
    ends = {"low_v": str(nominal_v * (1 - share)), "high_v": str(nominal_v * (1 + share))}
    rail = record(Rail, {"name": "R", "nominal_v": str(nominal_v), "window": ends})
    low_v = rail.window.low_v
    chosen = resistor_for(wanted_a, rail)
    assert chosen is not None
    assert float(low_v / chosen.resistance_ohm) >= float(wanted_a) * (1 - NEARLY)
    assert chosen.body_w is not None
    assert chosen.body_w >= 2 * chosen.piece_w
    if chosen.pieces > 1:
        one = standard_at_most(low_v / wanted_a)
        assert 2 * heat(rail.window.high_v, one) > LARGEST_BODY_W
        return
    larger = [Decimal(step).scaleb(decade) for decade in range(-6, 8) for step in E24]
    following = min(value for value in larger if value > chosen.resistance_ohm)
    assert low_v / following < wanted_a


RAIL = record(Rail, {"name": "R", "nominal_v": "12", "window": {"low_v": "11.4", "high_v": "12.6"}})


@given(quantities("0.001", "20"), quantities("0", "20"))
def test_a_larger_least_never_asks_for_more_ohms(least_a: Decimal, more_a: Decimal) -> None:
    """Of one resistor; of several like ones no less current. What is sure never asks for anything."""
    small, large = (least_load_figures(each, Decimal(0), RAIL) for each in (least_a, least_a + more_a))
    assert small is not None
    assert large is not None
    assert large.at_most_ohm <= small.at_most_ohm
    assert large.chosen.pieces >= small.chosen.pieces
    if small.chosen.pieces == large.chosen.pieces == 1:
        assert large.chosen.resistance_ohm <= small.chosen.resistance_ohm
        assert large.chosen.worst_w >= small.chosen.worst_w
    assert small.unmeasured.resistance_ohm <= small.chosen.resistance_ohm
    assert float(small.unmeasured.spread_a) >= float(small.missing_a) * (1 - NEARLY)
    assert least_load_figures(least_a, least_a + more_a, RAIL) is None


@given(OHMS, OHMS)
def test_what_hangs_beside_puts_the_reading_back(one: Decimal, other: Decimal) -> None:
    """Two things side by side read less than either, and the law finds the one from the two readings."""
    together = one * other / (one + other)
    assume(one / other < 1000)
    assert float(resistance_beside(together, other)) == pytest.approx(float(one), rel=1e-6)


@given(quantities("0.01", "50"), quantities("0.001", "2"), quantities("0.01", "50"))
def test_copper_grows_with_its_length_and_shrinks_with_its_area(
    length_m: Decimal, times: Decimal, area_mm2: Decimal
) -> None:
    """Twice as long is twice as much; twice as wide a track drops half as much, and needs twice the way."""
    area = area_mm2.scaleb(-6)
    assert float(copper_ohm(length_m * times, area)) == pytest.approx(
        float(copper_ohm(length_m, area) * times), rel=NEARLY
    )
    narrow, wide = track_figures(area_mm2), track_figures(area_mm2 * 2)
    assert float(narrow.drop_a_cm_v) == pytest.approx(float(wide.drop_a_cm_v * 2), rel=NEARLY)
    assert narrow.step_mm < wide.step_mm


MAP_BITS = 12
SPANS = st.tuples(st.integers(0, 2**MAP_BITS + 300), st.integers(1, 600))


def areas_of(spans: list[tuple[int, int]]) -> list[AreaFigures]:
    """Areas with a first address and a size."""
    return [
        area_figures(Area(id=f"a{place}", name=f"A{place}", base=f"{base:X}", size_bytes=size), None, MAP_BITS)
        for place, (base, size) in enumerate(spans)
    ]


def span(area: AreaFigures) -> range:
    """All addresses of an area."""
    return range(int(area.first, 16), int(area.last, 16) + 1)


@given(st.lists(SPANS, max_size=8))
def test_areas_and_gaps_together_are_the_whole_map(spans: list[tuple[int, int]]) -> None:
    """Every address is in an area or in exactly one gap, and no gap reaches beyond the map."""
    figures = map_figures(MAP_BITS, areas_of(spans))
    claimed = {number for area in figures.areas for number in span(area)}
    empty = [number for gap in figures.gaps for number in span(gap)]
    assert len(empty) == len(set(empty)) == sum(gap.size_bytes for gap in figures.gaps)
    assert not claimed & set(empty)
    assert claimed | set(empty) >= set(range(2**MAP_BITS))
    assert all(number < 2**MAP_BITS for number in empty)
    assert set(figures.beyond) == {area.name for area in figures.areas if max(span(area)) >= 2**MAP_BITS}


@given(st.lists(SPANS, max_size=8))
def test_every_pair_that_claims_the_same_is_told_with_what_it_claims(spans: list[tuple[int, int]]) -> None:
    """By trying every pair, address by address."""
    figures = map_figures(MAP_BITS, areas_of(spans))
    told = {frozenset((each.one, each.other)): each for each in figures.overlaps}
    assert len(told) == len(figures.overlaps)
    for place, one in enumerate(figures.areas):
        for other in figures.areas[place + 1 :]:
            both = sorted(set(span(one)) & set(span(other)))
            clash = told.pop(frozenset((one.name, other.name)), None)
            assert (clash is None) == (both == [])
            if clash:
                ends = (int(clash.first, 16), int(clash.last, 16), clash.size_bytes)
                assert ends == (both[0], both[-1], len(both))
    assert not told


@given(st.lists(SPANS, max_size=8), st.randoms(use_true_random=False))
def test_a_map_does_not_depend_on_the_order_of_a_file(spans: list[tuple[int, int]], dice: Random) -> None:
    """The same areas in another order give the same map, gaps and clashes."""
    areas = areas_of(spans)
    mixed = list(areas)
    dice.shuffle(mixed)
    assert map_figures(MAP_BITS, areas) == map_figures(MAP_BITS, mixed)


@given(st.integers(0, 2**40), st.integers(1, 40))
def test_an_address_is_its_number(number: int, bits: int) -> None:
    """Read back it is the same, with at least the digits of the address lines."""
    assume(number < 2**bits)
    text = address(number, bits)
    assert int(text, 16) == number
    assert len(text) == -(-bits // 4)


@given(
    st.lists(st.tuples(st.sampled_from([1024, 16384, 65536]), st.integers(1, 2)), min_size=1, max_size=5),
    st.sampled_from([1, 2, 4, 8]),
    st.booleans(),
)
def test_a_filling_holds_what_its_groups_hold(groups: list[tuple[int, int]], width: int, parity: bool) -> None:
    """Bytes, chips and parity chips of all groups add up; each group stands from its base on."""
    banks: list[Bank] = []
    filled: list[FillGroup] = []
    chips: dict[str, MemoryChip] = {}
    base = 0
    for number, (depth, lanes) in enumerate(groups):
        kind = MemoryChip(id=f"k{depth}", holds_bits=depth * width, width_bits=width)
        chips[kind.id] = kind
        names = tuple(f"b{number}-{lane}" for lane in range(lanes))
        for lane, name in enumerate(names):
            bits = tuple(f"N{len(banks)}X{place}" for place in range(8 // width))
            banks.append(Bank(id=name, lane=lane, bits=bits, parity=(f"N{len(banks)}P",) if parity else ()))
        filled.append(FillGroup(banks=names, chip=kind.id, base=f"{base:X}"))
        base += depth * lanes
    memory = Memory(
        word_bits=8, address_bits=20, parity="odd", chips=tuple(chips.values()), banks=tuple(banks), fills=()
    )
    figures = fill_figures(memory, Fill(id="f", name="F", groups=tuple(filled)))
    assert figures.total_bytes == base == sum(area.size_bytes for area in figures.areas)
    assert figures.parity_chips == (len(banks) if parity else 0)
    assert figures.chips == len(banks) * (8 // width) + figures.parity_chips
    assert sorted(ref for area in figures.areas for ref in area.parts) == sorted(
        ref for bank in banks for ref in bank.bits + bank.parity
    )
    assert not map_figures(20, figures.areas).overlaps


@given(st.integers(1, 200), st.integers(1, 250), st.integers(0, 1))
def test_an_interleave_leaves_out_no_sector(sectors: int, factor: int, first: int) -> None:
    """Every number passes the head once, beginning with the first; a coprime factor moves on by just itself."""
    order = interleave_order(sectors, factor, first)
    assert sorted(order) == list(range(first, first + sectors))
    assert order[0] == first
    places = {number: place for place, number in enumerate(order)}
    if sectors > 1:
        step = (places[first + 1] - places[first]) % sectors
        assert step == factor % sectors or factor % sectors == 0


@given(st.integers(1, 60), st.integers(1, 60), quantities("0.01", "0.5"))
def test_a_slower_interleave_reads_less_a_second(sectors: int, factor: int, turn_s: Decimal) -> None:
    """Rate times time is the track, and missing every sector is never quicker than a factor up to all of them."""
    geometry = Geometry(cylinders=1, heads=1, sectors=sectors, sector_bytes=512)
    figures = interleave_figures(geometry, factor, turn_s)
    assert float(figures.rate_bytes_per_s * figures.track_s) == pytest.approx(sectors * 512, rel=NEARLY)
    assert factor > sectors or figures.missed_track_s >= figures.track_s


@given(st.integers(1, 2000), st.integers(1, 16), st.integers(1, 10), quantities("0", "0.1"), quantities("0.01", "0.5"))
def test_waiting_makes_a_format_longer(
    cylinders: int, heads: int, turns: int, step_s: Decimal, turn_s: Decimal
) -> None:
    """The longer figure is at least half a turn a track more than the turning alone."""
    geometry = Geometry(cylinders=cylinders, heads=heads, sectors=1, sector_bytes=512)
    figures = format_figures(geometry, turn_s, LowLevelFormat(turns=turns, step_s=step_s))
    most = figures.turning_s * (1 + Decimal(1) / (2 * turns)) + step_s * cylinders
    assert figures.turning_s < figures.waiting_s <= most * (1 + Decimal("1e-9"))


CURRENTS = quantities("0", "3")
DRAWS = st.builds(
    Draw,
    rail=st.just("R"),
    run_a=CURRENTS,
    start_a=st.none() | CURRENTS,
    start_for_s=st.none() | quantities("0", "20"),
    rest_a=st.none() | CURRENTS,
    warm=st.none() | st.booleans(),
)
LOADS = st.lists(st.builds(Load, name=st.just("L"), draws=st.tuples(DRAWS), late=st.booleans()), max_size=6)


@given(LOADS, quantities("0.1", "10"))
def test_what_runs_is_never_less_than_what_is_sure(loads: list[Load], most_a: Decimal) -> None:
    """The least is no more than what runs, a late start no more than one together; no verdict without a reason."""
    output = {"rail": "R", "most_a": str(most_a), "peak_a": str(most_a * 2), "peak_for_s": "8"}
    rail = record(Rail, {"name": "R", "nominal_v": "12", "window": {"low_v": "11.4", "high_v": "12.6"}})
    given_supply = {"slug": "s", "name": "S", "summary": "", "mains": {"low_v": "220", "high_v": "240"}}
    supply = record(Supply, {**given_supply, "outputs": [output], "together_w": "100000"})
    (figures,) = power_figures(supply, [rail], loads, []).rails
    together = power_figures(supply, [rail], [Load(name="L", draws=each.draws) for each in loads], [])
    assert figures.least_a <= figures.run_a
    assert figures.cold_a <= figures.run_a
    assert figures.start_a <= together.rails[0].start_a
    assert figures.headroom_a == most_a - figures.run_a
    if figures.run_a > most_a:
        assert figures.carried == "no"
    if figures.start_a <= most_a:
        assert figures.carried == "yes"
        assert figures.over_for_s == 0
    if figures.carried == "yes" and figures.start_a > most_a:
        assert figures.over_for_s is not None
        assert figures.over_for_s <= 8


@given(LOADS, DRAWS, quantities("0.1", "10"))
def test_one_more_load_never_gives_more_headroom(loads: list[Load], more: Draw, most_a: Decimal) -> None:
    """Nor a lower start, nor a worse met least; and moments begin with the sum of their phase and never rise."""
    output = {"rail": "R", "most_a": str(most_a), "peak_a": str(most_a * 2), "peak_for_s": "8", "least_a": "0.5"}
    given_supply = {"slug": "s", "name": "S", "summary": "", "mains": {"low_v": "220", "high_v": "240"}}
    supply = record(Supply, {**given_supply, "outputs": [output], "together_w": "100000"})
    (less,) = power_figures(supply, [RAIL], loads, []).rails
    (figures,) = power_figures(supply, [RAIL], [*loads, Load(name="M", draws=(more,))], []).rails
    assert figures.headroom_a <= less.headroom_a
    assert figures.start_a >= less.start_a
    assert figures.least_met or not less.least_met
    assert figures.cold_start_a <= figures.start_a
    for phase in ("first", "late"):
        moments = [each for each in figures.moments if each.phase == phase]
        assert [each.sum_a for each in moments] == sorted((each.sum_a for each in moments), reverse=True)
        assert [each.from_s for each in moments[1:]] == [each.until_s for each in moments[:-1]]
        assert all(each.sum_a <= figures.start_a for each in moments)


@given(st.integers(0, 900), st.integers(1, 130), st.sets(st.integers(0, 9), max_size=4))
def test_copies_are_what_undecoded_lines_cannot_tell_apart(first: int, count: int, lines: set[int]) -> None:
    """A port answers if only lines that are left out tell it from one of the range; runs come in order, apart."""
    written = PortRange(
        id="a", name="A", first=f"P{first:X}", count=count, ignores=tuple(f"A{line}" for line in sorted(lines))
    )
    mask = sum(1 << line for line in lines)
    seen = {port & ~mask for port in range(first, first + count)}
    runs = answered_ports(written)
    told = [port for low, high in runs for port in range(low, high + 1)]
    assert told == [port for port in range(2048) if port & ~mask in seen]
    assert all(low > high + 1 for (_, high), (low, _) in pairwise(runs))
