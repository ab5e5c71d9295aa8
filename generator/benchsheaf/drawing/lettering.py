"""How much room words take, and how labels come to stand where they hide nothing."""

from collections.abc import Iterable, Iterator, Sequence
from typing import NamedTuple

from benchsheaf.drawing.picture import Words

# Advances in thousandths of the size, measured in the faces that the site ships; bold is as wide as regular.
_ADVANCES = {
    200: "'|",
    250: ",;",
    300: ".:Iij°²",
    350: " \u00a0!l",
    400: '"frt',
    450: "()-J[s",
    500: "=]cz",
    525: "a",
    550: "$*/?FLS\\_`ekvxy–−éä",
    600: "+CEKPTYZbdghnopqu}±öü",
    650: "0123456789<>ABDGRVXµß{",
    700: "&HU",
    750: "N^w~½…",
    800: "OQΩ×√",
    850: "#",
    900: "%Mm",
    950: "W",
    1000: "@",
}
_ADVANCE = {letter: advance / 1000 for advance, letters in _ADVANCES.items() for letter in letters}
_UNKNOWN = 0.9  # a letter that the faces lack comes from another one, which may be wide
_MONO = 0.65
CAP_HEIGHT = 0.77
"""Height of capitals and figures over the base line, by the size. Source: measured in the faces that the site ships."""

DESCENT = 0.2
_SQUARE = 24


def text_width(text: str, size: float, mono: bool = False) -> float:
    """Width of a line of words, in the unit of its size."""
    return size * (_MONO * len(text) if mono else sum(_ADVANCE.get(letter, _UNKNOWN) for letter in text))


class Frame(NamedTuple):
    """An upright rectangle by its edges."""

    left: float
    top: float
    right: float
    bottom: float

    @property
    def width(self) -> float:
        """From left to right."""
        return self.right - self.left

    @property
    def height(self) -> float:
        """From top to bottom."""
        return self.bottom - self.top

    @property
    def centre(self) -> tuple[float, float]:
        """The middle."""
        return (self.left + self.right) / 2, (self.top + self.bottom) / 2

    def grown(self, by: float) -> "Frame":
        """The same rectangle with its edges moved outward."""
        return Frame(self.left - by, self.top - by, self.right + by, self.bottom + by)

    def meets(self, other: "Frame") -> bool:
        """Whether they share more than an edge."""
        return (
            self.left < other.right and other.left < self.right and self.top < other.bottom and other.top < self.bottom
        )

    def holds(self, other: "Frame") -> bool:
        """Whether the other lies wholly inside."""
        return (
            self.left <= other.left
            and self.top <= other.top
            and self.right >= other.right
            and self.bottom >= other.bottom
        )


class Crowd:
    """Frames that may not be covered, kept by the squares that they touch: asking stays quick on a full board."""

    def __init__(self, frames: Iterable[Frame] = ()) -> None:
        """Begin with some frames."""
        self._squares: dict[tuple[int, int], list[Frame]] = {}
        for frame in frames:
            self.add(frame)

    def add(self, frame: Frame) -> None:
        """One more frame."""
        for square in _squares(frame):
            self._squares.setdefault(square, []).append(frame)

    def met(self, frame: Frame) -> Iterator[Frame]:
        """Every frame that shares more than an edge with this one; some more than once."""
        left, top, right, bottom = frame
        for square in _squares(frame):
            for each in self._squares.get(square, ()):
                if each[0] < right and left < each[2] and each[1] < bottom and top < each[3]:
                    yield each


def _squares(frame: Frame) -> list[tuple[int, int]]:
    left, top, right, bottom = frame
    down = range(int(top // _SQUARE), int(bottom // _SQUARE) + 1)
    return [(x, y) for x in range(int(left // _SQUARE), int(right // _SQUARE) + 1) for y in down]


def around(x: float, y: float, width: float, height: float) -> Frame:
    """The frame of something by its middle and its size."""
    return Frame(x - width / 2, y - height / 2, x + width / 2, y + height / 2)


def hull(frames: Iterable[Frame]) -> Frame:
    """The least frame round several; at least one is wanted."""
    every = list(frames)
    return Frame(
        min(each.left for each in every),
        min(each.top for each in every),
        max(each.right for each in every),
        max(each.bottom for each in every),
    )


def words_frame(line: Words) -> Frame:
    """The room that a line of words takes."""
    wide = text_width(line.text, line.size, "mono" in line.css_class)
    before = {"start": 0.0, "middle": wide / 2, "end": wide}[line.anchor]
    rise, fall = line.size * CAP_HEIGHT, line.size * DESCENT
    if line.turned:
        return Frame(line.x - rise, line.y + before - wide, line.x + fall, line.y + before)
    return Frame(line.x - before, line.y - rise, line.x - before + wide, line.y + fall)


def base_line(middle: float, size: float) -> float:
    """Where the base line lies if capitals are to stand in the middle."""
    return middle + size * CAP_HEIGHT / 2


def spread(centres: Sequence[float], widths: Sequence[float], low: float, high: float, gap: float) -> list[float]:
    """Left edges of labels on one line, each as near as may be to its centre, none over its neighbour.

    Centres come in rising order. Where there is not room for all between the bounds, they run over the upper one.
    """
    lefts: list[float] = []
    edge = low
    for centre, width in zip(centres, widths, strict=True):
        lefts.append(max(edge, centre - width / 2))
        edge = lefts[-1] + width + gap
    if sum(widths) + gap * (len(lefts) - 1) > high - low:
        return lefts
    edge = high
    for index in range(len(lefts) - 1, -1, -1):
        lefts[index] = min(lefts[index], edge - widths[index])
        edge = lefts[index] - gap
    return lefts


def shortened(text: str, size: float, width: float) -> str:
    """The words as they are where there is room for them, else as many letters as go before a mark of omission."""
    if text_width(text, size) <= width:
        return text
    kept = text
    while kept and text_width(f"{kept}…", size) > width:
        kept = kept[:-1]
    return f"{kept.rstrip()}…"


def wrapped(text: str, size: float, width: float) -> list[str]:
    """Words in lines that are no wider than a width; a word that is longer by itself stays whole."""
    lines: list[str] = []
    for word in text.split(" "):
        if lines and text_width(f"{lines[-1]} {word}", size) <= width:
            lines[-1] += f" {word}"
        else:
            lines.append(word)
    return lines
