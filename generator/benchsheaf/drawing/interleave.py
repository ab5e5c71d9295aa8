"""A track with its interleave: sectors in the order in which they pass the head, and what one turn of reading gets."""

from collections.abc import Iterator
from dataclasses import dataclass
from math import cos, pi, sin

from benchsheaf.compute.storage import InterleaveFigures, TrackFigures
from benchsheaf.drawing.lettering import CAP_HEIGHT, text_width
from benchsheaf.drawing.picture import Both, Circle, Line, Path, Picture, Run, Shape, Steps, Words, words
from benchsheaf.drawing.told import told

CAPTION = (
    "As the sectors pass the head, clockwise from the index. Shaded: those that the first turn reads where the machine "
    "keeps up; the line inside goes from each to the next and ends where the second turn "
)
STEP = pi / 60
"""How finely the spiral inside is drawn: three degrees."""


@dataclass(frozen=True, kw_only=True, slots=True)
class Layout:
    """Sizes of one of the two drawings, in pixels."""

    css_class: str
    width: float
    height: float
    centre: tuple[float, float]
    outer: float
    inner: float
    text: float

    def at(self, turn: float, radius: float) -> tuple[float, float]:
        """A point by its share of a turn, clockwise from the top, and its distance from the middle."""
        angle = 2 * pi * turn
        x, y = self.centre
        return round(x + radius * sin(angle), 6), round(y - radius * cos(angle), 6)


WIDE = Layout(css_class="wide", width=404, height=424, centre=(202, 222), outer=196, inner=122, text=14)
PHONE = Layout(css_class="phone", width=344, height=362, centre=(172, 190), outer=166, inner=102, text=13)


def interleave_ring(figures: InterleaveFigures, track: TrackFigures, ident: str) -> Both:
    """The two drawings of a track.

    Units: sector numbers as formatted, seconds a turn.
    """
    order = " ".join(map(str, figures.order))
    label = (
        f"A track of {len(figures.order)} sectors at interleave {figures.factor}, in the order in which they pass the "
        f"head: {order}. One turn takes {_turn(track)}. The table of interleaves says how long a track takes."
    )
    read = first_turn(figures.order)
    wide, phone = (_picture(layout, figures, track, ident, label) for layout in (WIDE, PHONE))
    return Both(
        wide=wide, phone=phone, caption=CAPTION + ("would begin." if len(read) == len(figures.order) else "begins.")
    )


def _turn(track: TrackFigures) -> str:
    """The time of a turn, in milliseconds as the trade says it."""
    seconds, _, _ = told(track, "turn_s", "s", 5, 5).partition("\u00a0")
    return f"{float(seconds) * 1000:.2f}\u00a0ms"


def _picture(layout: Layout, figures: InterleaveFigures, track: TrackFigures, ident: str, label: str) -> Picture:
    read = first_turn(figures.order)
    x, y = layout.centre
    top = y - layout.outer
    return Picture(
        view_box=(0, 0, layout.width, layout.height),
        label=label,
        shapes=(
            *_sectors(layout, figures.order, frozenset(read)),
            *_numbers(layout, figures.order, frozenset(read)),
            *_reading(layout, figures.order, read),
            Line(x, top - 14, x, top + 10, "running-end"),
            words(x + 9, top - 8, "index", size=layout.text),
            *_turning(layout, track),
        ),
        css_class=layout.css_class,
        ident=f"{ident}-{layout.css_class}",
        most_px=layout.width if layout is WIDE else None,
    )


def first_turn(order: tuple[int, ...]) -> tuple[int, ...]:
    """The sector numbers that one turn from the index reads, if each is read as soon as it comes by."""
    places = {number: place for place, number in enumerate(order)}
    read: list[int] = []
    for number in sorted(order):
        if read and places[number] < places[read[-1]]:
            break
        read.append(number)
    return tuple(read)


def _sectors(layout: Layout, order: tuple[int, ...], read: frozenset[int]) -> Iterator[Shape]:
    share = 1 / len(order)
    outer, inner = layout.outer, layout.inner
    if len(order) == 1:
        yield Circle(*layout.centre, outer, "outline load-3", stroke_width=1.3)
        yield Circle(*layout.centre, inner, "outline paper", stroke_width=1.3)
        return
    for place, number in enumerate(order):
        start, end = place * share, (place + 1) * share
        large = 1 if share > 0.5 else 0
        steps: Steps = (
            ("M", layout.at(start, inner)),
            ("L", layout.at(start, outer)),
            ("A", (outer, outer, 0, large, 1, *layout.at(end, outer))),
            ("L", layout.at(end, inner)),
            ("A", (inner, inner, 0, large, 0, *layout.at(start, inner))),
            ("Z", ()),
        )
        yield Path(steps, "load-3" if number in read else "chip")
        yield Path(steps, "outline", 1.2)


def _numbers(layout: Layout, order: tuple[int, ...], read: frozenset[int]) -> Iterator[Words]:
    """The numbers in their sectors; where sectors are too narrow, every nth of those not read at first."""
    middle = (layout.outer + layout.inner) / 2
    room = 2 * pi * middle / len(order)
    widest = max(text_width(str(number), layout.text) for number in order) + 2
    every = max(1, -int(-widest // room))
    shown = {place for place, number in enumerate(order) if number in read}
    if every > 1 and any(place + step in shown for place in shown for step in range(1, every)):
        shown = set()
    for place in range(0, len(order), every):
        if not any((place + step) % len(order) in shown for step in range(1 - every, every)):
            shown.add(place)
    for place in sorted(shown):
        number = order[place]
        x, y = layout.at((place + 0.5) / len(order), middle)
        css_class = "label bold" if number in read else "label"
        yield Words(x, y + layout.text * CAP_HEIGHT / 2, (Run(str(number)),), layout.text, css_class, "middle")


def _reading(layout: Layout, order: tuple[int, ...], read: tuple[int, ...]) -> Iterator[Shape]:
    """A spiral from the first sector through all that one turn reads, to the one with which the next turn begins."""
    places = {number: place for place, number in enumerate(order)}
    count = len(order)
    stops = [places[number] / count for number in read]
    following = [number for number in sorted(order) if number > read[-1]]
    end = 1 + places[following[0]] / count if following else 1.0
    radius = layout.inner - 12

    def at(turn: float) -> tuple[float, float]:
        return layout.at(turn, radius - 14 * turn)

    points = max(2, int(end * 2 * pi / STEP))
    steps: Steps = tuple(("L" if point else "M", at(end * point / points)) for point in range(points + 1))
    yield Path(steps, "curve", 2)
    for stop in [*stops, end]:
        yield Circle(*at(stop), 1.7, "outline", stroke_width=3.4)


def _turning(layout: Layout, track: TrackFigures) -> Iterator[Shape]:
    """How long a turn takes, and which way it goes."""
    x, y = layout.centre
    yield words(x, y - 4, _turn(track), size=layout.text, anchor="middle")
    yield words(x, y + 13, "a turn", size=layout.text, anchor="middle")
    radius = layout.inner * 0.52
    start, end = layout.at(0.2, radius), layout.at(0.4, radius)
    yield Path((("M", start), ("A", (radius, radius, 0, 0, 1, *end))), "curve", 1.4)
    tip, left, right = layout.at(0.4, radius), layout.at(0.36, radius - 5), layout.at(0.36, radius + 5)
    yield Path((("M", left), ("L", tip), ("L", right)), "curve", 1.4)
