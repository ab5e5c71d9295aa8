"""Front and back, clocks and picture rates as they are drawn and told, held against the notes of the demonstration."""

import re
from decimal import Decimal
from html import unescape
from itertools import combinations, pairwise
from pathlib import Path

import pytest

from benchsheaf.drawing.clock_tree import Node, clock_tree
from benchsheaf.drawing.lettering import words_frame
from benchsheaf.drawing.picture import Box, Circle, Group, Line, Picture, Words, every_shape
from benchsheaf.drawing.rate_ranges import Scale, Tick, rate_ranges
from benchsheaf.drawing.views import view_pictures
from benchsheaf.model.boards import Extent, Point
from benchsheaf.model.machine import Machine
from benchsheaf.model.signals import Feature, Hertz, View
from benchsheaf.pages.rates import clock_words, rate_words
from benchsheaf.site import Judgement, edition, judgement

NOTES = "the demonstration notes, section 11a, drawing 1: millimetres from the left top"


@pytest.fixture(scope="module")
def judged(repository: Path) -> Judgement:
    """The machines of the checkout with their figures."""
    return judgement(repository / "machines")


@pytest.fixture(scope="module")
def machine(judged: Judgement) -> Machine:
    """The machine of the notes."""
    return judged.collection.machines["ostervane-bureau-8"]


def drawn_view(machine: Machine, name: str) -> Picture:
    """The wide drawing of a front or a back."""
    return view_pictures(next(each for each in machine.views if each.id == name), "v").wide


def of_feature(picture: Picture, title: str) -> Group:
    """The group of a feature, found by the beginning of its title."""
    return next(each for each in picture.shapes if isinstance(each, Group) and (each.title or "").startswith(title))


def words_of(picture: Picture) -> list[str]:
    """Every line of words, with plain spaces."""
    return [each.text.replace("\u00a0", " ") for each in every_shape(picture.shapes) if isinstance(each, Words)]


def test_badge_and_slot_lie_where_the_notes_say(machine: Machine) -> None:
    """Corner and size of both; the front is 420 by 150."""
    front = drawn_view(machine, "front")
    (edge,) = (each for each in front.shapes if isinstance(each, Box))
    assert (edge.x, edge.y, edge.width, edge.height) == (0, 0, 420, 150)
    for title, wanted in (("badge", (30, 22, 120, 26)), ("Floppy slot", (270, 40, 130, 8))):
        body = next(each for each in of_feature(front, title).shapes if isinstance(each, Box))
        assert (body.x, body.y, body.width, body.height) == wanted, NOTES
    assert {"OSTERVANE", "BUREAU-8", "Red lamp", "Disk lamp"} <= set(words_of(front))


def test_the_lamp_is_red_and_stands_at_its_spot(machine: Machine) -> None:
    """The lamp is filled with its colour, and its name says the colour too; the disk's lamp has none."""
    front = drawn_view(machine, "front")
    (lamp,) = (each for each in of_feature(front, "Red lamp").shapes if isinstance(each, Circle))
    (disk,) = (each for each in of_feature(front, "Disk lamp").shapes if isinstance(each, Circle))
    assert (lamp.cx, lamp.cy, disk.cx, disk.cy) == (250, 120, 270, 90), NOTES
    assert lamp.fill is not None
    assert disk.fill is None


def test_the_back_has_its_rings_and_windows(machine: Machine) -> None:
    """Seven rings about one middle, the widest 80 mm; five windows 22 mm apart; both sockets."""
    back = drawn_view(machine, "back")
    rings = [each for each in of_feature(back, "Fan grille").shapes if isinstance(each, Circle)]
    assert [(each.cx, each.cy) for each in rings] == [(110, 60)] * 7, NOTES
    assert max(each.r for each in rings) * 2 == 80
    windows = [each for each in of_feature(back, "Card window").shapes if isinstance(each, Box)]
    assert [each.x + each.width / 2 for each in windows] == [250, 272, 294, 316, 338], NOTES
    (keyboard,) = (each for each in of_feature(back, "Keyboard socket").shapes if isinstance(each, Circle))
    assert (keyboard.cx, keyboard.cy) == (390, 120), NOTES
    (mains,) = (each for each in of_feature(back, "Mains socket").shapes if isinstance(each, Box))
    assert (mains.x + mains.width / 2, mains.y + mains.height / 2) == (40, 40), NOTES


