"""Pictures say what the facts say: places, boundaries, words, ids, and nothing that a contributor could slip in."""

import re
from collections.abc import Iterator
from dataclasses import replace
from decimal import Decimal
from itertools import pairwise
from pathlib import Path
from xml.etree import ElementTree

import pytest
from playwright.sync_api import Browser

from benchsheaf.compute.memory_map import AreaFigures, map_figures
from benchsheaf.compute.power import PowerFigures, ladder
from benchsheaf.compute.removal import removal_order
from benchsheaf.compute.reservoir import reservoir_figures
from benchsheaf.compute.storage import interleave_figures, track_figures
from benchsheaf.drawing.attributes import coordinate
from benchsheaf.drawing.board import board_pictures
from benchsheaf.drawing.clock_tree import Node, clock_tree
from benchsheaf.drawing.connector import connector
from benchsheaf.drawing.discharge import discharge_curve
from benchsheaf.drawing.drive import drive_pictures
from benchsheaf.drawing.flawed_tracks import flawed_tracks
from benchsheaf.drawing.interleave import interleave_ring
from benchsheaf.drawing.ladder import ladder_picture
from benchsheaf.drawing.lettering import spread, words_frame, wrapped
from benchsheaf.drawing.load_bars import load_bars
from benchsheaf.drawing.memory_map import memory_map
from benchsheaf.drawing.picture import (
    Both,
    Box,
    Circle,
    Group,
    Line,
    Picture,
    Polygon,
    Shape,
    Words,
    drawn,
    every_shape,
)
from benchsheaf.drawing.picture import (
    Path as Way,
)
from benchsheaf.drawing.port_strip import Stretch, port_strip
from benchsheaf.drawing.rail_scales import rail_scales
from benchsheaf.drawing.rate_ranges import Scale, Tick, rate_ranges
from benchsheaf.drawing.removal_graph import removal_graph
from benchsheaf.drawing.rung_panels import Rung
from benchsheaf.drawing.sheaf import sheaf_edge
from benchsheaf.drawing.start_times import Lane as StartLane
from benchsheaf.drawing.start_times import start_times
from benchsheaf.drawing.switch_block import switch_block
from benchsheaf.drawing.timeline import common_scale, timeline
from benchsheaf.drawing.views import view_pictures
from benchsheaf.drawing.volume import volume_strip
from benchsheaf.model.boards import Extent, Ohms, Part, PartRow, Pin, Point, Volts
from benchsheaf.model.drives import Geometry
from benchsheaf.model.machine import Machine, Rail, ToGround
from benchsheaf.model.plugs import ContactRow, Position
from benchsheaf.model.signals import Feature, Hertz, View
from benchsheaf.model.supply import Discharge, Reservoir, Supply
from benchsheaf.site import Judgement, judgement

NOTES = "the demonstration notes, section 11: part, x, y, width, height in mm, from the left and the back edge"
# By hand: half the size off each side of the centre; the main board is 340 mm wide, so that a unit is a millimetre.
MAIN_BODIES = {
    "N1": (152.0, 46.5, 76.0, 23.0),
    "PW1": (285.0, 7.5, 30.0, 9.0),
    "SL3": (64.5, 13.0, 9.0, 98.0),
    "N20": (243.5, 50.0, 37.0, 16.0),
    "N49": (133.0, 132.0, 8.0, 20.0),
    "N79": (133.0, 210.0, 8.0, 20.0),
    "N33": (168.0, 207.5, 8.0, 25.0),
}
# Notes, section 7: the ports of the machine and its cards as delivered; the copy is made up.
STRETCHES = (
    Stretch(first=0x000, last=0x00F, name="Keyboard and switches"),
    Stretch(first=0x010, last=0x01F, name="Counter"),
    Stretch(first=0x020, last=0x027, name="Sound and parity latch"),
    Stretch(first=0x028, last=0x02F, name="Interrupt unit"),
    Stretch(first=0x100, last=0x10F, name="Fixed disks"),
    Stretch(first=0x120, last=0x12F, name="Fixed disks", copy=True),
)
MAIN_BEADS = {"C61": (262.0, 20.0), "C62": (142.0, 62.0), "C50": (155.0, 142.0), "C53": (155.0, 220.0)}
MAIN_WEAK = ["C61", "C62", "C50", "C51", "C52", "C53", "N20", "N21", *(f"N{number}" for number in range(41, 50))]


@pytest.fixture(scope="module")
def judged(repository: Path) -> Judgement:
    """The machines of the checkout with their figures."""
    return judgement(repository / "machines")


@pytest.fixture(scope="module")
def machine(judged: Judgement) -> Machine:
    """The machine of the notes."""
    return judged.collection.machines["ostervane-bureau-8"]


@pytest.fixture(scope="module")
def supply(judged: Judgement) -> Supply:
    """Its supply."""
    return judged.collection.supplies["sp-96"]


def power(judged: Judgement, outfit: str) -> PowerFigures:
    """The loads of an outfit of the machine."""
    outfits = judged.workup.machines["ostervane-bureau-8"].outfits
    return next(each.power for each in outfits if each.id == outfit)


@pytest.fixture(scope="module")
def main_board(machine: Machine) -> Both:
    """The main board, every part linked."""
    board = machine.boards[0]
    refs = [part.ref for part in board.all_parts()]
    weak = {ref: ref for ref in MAIN_WEAK}
    return board_pictures(board.size, board.parts, board.rows, weak, "main", {ref: f"#{ref}" for ref in refs})


@pytest.fixture(scope="module")
def gallery(judged: Judgement, machine: Machine, supply: Supply, main_board: Both) -> dict[str, Both]:
    """Every kind of picture of the machine."""
    workup = judged.workup.machines[machine.slug]
    assert supply.reservoir
    assert workup.reservoir
    assert workup.outfits[0].map
    storage = judged.workup.drives["ov-hd14"].storage
    assert storage.interleave
    made = {"main": main_board}
    made |= {
        f"load-{each.id}": load_bars(each.power, supply, machine.rails, f"load-{each.id}") for each in workup.outfits
    }
    made |= {f"plug-{each.id}": connector(each.rows, each.seen or "", f"plug-{each.id}") for each in machine.connectors}
    bus = judged.collection.buses["l-bus"]
    made["slot"] = connector(bus.rows, bus.seen or "", "slot")
    block = [each for each in machine.switches if each.part == "S1"]
    made["block"] = switch_block("S1", block, [each.as_delivered for each in block], "block")
    made["ports"] = port_strip(STRETCHES, 0x1FF, 3, "ports")
    made["rails"] = rail_scales(machine.rails, "rails")
    made["discharge"] = discharge_curve(supply.reservoir, workup.reservoir, "discharge")
    made["map"] = memory_map(workup.outfits[0].map, "map")
    assert workup.sounds
    scale = common_scale(workup.sounds.beeps)
    codes = {f"lane-{letter}": each for letter, each in zip("abcdef", workup.sounds.beeps, strict=True)}
    made |= {name: timeline(each, scale, each.id, name) for name, each in codes.items()}
    made |= volume_pictures(judged)
    made["ring"] = interleave_ring(storage.interleave, storage.track, "ring")
    made |= {f"view-{each.id}": view_pictures(each, f"view-{each.id}") for each in machine.views}
    rungs = [Rung(name=each.name, power=power(judged, each.id)) for each in ladder(machine.configurations)]
    made["ladder"] = ladder_picture(rungs, supply, "ladder")
    made["starts"] = start_times(start_lanes(judged, supply), "starts")
    made["ranges"] = rate_ranges(SCALES, "ranges")
    made["clocks"] = clock_tree(CLOCKS, "clocks")
    made["removals"] = removal_graph(
        machine.removals, workup.bench.removals, removal_order(machine.removals), {"cover": "#removal-cover"}
    )
    return made


