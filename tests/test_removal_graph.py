"""The graph of what comes off: who stands before whom, frames apart, words inside, a list where room is short."""

from collections.abc import Sequence
from decimal import Decimal
from itertools import combinations, pairwise
from math import cos, pi, sin

import pytest

from benchsheaf.compute.removal import removal_figures, removal_order
from benchsheaf.drawing.lettering import Frame, words_frame
from benchsheaf.drawing.picture import Both, Box, Group, Path, Picture, Polygon, Words, every_shape
from benchsheaf.drawing.removal_columns import Cell, directly, grid
from benchsheaf.drawing.removal_graph import removal_graph
from benchsheaf.drawing.share_ring import share_ring
from benchsheaf.model.bench import Removal

# Section 14 of the notes of the first machine (invented): what, minutes, after which.
NOTED = (
    ("cover", "Cover", 4, ()),
    ("cards", "Cards", 6, ("cover",)),
    ("plugs", "Ribbons and plugs", 4, ("cover",)),
    ("chips", "Start ROMs and memory chips", 5, ("cards",)),
    ("drives", "Drives", 8, ("plugs",)),
    ("supply", "Supply", 6, ("plugs",)),
    ("board", "Main board", 12, ("cards", "plugs", "supply")),
    ("lid", "Lid of the supply box", 5, ("supply",)),
)


def removals(noted: Sequence[tuple[str, str, int, tuple[str, ...]]]) -> list[Removal]:
    """Records of rows."""
    return [
        Removal(id=ident, name=name, off_minutes=Decimal(minutes), fasteners="screws", after=after)
        for ident, name, minutes, after in noted
    ]


def drawn(several: Sequence[Removal]) -> Both:
    """Both drawings, every frame a link."""
    hrefs = {each.id: f"#{each.id}" for each in several}
    return removal_graph(several, removal_figures(several), removal_order(several), hrefs)


def frames(picture: Picture) -> dict[str, Frame]:
    """The frame of each link."""
    found = {}
    for group in picture.shapes:
        if isinstance(group, Group):
            (box,) = (each for each in group.shapes if isinstance(each, Box))
            found[str(group.href)] = Frame(box.x, box.y, box.x + box.width, box.y + box.height)
    return found


@pytest.fixture(scope="module")
def noted() -> Both:
    """The removals of the notes."""
    return drawn(removals(NOTED))


def test_what_comes_first_stands_to_the_left(noted: Both) -> None:
    """In the wide drawing every removal stands right of all that it comes after."""
    places = frames(noted.wide)
    for ident, _, _, after in NOTED:
        for first in after:
            assert places[f"#{first}"].right < places[f"#{ident}"].left


@pytest.mark.parametrize("css_class", ["wide", "phone"])
def test_frames_stand_apart_and_hold_their_words(noted: Both, css_class: str) -> None:
    """No two frames meet, each line of words lies inside its own frame, and the picture holds them all."""
    picture: Picture = getattr(noted, css_class)
    places = frames(picture)
    assert len(places) == len(NOTED)
    assert not any(one.meets(other) for one, other in combinations(places.values(), 2))
    x, y, width, height = picture.view_box
    for group in picture.shapes:
        if isinstance(group, Group):
            own = places[str(group.href)]
            assert Frame(x, y, x + width, y + height).holds(own)
            assert all(own.holds(words_frame(each)) for each in group.shapes if isinstance(each, Words))


def test_an_arrow_that_follows_from_others_is_not_drawn(noted: Both) -> None:
    """The board comes after cards, plugs and supply, and the supply after the plugs: two arrows say it."""
    tips = [each for each in noted.wide.shapes if isinstance(each, Polygon)]
    board = frames(noted.wide)["#board"]
    assert sum(tip.points[0][0] == board.left for tip in tips) == 2 + 1  # and one to the lid, in the same column
    assert len(tips) == 8  # one each, two for the board, none for the cover
    said = [each.text for each in every_shape(noted.phone.shapes) if isinstance(each, Words)]
    assert "after 2 and 6; in all 32\u00a0min" in said