def feature(name: str, kind: str = "slot", x: int = 0, size: tuple[int, int] = (20, 10)) -> Feature:
    """Something on a view."""
    at, body = Point(x_mm=Decimal(x), y_mm=Decimal(20)), Extent(x_mm=Decimal(size[0]), y_mm=Decimal(size[1]))
    return Feature(id="f", kind=kind, name=name, at=at, body=body)


def test_a_name_without_room_is_left_to_the_list() -> None:
    """On a view that is full of features no name covers another or a body."""
    size = Extent(x_mm=Decimal(100), y_mm=Decimal(50))
    name = "A name of some length"
    crowded = View(id="v", name="V", size=size, features=tuple(feature(name, x=x) for x in range(0, 100, 20)))
    told = [each for each in view_pictures(crowded, "v").phone.shapes if isinstance(each, Words)]
    assert 0 < len(told) < 5
    assert not any(words_frame(one).meets(words_frame(other)) for one, other in combinations(told, 2))
    alone = View(id="v", name="V", size=size, features=(feature("Name", x=40),))
    assert words_of(view_pictures(alone, "v").wide) == ["Name"]


SCALE = Scale(
    name="Line rate",
    locks=Hertz(low_hz=Decimal(19200), high_hz=Decimal(20800)),
    ticks=[
        Tick(name="First", rate_hz=Decimal(20000), printed="20.00 kHz", fits=True),
        Tick(name="Second", rate_hz=Decimal(15625), printed="15.625 kHz", fits=False),
    ],
)


def test_rates_stand_on_their_scale() -> None:
    """20.00 kHz stands in the middle of 19.2 to 20.8 kHz, 15.625 kHz left of it, each in true proportion."""
    both = rate_ranges([SCALE], "r")
    for picture in (both.wide, both.phone):
        (box,) = (each for each in picture.shapes if isinstance(each, Box) and each.css_class == "usual-box")
        (fits,) = (each for each in picture.shapes if isinstance(each, Line) and each.css_class == "limit")
        (bar,) = (each for each in picture.shapes if isinstance(each, Box) and each.css_class == "stop-bar")
        assert fits.x1 == pytest.approx(box.x + box.width / 2)
        hertz = box.width / 1600  # the box is 1.6 kHz wide
        assert box.x - (bar.x + bar.width / 2) == pytest.approx((19200 - 15625) * hertz)
        assert "Second: 15.625 kHz, cannot lock" in words_of(picture)
        assert "First: 20.00 kHz" in words_of(picture)


def chain(length: int) -> list[Node]:
    """Clocks, each divided from the one before."""
    return [
        Node(
            id=str(number),
            name=f"Clock {number}",
            rate="1 Hz",
            part="",
            of=str(number - 1) if number else None,
            divided_by=2 if number else None,
        )
        for number in range(length)
    ]


def bodies(picture: Picture) -> list[Box]:
    """The frames of the clocks."""
    return [each for each in picture.shapes if isinstance(each, Box)]


@pytest.mark.parametrize("length", [1, 3, 5, 6, 40, 3000])
def test_a_chain_of_any_length_is_drawn_inside_its_column(length: int) -> None:
    """Each clock has its frame, further right or lower than the one before, and none leaves the picture."""
    both = clock_tree(chain(length), "c")
    for picture in (both.wide, both.phone):
        frames = bodies(picture)
        assert len(frames) == length
        assert all(after.x > before.x or after.y > before.y for before, after in pairwise(frames))
        assert all(each.x >= 0 and each.x + each.width <= picture.view_box[2] <= 930 for each in frames)
        assert all(each.width >= 100 for each in frames)