def volume_pictures(judged: Judgement) -> dict[str, Both]:
    """Every volume and every list of flaws of the machine's drives."""
    made: dict[str, Both] = {}
    for slug in ("ov-hd14", "ov-fd7"):
        drive, workup = judged.collection.drives[slug], judged.workup.drives[slug]
        for volume, figures in zip(drive.volumes, workup.volumes, strict=True):
            assert figures.layout
            name = f"volume-{volume.name}"
            made[name] = volume_strip(volume, figures.layout, figures.loss, name)
        for flaws, found in zip(drive.flaw_lists, workup.flaw_lists, strict=True):
            picture = flawed_tracks(flaws, found, drive.geometry, drive.accept, f"flaws-{flaws.id}")
            assert picture
            made[f"flaws-{flaws.id}"] = picture
    return made


# The rates of the demonstration, section 5 of its notes.
SCALES = (
    Scale(
        name="Line rate",
        locks=Hertz(low_hz=Decimal(19200), high_hz=Decimal(20800)),
        ticks=[
            Tick(name="80 letters by 24 lines", rate_hz=Decimal(20000), printed="20.00 kHz", fits=True),
            Tick(name="Television", rate_hz=Decimal(15625), printed="15.625 kHz", fits=False),
        ],
    ),
)
CLOCKS = (
    Node(id="y", name="Crystal of the machine", rate="36.000 MHz", part="Y1", of=None, divided_by=None),
    Node(id="p", name="Processor and bus", rate="6.000 MHz", part="N5", of="y", divided_by=6),
    Node(id="c", name="Counter", rate="1.500 MHz", part="N12", of="y", divided_by=24),
    Node(id="t", name="Tick", rate="100 Hz", part="N12", of="c", divided_by=15000),
)


def start_lanes(judged: Judgement, supply: Supply) -> list[StartLane]:
    """+12 V as delivered, and with a second disk that starts late."""
    output = next(each for each in supply.outputs if each.rail == "+12 V")
    found = [(name, power(judged, name).rails) for name in ("as-delivered", "second-fixed-disk-late")]
    rails = [(name, next(each for each in several if each.rail == "+12 V")) for name, several in found]
    return [StartLane(name=name, figures=rail, output=output) for name, rail in rails]


def both_of(pictures: Both) -> list[Picture]:
    """The two drawings."""
    return [pictures.wide, pictures.phone]


def shapes(picture: Picture) -> list[Shape]:
    """All shapes, those in groups too."""
    return list(every_shape(picture.shapes))


def texts(picture: Picture) -> list[str]:
    """Every line of words, with plain spaces."""
    return [each.text.replace("\u00a0", " ") for each in shapes(picture) if isinstance(each, Words)]


def boxes(picture: Picture, css_class: str) -> list[Box]:
    """Rectangles of one class."""
    return [each for each in shapes(picture) if isinstance(each, Box) and each.css_class == css_class]


def lines(picture: Picture, css_class: str) -> list[Line]:
    """Straight lines of one class."""
    return [each for each in shapes(picture) if isinstance(each, Line) and each.css_class == css_class]


def part_group(picture: Picture, ref: str) -> Group:
    """The group of a part, found by its title."""
    return next(
        each
        for each in picture.shapes
        if isinstance(each, Group) and each.title and each.title.partition(":")[0] == ref
    )


def centre(polygon: Polygon) -> tuple[float, float]:
    """The middle of a diamond."""
    (_, top), (right, _), (_, bottom), (left, _) = polygon.points
    return (left + right) / 2, (top + bottom) / 2


# Boards


@pytest.mark.parametrize("ref", MAIN_BODIES)
def test_a_part_lies_where_the_notes_say(main_board: Both, ref: str) -> None:
    """Centre and size of the notes make the body, on the wide drawing and on the phone's, both 340 units wide."""
    for picture in both_of(main_board):
        (body, *_) = (each for each in part_group(picture, ref).shapes if isinstance(each, Box))
        assert (body.x, body.y, body.width, body.height) == MAIN_BODIES[ref], NOTES


def test_every_part_of_every_row_is_drawn(machine: Machine, main_board: Both) -> None:
    """Twenty single parts and 49 in rows (5 slots, 4 beads, 4 drivers, 36 chips), counted in the notes."""
    groups = [each for each in main_board.wide.shapes if isinstance(each, Group)]
    assert len(groups) == 20 + 49
    assert {each.title.partition(":")[0] for each in groups if each.title} == {
        part.ref for part in machine.boards[0].all_parts()
    }


@pytest.mark.parametrize("ref", MAIN_BEADS)
def test_a_bead_is_its_diamond(main_board: Both, ref: str) -> None:
    """A weak part under 8 mm has no body of its own: the diamond stands in its place."""
    for picture in both_of(main_board):
        own = part_group(picture, ref).shapes
        (mark,) = (each for each in own if isinstance(each, Polygon))
        assert centre(mark) == MAIN_BEADS[ref]
        assert not [each for each in own if "body" in each.css_class]


def test_a_weak_part_is_a_bead_only_if_small_both_ways() -> None:
    """Look, section 6: under 8 mm the diamond is the part; 6 by 9 mm, or 8 by 8, is hatched like any other."""
    for width, height, hatched in ((6, 9, 1), (9, 6, 1), (8, 8, 1), (7, 7, 0)):
        one = part("C1", 50, 25, width, height)
        for picture in both_of(board_pictures(extent(100, 50), [one], (), {"C1": "C1"}, "b", {})):
            assert len([each for each in shapes(picture) if each.css_class == "body weak"]) == hatched
            assert len([each for each in shapes(picture) if each.css_class == "diamond"]) == 1


def test_a_card_is_as_wide_as_a_board(judged: Judgement) -> None:
    """170 mm on 340 units: two units a millimetre; N301 of the notes, 60 22, 62 x 16, is 124 by 32 from 58 28."""
    card = judged.collection.cards["ov-dk1"]
    assert card.size
    pictures = board_pictures(card.size, card.parts, (), {}, "card", {}, back="top edge", seen="component side")
    for picture in both_of(pictures):
        assert boxes(picture, "outline board-body")[0].width == 340
        (body, *_) = (each for each in part_group(picture, "N301").shapes if isinstance(each, Box))
        assert (body.x, body.y, body.width, body.height) == (58.0, 28.0, 124.0, 32.0)
        assert {"top edge", "component side"} <= set(texts(picture))


def test_wide_and_phone_mark_the_same_weak_parts(main_board: Both) -> None:
    """Whoever sees only one drawing misses no weak part."""
    for picture in both_of(main_board):
        groups = [each for each in picture.shapes if isinstance(each, Group)]
        weak = {
            each.part
            for each in groups
            if any("weak" in one.css_class or one.css_class == "diamond" for one in each.shapes)
        }
        assert weak == set(MAIN_WEAK)