def test_no_arrow_runs_through_a_frame(noted: Both) -> None:
    """Lines keep to the gaps between columns and to the room that is left for them."""
    places = list(frames(noted.wide).values())
    for way in noted.wide.shapes:
        if isinstance(way, Path):
            for left, right, top, bottom in legs(way):
                line = Frame(left, top - 0.5, right, bottom + 0.5)
                assert not any(frame.grown(-1).meets(line) for frame in places)


def legs(way: Path) -> list[tuple[float, float, float, float]]:
    """The straight pieces of a way of steps across and down: left, right, top, bottom."""
    x, y = way.steps[0][1]
    points = [(x, y)]
    for letter, (to,) in ((letter, numbers) for letter, numbers in way.steps[1:]):
        x, y = (to, y) if letter == "H" else (x, to)
        points.append((x, y))
    return [(min(a, c), max(a, c), min(b, d), max(b, d)) for (a, b), (c, d) in pairwise(points)]


def test_the_phone_has_a_numbered_list(noted: Both) -> None:
    """Numbers 1 to 8 down the drawing, each frame as wide as the phone's column."""
    places = frames(noted.phone)
    assert list(places) == [f"#{ident}" for ident, *_ in NOTED]
    assert all(one.bottom < other.top for one, other in pairwise(places.values()))
    said = [each.text for each in every_shape(noted.phone.shapes) if isinstance(each, Words)]
    assert [word for word in said if word.isdecimal()] == [str(number) for number in range(1, 9)]


def test_a_long_chain_is_a_list_on_the_wide_page_too() -> None:
    """Eight columns leave no room for words, so the frames stand below each other."""
    chain = [(f"r{k}", f"Piece {k}", 2, (f"r{k - 1}",) if k else ()) for k in range(8)]
    places = list(frames(drawn(removals(chain)).wide).values())
    assert all(one.bottom < other.top for one, other in pairwise(places))


def test_nothing_to_take_off_is_no_failure() -> None:
    """An empty graph has no frames, and asks for no room."""
    both = drawn([])
    assert both.wide.shapes == both.phone.shapes == ()


def test_cells_for_arrows_that_pass_through() -> None:
    """By hand: 1, then 2 after 1, 3 after 2, 4 after 1 and 3: the arrow from 1 to 4 passes two columns."""
    cells = grid([(), (1,), (2,), (1, 3)])
    assert [len(column) for column in cells.columns] == [1, 2, 2, 1]
    assert Cell(1, 1, 4) in cells.columns[1]
    assert (Cell(1, 1, 4), Cell(2, 1, 4)) in cells.joined
    assert (Cell(2, 1, 4), Cell(3, 4)) in cells.joined


def test_what_follows_is_left_out() -> None:
    """By hand: c comes after a and b, and b after a, so c comes directly after b alone."""
    ways = {"a": ("a",), "b": ("a", "b"), "c": ("a", "b", "c")}
    assert directly({"a": (), "b": ("a",), "c": ("a", "b")}, ways) == {"a": (), "b": ("a",), "c": ("b",)}


@pytest.mark.parametrize("weight,weight_sum", [(10, 35), (1, 4), (1, 2), (3, 4), (1, 180)])
def test_the_ring_is_filled_clockwise_by_its_share(weight: int, weight_sum: int) -> None:
    """The filled part ends at its share of a turn from the top; half a turn on it takes the long way round."""
    turn = 2 * pi * weight / weight_sum
    end = f"{10 + 5.5 * sin(turn):.2f}".rstrip("0").rstrip("."), f"{10 - 5.5 * cos(turn):.2f}".rstrip("0").rstrip(".")
    large = int(weight / weight_sum > 0.5)
    assert f"A5.5 5.5 0 {large} 1 {end[0]} {end[1]}Z" in share_ring(weight, weight_sum)


def test_a_ring_that_is_all_full_is_a_disc() -> None:
    """An arc from a point to itself draws nothing."""
    assert '<circle class="share"' in share_ring(8, 8)
