"""One thing that is wrong in the data: where it stands, what was found, what is wanted, the nearest right thing."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from difflib import SequenceMatcher
from itertools import takewhile


@dataclass(frozen=True, kw_only=True, slots=True, order=True)
class Place:
    """A spot in a data file; lines and columns are counted from 1, line 0 stands for the file as a whole."""

    file: str
    line: int = 0
    column: int = 0


@dataclass(frozen=True, kw_only=True, slots=True)
class Mistake:
    """One wrong thing in the data: `found` is the contributor's own text, `fills` the words of its code's sentence.

    `about` is what several places may tell of, such as a name that is gone: of mistakes about the same the first is
    told, and `others` are the rest, in their order.
    """

    place: Place
    code: "Code"
    path: str = ""
    found: str | None = None
    nearest: str | None = None
    fills: Mapping[str, str] = field(default_factory=dict)
    about: tuple[str, ...] = ()
    others: "tuple[Mistake, ...]" = ()

    @property
    def sentence(self) -> str:
        """What is wrong and what to do, in the code's words."""
        return self.code.words.format_map(self.fills)

    @property
    def order(self) -> tuple[Place, str, str]:
        """What mistakes are sorted by: the order in which a reader meets them."""
        return (self.place, self.code.id, self.path)


@dataclass(frozen=True, kw_only=True, slots=True)
class Code:
    """A kind of mistake with a permanent name.

    `words` is the sentence with `{named}` gaps; `example` fills them for the manual and for the test of the words.
    `shares` is what one more line does, and what several do, that tell of the same.
    """

    id: str
    meaning: str
    words: str
    example: Mapping[str, str] = field(default_factory=dict)
    shares: tuple[str, str] = ("has the same mistake", "have the same mistake")

    def at(
        self, place: Place, path: str = "", found: str | None = None, nearest: str | None = None, **fills: str
    ) -> Mistake:
        """This mistake at a place, its gaps filled."""
        return Mistake(place=place, code=self, path=path, found=found, nearest=nearest, fills=fills)


LONGEST_FILL = 250
"""Signs of a text that fills a gap of a sentence; what is longer is cut."""
ALIKE = 0.6
VERY_ALIKE = 0.85
TELLING = 3


def nearest_name(wanted: str, names: "list[str] | tuple[str, ...]", alike: float = ALIKE) -> str | None:
    """The known name that a misspelt one most resembles, if any does; capitals do not count.

    Of several that are equally alike it is the one that begins alike: +13 V for +12 V, not -12 V. The same letters in
    another order come before other letters. Where none is alike, the only one that begins with all of it, or
    is all of its beginning, is meant.
    Source: Ratcliff and Obershelp's measure as the standard library has it, `alike` and above.
    """
    by_small = {name.lower(): name for name in reversed(names)}
    written = wanted.lower()
    matcher = SequenceMatcher(None, b=written)
    best: tuple[bool, float, int, str] | None = None
    for small in by_small:
        matcher.set_seq1(small)
        if matcher.real_quick_ratio() >= alike and matcher.quick_ratio() >= alike and matcher.ratio() >= alike:
            same = takewhile(lambda pair: pair[0] == pair[1], zip(small, written, strict=False))
            rank = (sorted(small) == sorted(written), matcher.ratio(), len(list(same)), small)
            best = max(best, rank) if best else rank
    if best:
        return by_small[best[3]]
    begun = [small for small in by_small if _begins(small, written) or _begins(written, small)]
    return by_small[begun[0]] if len(begun) == 1 and alike == ALIKE else None


def _begins(short: str, long: str) -> bool:
    """Whether one name is the beginning of another, and long enough to tell something."""
    return len(short) >= TELLING and long.startswith(short)