def test_neighbours_of_a_row_share_one_mark(main_board: Both) -> None:
    """Nine hatched chips and one diamond at the head of the row; two ROMs and six beads have one each: nine in all."""
    for picture in both_of(main_board):
        assert len([each for each in shapes(picture) if each.css_class == "diamond"]) == 1 + 2 + 6
        assert len([each for each in shapes(picture) if each.css_class == "body weak"]) == 9 + 2


def test_a_linked_part_has_a_ring_and_an_unlinked_one_has_none() -> None:
    """The ring is what shows a chosen part; a part without a row in a list cannot be chosen."""
    one = part("N1", 20, 20, 30, 10)
    for links, rings in (({"N1": "#N1"}, 1), ({}, 0)):
        picture = board_pictures(extent(100, 50), [one], (), {}, "b", links).wide
        assert len([each for each in shapes(picture) if each.css_class == "ring"]) == rings
        assert picture.role == ("group" if rings else "img")


def test_the_list_row_is_what_a_part_lights(main_board: Both) -> None:
    """The same name stands at the group and in the link, whether the row is its own or shared."""
    shared = {"C50": "beads", "C51": "beads"}
    row = PartRow(
        refs=("C50", "C51"), kind="tantalum", at=point(20, 20), step=point(0, 20), body=extent(6, 6), name="Bead"
    )
    picture = board_pictures(extent(100, 60), (), (row,), shared, "b", {"C50": "#beads", "C51": "#beads"}).wide
    assert [part_group(picture, ref).part for ref in ("C50", "C51")] == ["beads", "beads"]
    assert 'href="#beads"' in drawn(picture)


def test_the_phone_names_rows_as_one(main_board: Both) -> None:
    """Look, section 6: rows as one plate, the short name before the first and the last."""
    named = texts(main_board.phone)
    assert {"E0 N41–N49", "O0 N51–N59", "E1 N61–N69", "O1 N71–N79", "SL1–SL5"} <= set(named)
    assert not {"N41", "N52", "W10", "Y1"} & set(named)
    assert {"C61", "C62", "N20", "N21", "N1", "PW1", "TPG", "TP5"} <= set(named)


def test_the_wide_drawing_names_every_part(machine: Machine, main_board: Both) -> None:
    """On the main board of the notes there is room for each designator."""
    assert {part.ref for part in machine.boards[0].all_parts()} <= set(texts(main_board.wide))