def test_what_comes_from_one_clock_stands_in_one_column() -> None:
    """Two clocks from one crystal stand below each other, right of it, and the divisor beside each line."""
    nodes = [
        Node(id="y", name="Crystal", rate="36.000 MHz", part="Y1", of=None, divided_by=None),
        Node(id="a", name="A", rate="6.000 MHz", part="N5", of="y", divided_by=6),
        Node(id="b", name="B", rate="1.500 MHz", part="N12", of="y", divided_by=24),
    ]
    wide = clock_tree(nodes, "c").wide
    crystal, first, second = bodies(wide)
    assert first.x == second.x > crystal.x + crystal.width
    assert crystal.y == first.y < second.y
    assert {"÷ 6", "÷ 24"} <= set(words_of(wide))


# As a counter shows them: the rates of the notes, section 5.
@pytest.mark.parametrize(
    "rate,words", [("20000", "20.00 kHz"), ("15625", "15.625 kHz"), ("62.5", "62.50 Hz"), ("50.0801282051", "50.08 Hz")]
)
def test_a_rate_has_the_digits_that_tell_it(rate: str, words: str) -> None:
    """Two places where the third is a nought."""
    assert rate_words(Decimal(rate)).replace("\u00a0", " ") == words


@pytest.mark.parametrize(
    "rate,words",
    [("6E+6", "6.000 MHz"), ("1500000", "1.500 MHz"), ("100", "100 Hz"), ("750", "750 Hz"), ("18.2065", "18.21 Hz")],
)
def test_a_clock_has_the_digits_of_a_counter(rate: str, words: str) -> None:
    """Three places under a prefix, none of a whole number of hertz."""
    assert clock_words(Decimal(rate)).replace("\u00a0", " ") == words


def page_text(judged: Judgement, address: str) -> str:
    """What a page says, without its markup and its pictures."""
    whole = edition(judged)
    (page,) = (each for each in whole.pages if each.address == address)
    html = re.sub(r"<svg.*?</svg>", " ", whole.html(page), flags=re.S)
    return re.sub(r"\s+", " ", unescape(re.sub(r"<[^>]+>", " ", html))).replace("\u00a0", " ")


def test_a_screen_is_never_promised(judged: Judgement) -> None:
    """The mode whose rates fit is told with what is not known; the one that does not stops, before all figures."""
    told = page_text(judged, "machines/ostervane-bureau-8/display.html")
    assert "rates fit; levels not known" in told
    assert "cannot lock: line rate too low, frame rate too low" in told
    stop = told.index("OV-VD20 cannot lock with W1 at B: switch it off at once.")
    assert stop < told.index("As delivered 20.00 kHz by line and 62.50 Hz by frame")
    for address in ("parts/displays/ov-vd20.html", "parts/cards/ov-tx2.html"):
        assert "rates fit; levels not known" in page_text(judged, address)


def test_marks_stand_from_the_outside_in(judged: Judgement) -> None:
    """Front, back, plate, inside, screen; the badge does not decide, and it is said why."""
    told = page_text(judged, "machines/ostervane-bureau-8/index.html")
    told = told[told.index("How to recognise it") :]
    places = [
        told.index(words) for words in ("From the front", "From behind", "On the type plate", "Inside", "On the screen")
    ]
    assert places == sorted(places)
    assert re.search(r"Badge Two lines, OSTERVANE and BUREAU-8 no \. Covers were exchanged", told)


def test_refresh_is_told_with_its_figures(judged: Judgement) -> None:
    """Every 90 clocks of 6.000 MHz, 15.0 µs, all rows in 3.84 ms of 4 ms (section 5 of the notes)."""
    told = page_text(judged, "machines/ostervane-bureau-8/memory.html")
    assert "every 90 clocks of 6.000 MHz" in told
    assert "which is 15.0 µs; all 256 rows in 3.84 ms, and 4 ms are allowed" in told