def test_labels_keep_off_each_other_and_off_bodies_of_others() -> None:
    """Forty parts in a heap: what is written covers no other label and no body that its own part does not lie on."""
    parts = [part(f"C{number}", 10 + 7 * (number % 8), 8 + 5 * (number // 8), 5, 3) for number in range(40)]
    for picture in both_of(board_pictures(extent(80, 40), parts, (), {"C3": "C3", "C20": "C20"}, "b", {})):
        written = [each for each in picture.shapes if isinstance(each, Words) and re.fullmatch(r"C\d+", each.text)]
        assert written
        frames = [words_frame(each) for each in written]
        assert not [1 for number, one in enumerate(frames) for other in frames[number + 1 :] if one.meets(other)]
        for each, frame in zip(written, frames, strict=True):
            for other in parts:
                if other.ref != each.text:
                    (box, *_) = part_group(picture, other.ref).shapes
                    assert isinstance(box, Box | Polygon)
                    if isinstance(box, Box):
                        apart = (
                            frame.right <= box.x
                            or box.x + box.width <= frame.left
                            or frame.bottom <= box.y
                            or box.y + box.height <= frame.top
                        )
                        assert apart, f"{each.text} covers {other.ref}"


def test_a_drive_shows_the_parts_whose_place_is_known(judged: Judgement) -> None:
    """SB1 of OV-HD14 lies at 73 95 of 146 x 203 mm in the notes: in the middle across, and above half way."""
    drive = judged.collection.drives["ov-hd14"]
    pictures = drive_pictures(drive, {"SB1": "SB1"}, "hd14", {"SB1": "#SB1"})
    assert pictures
    for picture in both_of(pictures):
        board = boxes(picture, "outline board-body")[0]
        mark = part_group(picture, "SB1")
        ring = mark.shapes[-1]
        assert isinstance(ring, Box | Circle)
        x, y = (ring.cx, ring.cy) if isinstance(ring, Circle) else (ring.x + ring.width / 2, ring.y + ring.height / 2)
        assert x / board.width == pytest.approx(73 / 146)
        assert y / board.height == pytest.approx(95 / 203)
        assert "seen from below" in texts(picture)


# Load bars


def lane_of(picture: Picture, number: int) -> tuple[Box, Line]:
    """The field and the end of the running load of the nth bar."""
    return boxes(picture, "body")[number], lines(picture, "running-end")[number]


def test_load_steps_end_at_the_sum(judged: Judgement, machine: Machine, supply: Supply) -> None:
    """Notes, section 3: 7.138 A of 12.0 A, 2.05 A of 3.2 A, 0.06 A of 0.30 A, 61.01 W of 96 W."""
    sums = (7.138 / 12.0, 2.05 / 3.2, 0.06 / 0.30, 61.01 / 96)
    for picture in both_of(load_bars(power(judged, "as-delivered"), supply, machine.rails, "bars")):
        steps = [each for each in shapes(picture) if isinstance(each, Box) and each.css_class.startswith("load-")]
        for number, share in enumerate(sums):
            field, end = lane_of(picture, number)
            assert end.x1 == pytest.approx(field.x + share * field.width, abs=0.01)
            own = [each for each in steps if field.y < each.y < field.y + field.height]
            assert own[0].x == field.x
            assert max(each.x + each.width for each in own) == pytest.approx(end.x1, abs=0.01)
            for one, other in pairwise(own):
                assert one.x + one.width == pytest.approx(other.x)
                assert one.css_class != other.css_class


def test_starting_and_limits_stand_at_their_values(judged: Judgement, machine: Machine, supply: Supply) -> None:
    """Notes, section 3, on +12 V: start 4.35 A, 3.2 A continuous, 5.0 A for 8 s, least 0.20 A; on +5 V least 1.5 A."""
    for picture in both_of(load_bars(power(judged, "as-delivered"), supply, machine.rails, "bars")):
        field, end = lane_of(picture, 1)
        ampere = field.width / 3.2
        start = next(each for each in boxes(picture, "outline") if field.y < each.y < field.y + field.height)
        assert start.x == end.x1
        assert start.x + start.width == pytest.approx(field.x + 4.35 * ampere, abs=0.01)
        assert lines(picture, "limit")[0].x1 == pytest.approx(field.x + field.width, abs=0.01)
        stops = lines(picture, "stop-bar")
        assert stops[1].x1 == pytest.approx(field.x + 5.0 * ampere, abs=0.01)
        others = [stops[0].x1, stops[2].x1, stops[3].x1]
        assert others == pytest.approx([lines(picture, "limit")[0].x1] * 3)  # all continuous limits on one line
        brackets = [each for each in shapes(picture) if isinstance(each, Way) and each.css_class == "good-line"]
        first = boxes(picture, "body")[0]
        wanted = [first.x + 1.5 / 12.0 * first.width, field.x + 0.20 * ampere]
        assert [each.steps[1][1][0] for each in brackets] == pytest.approx(wanted, abs=0.01)


@pytest.mark.parametrize(
    "outfit,wide,phone",
    [
        ("as-delivered", "start 4.35 A, 135.9 % of continuous, 6 s", "start 4.35 A, 135.9 %, 6 s"),
        ("three-cards-no-drive", "least 0.20 A: not met, only 0.05 A is sure", "least 0.20 A: not met"),
        ("supply-alone", "1.667 A, 13.9 %", "1.667 A, 13.9 %"),
    ],
)
def test_load_bars_say_it_in_words(
    judged: Judgement, machine: Machine, supply: Supply, outfit: str, wide: str, phone: str
) -> None:
    """Notes, section 3: 4.35 A = 135.9 % for 6 s; 0.05 A under the least; 5 V on 3.0 Ω is 1.667 A, 13.9 % of 12 A."""
    pictures = load_bars(power(judged, outfit), supply, machine.rails, "bars")
    assert wide in texts(pictures.wide)
    assert phone in texts(pictures.phone)


@pytest.mark.parametrize("outfit", ["second-fixed-disk", "second-fixed-disk-late"])
def test_what_is_not_carried_is_said(judged: Judgement, machine: Machine, supply: Supply, outfit: str) -> None:
    """Notes, section 3: both ways of starting a second fixed disk are over 5.0 A, so not allowed."""
    for picture in both_of(load_bars(power(judged, outfit), supply, machine.rails, "bars")):
        (start,) = (each for each in texts(picture) if each.startswith("start") and " A" in each)
        assert start.endswith(", over the limit")


# Rail scales


# Section 19 of the notes: watts together, cold, rung by rung; the supply gives 96 W.
RUNG_WATTS = ("11.4", "19.0", "23.6", "27.8", "33.8", "38.2", "56.6")


def test_each_rung_is_a_step_of_its_watts(gallery: dict[str, Both]) -> None:
    """The steps rise towards the limit as the notes say, and every rung has its number under it."""
    for picture in both_of(gallery["ladder"]):
        (stairs,) = (each for each in shapes(picture) if isinstance(each, Way) and each.css_class == "outline")
        base = stairs.steps[0][1][1]
        limit = min(each.y1 for each in lines(picture, "stop-bar"))
        heights = [base - numbers[0] for letter, numbers in stairs.steps if letter == "V"]
        for height, watts in zip(heights, RUNG_WATTS, strict=False):
            assert height / (base - limit) == pytest.approx(float(watts) / 96, abs=0.001)
        assert {str(number) for number in range(1, 9)} <= set(texts(picture))


def test_the_amperes_of_a_rung_stand_against_its_limits(gallery: dict[str, Both]) -> None:
    """+12 V has a bar for 5.0 A and a line for 3.2 A, and the words of rung 7: 1.68 A, starting 3.53 A (section 19)."""
    for picture in both_of(gallery["ladder"]):
        (continuous,) = lines(picture, "limit")
        (peak,) = (each for each in lines(picture, "stop-bar") if 0 < continuous.y1 - each.y1 < 60)
        (base,) = {each.y1 for each in lines(picture, "axis") if 0 < each.y1 - continuous.y1 < 60}
        assert (base - peak.y1) / (base - continuous.y1) == pytest.approx(5.0 / 3.2, abs=0.001)
        said = " ".join(texts(picture))
        assert "1.68" in said
        assert "3.53" in said
    assert "+12\u00a0V (least 0.20\u00a0A" in gallery["ladder"].wide.label
    assert "7 1.68\u00a0A starting 3.53\u00a0A" in gallery["ladder"].wide.label


def test_a_ladder_of_one_rung_or_many_can_be_drawn(judged: Judgement, supply: Supply) -> None:
    """Names and figures that do not fit are left out, and nothing leaves the picture."""
    for count in (1, 40):
        rungs = [Rung(name="A rung of a rather long name", power=power(judged, "as-delivered"))] * count
        for picture in both_of(ladder_picture(rungs, supply, "many")):
            frames = [words_frame(each) for each in shapes(picture) if isinstance(each, Words)]
            assert all(frame.left > -1 and frame.right < picture.view_box[2] + 1 for frame in frames)


def test_a_late_start_stands_after_the_first(gallery: dict[str, Both]) -> None:
    """5.35 A with the second disk is over the bar of 5.0 A, 4.35 A before it is not (section 3 of the notes)."""
    for picture in both_of(gallery["starts"]):
        bars = lines(picture, "stop-bar")
        curves = [each for each in shapes(picture) if isinstance(each, Way) and each.css_class == "running-end"]
        assert (len(bars), len(curves)) == (2, 3)
        first, late = curves[1:]
        assert late.steps[0][1][0] > first.steps[-1][1][0]
        base = max(each.y1 for each in lines(picture, "axis") if each.x1 < each.x2)
        ampere = (base - bars[1].y1) / 5
        assert (base - first.steps[0][1][1]) / ampere == pytest.approx(4.35, abs=0.001)
        assert (base - late.steps[0][1][1]) / ampere == pytest.approx(5.35, abs=0.001)


def test_a_stop_area_ends_exactly_at_its_limit(machine: Machine) -> None:
    """Notes, section 4: no power below 18 Ω, 140 Ω, 140 Ω; log 18 = 1.25527, log 140 = 2.14613 (from a table)."""
    logs = (1.25527, 2.14613, 2.14613)
    for picture in both_of(rail_scales(machine.rails, "rails")):
        grid = [each.x1 for each in lines(picture, "grid")]
        assert len(grid) == 5  # 1 Ω to 10 kΩ
        decade = (grid[4] - grid[0]) / 4
        assert grid == pytest.approx([grid[0] + decade * number for number in range(5)])
        stops, bars = boxes(picture, "stop-area"), boxes(picture, "stop-bar")
        for log, area, bar in zip(logs, stops, bars, strict=True):
            assert area.x == grid[0]
            assert area.x + area.width == pytest.approx(grid[0] + log * decade, abs=0.01)
            assert bar.x + bar.width / 2 == pytest.approx(area.x + area.width)
            assert (bar.width, bar.height, area.height) == (5, 34, 22)  # look, section 6


def test_doubtful_and_usual_stand_between_their_values(machine: Machine) -> None:
    """Notes, section 4, +12 V: doubtful below 800 Ω, usual 1.8 to 3 kΩ. Logs 2.90309, 3.25527, 3.47712 (table)."""
    for picture in both_of(rail_scales(machine.rails, "rails")):
        grid = [each.x1 for each in lines(picture, "grid")]
        decade = grid[1] - grid[0]
        doubtful, usual = boxes(picture, "weak-line")[1], boxes(picture, "usual-box")[1]
        assert doubtful.x == pytest.approx(boxes(picture, "stop-area")[1].x + boxes(picture, "stop-area")[1].width)
        assert doubtful.x + doubtful.width == pytest.approx(grid[0] + 2.90309 * decade, abs=0.01)
        assert usual.x == pytest.approx(grid[0] + 3.25527 * decade, abs=0.01)
        assert usual.x + usual.width == pytest.approx(grid[0] + 3.47712 * decade, abs=0.01)


def test_a_scale_grows_by_whole_decades() -> None:
    """A rail of 0.5 Ω and 220 kΩ needs the decades from 0.1 Ω to 1 MΩ: eight lines."""
    known = ToGround(
        usual=Ohms(low_ohm=Decimal("1.00E+5"), high_ohm=Decimal("2.20E+5")),
        doubtful_below_ohm=Decimal(50),
        no_power_below_ohm=Decimal("0.5"),
    )
    picture = rail_scales([rail("+5 V", known)], "rails").wide
    assert len(lines(picture, "grid")) == 8
    assert {"0.5 Ω", "50 Ω", "100–220 kΩ"} <= set(texts(picture))


# Discharge


def ticks(picture: Picture) -> tuple[dict[float, float], dict[float, float]]:
    """Where minutes and volts of the two axes stand, read off the ticks and the figures beside them."""
    written = {(round(each.x, 2), round(each.y, 2)): each for each in shapes(picture) if isinstance(each, Words)}
    minutes = {}
    volts = {}
    for (x, y), each in written.items():
        if re.fullmatch(r"\d+(\u00a0min)?", each.text) and each.anchor == "middle":
            minutes[float(each.text.removesuffix("\u00a0min"))] = x
        if re.fullmatch(r"\d+", each.text) and each.anchor == "end":
            volts[float(each.text)] = y - 4.5
    return minutes, volts


def test_the_worst_case_reaches_ten_volt_when_the_notes_say(gallery: dict[str, Both]) -> None:
    """Notes, section 2: 157.7 s to 10 V at the worst, wait 4 min, 373 V at first."""
    for picture in both_of(gallery["discharge"]):
        minutes, volts = ticks(picture)
        minute = minutes[1] - minutes[0]
        volt = (volts[0] - volts[300]) / 300
        (ring,) = (each for each in shapes(picture) if isinstance(each, Circle))
        assert ring.cx == pytest.approx(minutes[0] + 157.7 / 60 * minute, abs=0.1)
        assert ring.cy == pytest.approx(volts[0] - 10 * volt, abs=0.02)
        (wait,) = lines(picture, "limit")
        assert wait.x1 == pytest.approx(minutes[0] + 4 * minute, abs=0.02)
        assert wait.stroke_width == 4
        (curve,) = (each for each in shapes(picture) if isinstance(each, Way))
        assert curve.steps[0][1] == pytest.approx((minutes[0], volts[0] - 373.4 * volt), abs=0.05)
        before = max((numbers for _, numbers in curve.steps if numbers[0] <= ring.cx), key=lambda numbers: numbers[0])
        after = min((numbers for _, numbers in curve.steps if numbers[0] > ring.cx), key=lambda numbers: numbers[0])
        assert before[1] - 0.1 <= ring.cy <= after[1] + 0.1


def test_the_wait_is_never_read_as_permission(gallery: dict[str, Both]) -> None:
    """Design, section 8: then measure; a class is no permission; with an open bleeder it is still charged."""
    for picture in both_of(gallery["discharge"]):
        said = " ".join(texts(picture))
        for wanted in ("now measure", "under 10 V", "no permission to touch", "bleeder open: it stays charged"):
            assert wanted in said
        assert "safe" not in said.lower()
        assert "harmless" not in said.lower()


def test_without_a_bleeder_nothing_falls() -> None:
    """Only the stated wait may be told: there is no curve, and the words say why."""
    reservoir = Reservoir(
        part="CB1",
        capacitance_f=Decimal("0.00015"),
        charged_v=Decimal("325.3"),
        wait_minutes=Decimal(5),
        discharge=Discharge(resistance_ohm=Decimal(4700), bears_w=Decimal(10)),
    )
    pictures = discharge_curve(reservoir, reservoir_figures(reservoir), "discharge")
    for picture in both_of(pictures):
        assert not [each for each in shapes(picture) if isinstance(each, Way | Circle)]
        assert "no bleeder known: it stays charged" in " ".join(texts(picture))
    assert "Nothing is known to drain it" in pictures.caption


# Memory map


def area(name: str, first: int, last: int) -> AreaFigures:
    """An area of a map of 22 lines."""
    return AreaFigures(name=name, owner=None, first=f"{first:06X}", last=f"{last:06X}", size_bytes=last - first + 1)


def test_addresses_run_down_the_left(gallery: dict[str, Both]) -> None:
    """Notes, section 6: eight areas as delivered without the option card's, from 000000 to 3FFFFF."""
    wanted = ["000000", "00FFFF", "010000", "0101FF", "020000", "021FFF", "028000", "029FFF"]
    wanted += ["040000", "05FFFF", "060000", "07FFFF", "3FFF00", "3FFFFF"]
    for picture in both_of(gallery["map"]):
        addresses = [
            each for each in shapes(picture) if isinstance(each, Words) and re.fullmatch("[0-9A-F]{6}", each.text)
        ]
        assert [each.text for each in sorted(addresses, key=lambda each: each.y)] == wanted
        assert {each.anchor for each in addresses} == {"end"}


def test_sizes_and_gaps_are_in_words(gallery: dict[str, Both]) -> None:
    """By hand from the notes: 020000 − 010200 is FE00 or 63.5 KiB, 028000 − 022000 24 KiB, 040000 − 02A000 88 KiB."""
    for picture in both_of(gallery["map"]):
        said = texts(picture)
        assert said.count("128 KiB") == 2
        assert said.count("8 KiB") == 2
        assert [each for each in said if each.startswith("empty")] == [
            "empty, 63.5 KiB",
            "empty, 24 KiB",
            "empty, 88 KiB",
            "empty, about 3.5 MiB",
        ]


def test_what_two_claim_is_hatched_and_said() -> None:
    """080000 to 0BFFFF, 256 KiB, is claimed by a store of 512 KiB at 040000 and by a card's at 080000."""
    figures = map_figures(22, [area("Store E0 and O0", 0x40000, 0xBFFFF), area("Card", 0x80000, 0xFFFFF)])
    pictures = memory_map(figures, "map")
    assert "two claim" in pictures.caption
    for picture in both_of(pictures):
        (hatched,) = boxes(picture, "weak-line")
        one, other = boxes(picture, "body")
        assert hatched.y == other.y
        assert hatched.y + hatched.height == one.y + one.height
        assert one.x + one.width == pytest.approx(other.x)
        assert "256 KiB claimed by Store E0 and O0 and Card" in " ".join(texts(picture))


def test_what_lies_beyond_is_said() -> None:
    """Twelve lines end at FFF; an area of 512 bytes at F00 goes 256 beyond."""
    beyond = AreaFigures(name="Store", owner=None, first="F00", last="10FF", size_bytes=512)
    for picture in both_of(memory_map(map_figures(12, [beyond]), "map")):
        assert "beyond the last address, FFF" in texts(picture)
        assert len(boxes(picture, "weak-line")) == 1


# Interleave


def test_sectors_stand_clockwise_from_the_index(gallery: dict[str, Both]) -> None:
    """Notes of OV-HD14: 20 sectors at interleave 4. Sector 1 is the fifth, its middle at 4.5/20 of 360°, or 81°."""
    for picture in both_of(gallery["ring"]):
        x, y, _ = ring_of(picture)
        numbers = {each.text: each for each in shapes(picture) if isinstance(each, Words) and each.text.isdigit()}
        assert set(numbers) == {str(number) for number in range(20)}
        for each in shapes(picture):
            if isinstance(each, Way) and each.css_class in ("load-3", "chip"):
                sweeps = [numbers[4] for letter, numbers in each.steps if letter == "A"]
                assert sweeps == [1, 0]  # SVG: 1 goes clockwise; out along the rim, back along the hub
        across, down = numbers["1"].x - x, numbers["1"].y - numbers["1"].size * 0.385 - y
        assert across / -down == pytest.approx(6.3138, abs=0.01)  # tan 81°, from a table
        assert across > 0


def ring_of(picture: Picture) -> tuple[float, float, float]:
    """Middle and outer radius of a ring, read off the index and the lowest point."""
    (index,) = lines(picture, "running-end")
    sector = next(each for each in shapes(picture) if isinstance(each, Way) and each.css_class in ("load-3", "chip"))
    outer = sector.steps[2][1][0]
    return index.x1, sector.steps[1][1][1] + outer, outer


def test_one_turn_reads_the_first_sectors(gallery: dict[str, Both]) -> None:
    """By the order of the notes, 0 5 10 15 1 6 … 19: 0 to 4 pass in rising order, 5 stands before 4."""
    for picture in both_of(gallery["ring"]):
        bold = [
            each.text
            for each in shapes(picture)
            if isinstance(each, Words) and "bold" in each.css_class and each.text.isdigit()
        ]
        assert sorted(bold) == ["0", "1", "2", "3", "4"]
        assert len([each for each in shapes(picture) if each.css_class == "load-3"]) == 5
        assert "20.00 ms" in texts(picture)


@pytest.mark.parametrize("sectors,factor", [(1, 1), (2, 1), (9, 2), (30, 1), (63, 3)])
def test_rings_of_any_number_hold(sectors: int, factor: int) -> None:
    """From one sector to sixty-three; up to thirty there is room for every number, and none covers another."""
    geometry = Geometry(cylinders=1, heads=1, sectors=sectors, sector_bytes=512)
    track = track_figures(geometry, Decimal(3600), Decimal(5000000))
    pictures = interleave_ring(interleave_figures(geometry, factor, track.turn_s), track, "ring")
    for picture in both_of(pictures):
        numbers = [each for each in shapes(picture) if isinstance(each, Words) and each.text.isdigit()]
        assert sectors > 30 or len(numbers) == sectors
        frames = [words_frame(each) for each in numbers]
        assert not [1 for place, one in enumerate(frames) for other in frames[place + 1 :] if one.meets(other)]


# Volumes and flaws


def test_a_volume_stands_to_scale(gallery: dict[str, Both]) -> None:
    """Notes, V2: 20 hidden, 1, 11, 11, 16 sectors, then data; flaws at 1203 to 26888 of 27,580 behind the 20 hidden."""
    for picture in both_of(gallery["volume-V2"]):
        (strip, magnified) = boxes(picture, "outline")
        wholes = [each for each in boxes(picture, "load-2") + boxes(picture, "load-3") if each.y == magnified.y]
        widths = sorted(each.width for each in wholes)
        assert [width / widths[0] for width in widths] == pytest.approx([1, 1, 16 / 11, 20 / 11], rel=0.001)
        places = [each.x1 for each in lines(picture, "running-end") if each.x1 == each.x2]
        shares = [(place - strip.x) / strip.width * 27600 for place in places]
        assert shares == pytest.approx([1223.5, 7786.5, 15030.5, 26908.5], abs=0.1)
        assert {"1203–1204", "7766", "15010–15011", "26888", "20", "11", "16"} <= set(texts(picture))


def test_flawed_tracks_stand_at_their_cylinder_and_head(gallery: dict[str, Both]) -> None:
    """Notes, record A-3: 20/1, 129/2, 250/1 and 448/1 of 460 cylinders and 3 heads; 4 of 12 tracks, 14 at first."""
    for picture in both_of(gallery["flaws-steady"]):
        heads = boxes(picture, "body")
        assert len(heads) == 3
        crosses = {((each.x1 + each.x2) / 2, (each.y1 + each.y2) / 2) for each in lines(picture, "running-end")}
        found = sorted(((x - heads[0].x) / heads[0].width * 460, (y - heads[0].y) // 20) for x, y in crosses)
        assert [head for _, head in found] == [1, 2, 1, 1]
        assert [cylinder for cylinder, _ in found] == pytest.approx([20.5, 129.5, 250.5, 448.5], abs=0.01)
        assert {"20", "129", "250", "448", "cylinder 0", "over 12 tracks: not accepted"} <= set(texts(picture))
        (bar,) = boxes(picture, "stop-bar")
        tips = sorted(each.points[-1][0] for each in shapes(picture) if isinstance(each, Polygon))
        assert tips[0] == tips[1] < bar.x < tips[2]


def test_a_list_of_numbers_only_has_no_lanes(gallery: dict[str, Both]) -> None:
    """Notes, the second example: 4, 7 and 13 tracks, places unknown."""
    for picture in both_of(gallery["flaws-growing"]):
        assert not boxes(picture, "body")
        assert {"First list: 4", "A week later: 7", "After a month: 13"} <= set(texts(picture))


# Connectors


def test_a_plug_says_each_contact_in_words(gallery: dict[str, Both]) -> None:
    """Notes, section 3: PW1, ten contacts, 7 the key; three of +5 V violet, −12 V pink, READY turquoise."""
    for picture in both_of(gallery["plug-pw1"]):
        said = texts(picture)
        assert [each for each in said if each.isdigit()] == ["1", "2", "3", "4", "5", "6", "8", "9", "10"]
        assert said.count("+5 V") == 3
        assert said.count("violet") == 3
        assert said.count("key") == 1
        assert said[said.index("−12 V") + 1] == "pink"
        assert said[said.index("READY") + 1] == "turquoise"
        assert len(boxes(picture, "lamp")) == 9


def test_long_rows_stand_below_each_other_on_the_phone(gallery: dict[str, Both]) -> None:
    """Notes, section 7: two rows of 36 contacts; a18 is the key, so 71 are numbered, in two columns."""
    said = texts(gallery["slot"].phone)
    numbered = [each for each in said if re.fullmatch(r"[ab]\d+", each)]
    assert len(numbered) == 71
    assert "a18" not in numbered
    assert len(boxes(gallery["slot"].phone, "outline board-body")) == 2


# Switch block

# Notes, section 8: as delivered ON OFF ON ON OFF OFF.
STANDS = ["on", "off", "on", "on", "off", "off"]


def test_each_slider_stands_where_the_notes_say(gallery: dict[str, Both]) -> None:
    """A slider at ON is drawn in the upper half of its way, one at OFF in the lower, and the word stands below it."""
    for picture in both_of(gallery["block"]):
        ways, sliders = boxes(picture, "body"), boxes(picture, "slider")
        assert len(ways) == len(sliders) == 6
        upper = [slider.y + slider.height <= way.y + way.height / 2 for way, slider in zip(ways, sliders, strict=True)]
        assert ["on" if up else "off" for up in upper] == STANDS
        said = texts(picture)
        assert [each for each in said if each in ("on", "off")] == STANDS
        assert [each for each in said if each.isdigit()] == ["1", "2", "3", "4", "5", "6"]
        assert said[:2] == ["ON", "OFF"]


def test_a_long_block_goes_on_below_and_three_places_are_three(machine: Machine) -> None:
    """Sixteen ways do not fit side by side on a phone; a way with three positions has its slider in one of three."""
    one = machine.switches[0]
    long = [replace(one, switch=f"S1-{number}") for number in range(1, 17)]
    both = switch_block("S1", long, ["on"] * 16, "long")
    assert len(boxes(both.wide, "outline board-body")) < len(boxes(both.phone, "outline board-body"))
    for picture in both_of(both):
        assert all(each.x + each.width <= picture.view_box[2] for each in boxes(picture, "body"))
    three = replace(one, positions=tuple(Position(to=name) for name in ("A", "B", "C")))
    for place, to in enumerate("ABC"):
        picture = switch_block("S1", [three], [to], "three").wide
        (way,), (slider,) = boxes(picture, "body"), boxes(picture, "slider")
        assert int((slider.y - way.y) / way.height * 3) == place


# Ports


def test_ports_stand_in_their_place(gallery: dict[str, Both]) -> None:
    """By hand: P010 begins an eighth of the way along a row of 128; P100 begins the third row, the fourth is empty."""
    wide = gallery["ports"].wide
    rows, blocks = boxes(wide, "outline"), boxes(wide, "load-1")
    assert len(rows) == 2
    assert [each for each in texts(wide) if each.startswith("P")] == ["P000", "P100"]
    assert "nothing from P180 to P1FF" in texts(wide)
    assert "nothing answers here" in texts(wide)
    by_x = sorted((each.x - rows[0].x) / rows[0].width for each in blocks if each.y == rows[0].y)
    assert by_x == pytest.approx([0, 16 / 128, 32 / 128, 40 / 128])
    (copy,) = boxes(wide, "body")
    assert copy.y == rows[1].y
    assert (copy.x - rows[1].x) / rows[1].width == pytest.approx(32 / 128)
    assert copy.fill == "url(#ports-wide-hatch)"


def test_names_of_ports_hide_nothing(gallery: dict[str, Both]) -> None:
    """Every name stands in the picture, none on another, and no thin line runs through one."""
    for picture in both_of(gallery["ports"]):
        frames = [words_frame(each) for each in shapes(picture) if isinstance(each, Words)]
        assert all(each.left >= 0 and each.right <= picture.view_box[2] for each in frames)
        assert not any(one.meets(other) for at, one in enumerate(frames) for other in frames[:at])
        lines = [each for each in shapes(picture) if isinstance(each, Line) and each.x1 == each.x2]
        names = [words_frame(each) for each in shapes(picture) if isinstance(each, Words) and each.text == "Counter"]
        assert not any(name.left < line.x1 < name.right and line.y2 > name.bottom for name in names for line in lines)


# Sheaf


def test_the_sheaf_has_as_many_lines_as_sheets() -> None:
    """Nine sheets, the third pulled out over the edge of all others, a band over them."""
    picture = sheaf_edge(9, 3, "edge")
    edges = [each for each in picture.shapes if isinstance(each, Line)]
    assert len(edges) == 9
    assert [number for number, each in enumerate(edges, 1) if each.css_class == "pulled"] == [3]
    assert edges[2].x2 > max(each.x2 for each in edges if each.css_class == "leaf")
    assert len([each for each in picture.shapes if isinstance(each, Box)]) == 1
    assert "Sheet 3 of 9" in drawn(picture)
    assert len([each for each in sheaf_edge(1, 1, "edge").shapes if isinstance(each, Line)]) == 1


# What holds for every picture


def test_ids_are_unique_and_every_hatch_is_there(gallery: dict[str, Both]) -> None:
    """Two drawings of every picture can stand on one page; what a fill asks for stands in its own drawing."""
    seen: set[str] = set()
    for name, pictures in gallery.items():
        for picture in both_of(pictures):
            markup = str(drawn(picture))
            own = re.findall(r'\bid="([^"]*)"', markup)
            assert not seen & set(own)
            assert len(own) == len(set(own))
            seen |= set(own)
            assert all(each.startswith(f"{name}-") for each in own)
            assert set(re.findall(r"url\(#([^)]*)\)", markup)) <= set(own)


def test_numbers_have_two_decimals_at_most(gallery: dict[str, Both]) -> None:
    """The same bytes on every machine: no long tail of digits, no exponent, no minus nought."""
    for pictures in gallery.values():
        for picture in both_of(pictures):
            markup = re.sub(r'aria-label="[^"]*"', "", str(drawn(picture)))
            markup = re.sub(r">[^<]*<", "><", markup)
            assert not re.search(r"\d\.\d{3}|\de[-+]?\d|-0[^.\d]", markup)


@pytest.mark.parametrize(
    "value,written", [(-0.001, "0"), (0.005, "0.01"), (12.5, "12.5"), (-3.0, "-3"), (1 / 3, "0.33"), (100.0, "100")]
)
def test_a_coordinate_is_short(value: float, written: str) -> None:
    """Nought is nought, and no nought stands at the end."""
    assert coordinate(value) == written


def test_drawing_twice_gives_the_same_bytes(judged: Judgement, machine: Machine, supply: Supply) -> None:
    """No picture depends on the order of a set or on what was drawn before."""
    first = load_bars(power(judged, "as-delivered"), supply, machine.rails, "bars")
    again = load_bars(power(judged, "as-delivered"), supply, machine.rails, "bars")
    assert drawn(first.wide) == drawn(again.wide)
    assert drawn(first.phone) == drawn(again.phone)


def test_every_picture_says_what_it_shows_and_where_the_words_are(gallery: dict[str, Both]) -> None:
    """Whoever hears a picture is told its facts and led to the list or the table."""
    for pictures in gallery.values():
        for picture in both_of(pictures):
            root = ElementTree.fromstring(str(drawn(picture)))
            label = root.get("aria-label") or ""
            assert len(label) > 40
            assert re.search(r"\b(table|lists?)\b", label)
            assert root.get("role") in ("img", "group")


def test_every_picture_is_well_formed_and_styled_by_class(gallery: dict[str, Both]) -> None:
    """No style but sizes and the colours of what is drawn; fills are hatches or colours of wires."""
    for pictures in gallery.values():
        for picture in both_of(pictures):
            for element in ElementTree.fromstring(str(drawn(picture))).iter():
                assert "stroke" not in element.attrib
                fill = element.get("fill")
                assert fill is None or re.fullmatch(r"url\(#[a-z0-9-]+\)|#[0-9A-F]{6}", fill)


MARKUP = '<script>alert("&")</script>'


def hostile() -> Iterator[Both]:
    """Pictures in which every text of a contributor is markup."""
    one = part("N1", 20, 20, 30, 10, name=MARKUP)
    yield board_pictures(extent(100, 50), [one], (), {"N1": MARKUP}, "b", {"N1": f'#"{MARKUP}'}, back=MARKUP)
    yield rail_scales([rail(MARKUP)], "r")
    yield connector([ContactRow(id="a", pins=(Pin(pin=MARKUP, signal=MARKUP, colour=MARKUP),))], MARKUP, "c")
    feature = Feature(id="f", kind="badge", name=MARKUP, at=point(1, 1), body=extent(90, 40), colour=MARKUP)
    yield view_pictures(View(id="v", name=MARKUP, size=extent(100, 50), features=(feature,)), "v")
    locks = Hertz(low_hz=Decimal(1), high_hz=Decimal(2))
    yield rate_ranges(
        [Scale(name=MARKUP, locks=locks, ticks=[Tick(name=MARKUP, rate_hz=Decimal(1), printed=MARKUP, fits=True)])], "x"
    )
    yield clock_tree([Node(id="n", name=MARKUP, rate=MARKUP, part=MARKUP, of=None, divided_by=2)], "t")
    yield memory_map(map_figures(8, [AreaFigures(name=MARKUP, owner=None, first="00", last="0F", size_bytes=16)]), "m")


def test_text_of_a_contributor_stays_text() -> None:
    """Markup in a name is read as letters: there is no such element, and the letters are all there."""
    for pictures in hostile():
        for picture in both_of(pictures):
            markup = str(drawn(picture))
            assert "<script" not in markup
            root = ElementTree.fromstring(markup)
            assert not [each for each in root.iter() if each.tag == "script"]
            everything = "".join(root.itertext()) + " ".join(
                value for each in root.iter() for value in each.attrib.values()
            )
            assert MARKUP in everything


def test_nothing_at_all_can_be_drawn(judged: Judgement, supply: Supply) -> None:
    """No rails, no contacts, no parts, no areas: a picture, not a failure."""
    empty = [
        rail_scales((), "rails"),
        connector((), "from above", "plug"),
        connector([ContactRow(id="a", pins=())], "from above", "plug"),
        board_pictures(extent(100, 50), (), (), {}, "board", {}),
        memory_map(map_figures(16, ()), "map"),
        load_bars(power(judged, "supply-alone"), supply, (), "bars"),
    ]
    for pictures in empty:
        for picture in both_of(pictures):
            ElementTree.fromstring(str(drawn(picture)))
            assert all(size > 0 for size in picture.view_box[2:])
    assert "empty, 64 KiB" in texts(empty[4].wide)


def test_a_board_of_one_part_and_a_strange_shape_can_be_drawn() -> None:
    """A strip of 400 by 8 mm and one of 8 by 400 mm, each filled by its one part."""
    for size in (extent(400, 8), extent(8, 400)):
        one = Part(
            ref="N1",
            kind="chip",
            at=Point(x_mm=size.x_mm / 2, y_mm=size.y_mm / 2),
            body=Extent(x_mm=size.x_mm, y_mm=size.y_mm),
        )
        for picture in both_of(board_pictures(size, [one], (), {"N1": "N1"}, "strip", {"N1": "#N1"})):
            ElementTree.fromstring(str(drawn(picture)))
            assert part_group(picture, "N1").href == "#N1"


# Lettering


def test_labels_on_one_line_make_room() -> None:
    """Two labels of ten with centres at 5 and 6 in a room of 0 to 100 stand side by side with the gap between."""
    assert spread([5, 6], [10, 10], 0, 100, 2) == [0, 12]
    assert spread([95, 99], [10, 10], 0, 100, 2) == [78, 90]
    assert spread([50], [10], 0, 100, 2) == [45]


def test_words_are_wrapped_whole() -> None:
    """A line is no wider than it may be unless a single word is."""
    assert wrapped("Reset page of the interrupt unit", 10, 100) == ["Reset page of the", "interrupt unit"]
    assert wrapped("Unendingnesses", 10, 20) == ["Unendingnesses"]


COLUMNS = {"main": 630, "view-front": 452, "view-back": 452}
"""How wide a picture is on a wide page where it is less than the whole column."""


@pytest.mark.browser
def test_a_browser_finds_no_label_over_another(
    chromium: Browser, repository: Path, gallery: dict[str, Both], tmp_path: Path
) -> None:
    """Measured where the faces are: no two lines of words meet, and no letter is under 11 px in its column."""
    style = (repository / "site_overrides/assets/benchsheaf/sheet.css").as_uri()
    for css_class, width in (("wide", 930), ("phone", 344)):
        figures = "".join(
            f'<figure class="picture" style="width:{COLUMNS.get(name, width) if width > 344 else width}px">'
            f"{drawn(pictures.wide if css_class == 'wide' else pictures.phone)}</figure>"
            for name, pictures in gallery.items()
        )
        page_file = tmp_path / f"{css_class}.html"
        head = f'<!doctype html><meta charset="utf-8"><link rel="stylesheet" href="{style}">'
        page_file.write_text(f'{head}<body data-md-color-scheme="default">{figures}</body>', encoding="utf-8")
        page = chromium.new_page(viewport={"width": width + 40, "height": 900})
        page.goto(page_file.as_uri())
        page.evaluate("document.fonts.ready")
        page.add_style_tag(content=".picture > svg { display: block !important; max-width: none }")
        assert page.evaluate(FOUND_IN_PAGE) == []
        page.close()


# Capitals have no descent: the lowest fifth of a line's box is air, so boxes may share that much.
FOUND_IN_PAGE = """() => {
  const wrong = [];
  for (const svg of document.querySelectorAll('.picture > svg')) {
    const all = [...svg.querySelectorAll('text')].map(text => ({
      said: text.textContent, box: text.getBoundingClientRect(),
      size: parseFloat(getComputedStyle(text).fontSize) * text.getScreenCTM().a || 0,
      turned: text.hasAttribute('transform'), ctm: svg.getScreenCTM().a,
      own: parseFloat(text.getAttribute('font-size'))}));
    for (const one of all) {
      if (one.own * one.ctm < 10.99) wrong.push(svg.id + ': ' + one.said + ' is ' + one.own * one.ctm + ' px');
      const air = 0.22 * one.own * one.ctm;
      for (const other of all) {
        if (one === other) continue;
        const x = Math.min(one.box.right, other.box.right) - Math.max(one.box.left, other.box.left);
        const y = Math.min(one.box.bottom, other.box.bottom) - Math.max(one.box.top, other.box.top);
        if (x > air * 2 && y > air * 2) wrong.push(svg.id + ': ' + one.said + ' meets ' + other.said);
      }
    }
  }
  return wrong;
}"""


def point(x: int, y: int) -> Point:
    """A spot in millimetres."""
    return Point(x_mm=Decimal(x), y_mm=Decimal(y))


def extent(x: int, y: int) -> Extent:
    """A size in millimetres."""
    return Extent(x_mm=Decimal(x), y_mm=Decimal(y))


def part(ref: str, x: int, y: int, width: int, height: int, name: str | None = None) -> Part:
    """A chip at a spot."""
    return Part(ref=ref, kind="chip", name=name, at=point(x, y), body=extent(width, height))


def rail(name: str, to_ground: ToGround | None = None) -> Rail:
    """A rail of 5 V."""
    window = Volts(low_v=Decimal("4.75"), high_v=Decimal("5.25"))
    return Rail(name=name, nominal_v=Decimal(5), window=window, to_ground=to_ground)
