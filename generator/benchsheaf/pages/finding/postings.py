"""Which entries have which words; of a large site they are too many to be held at once."""

import marshal
from array import array
from collections.abc import Iterable, Iterator
from heapq import merge
from itertools import groupby
from operator import itemgetter
from zlib import compress, decompress

MOST_AT_ONCE = 1 << 19
"""How many numbers of entries are held as they are, those of some fifty machines; what is beyond that is packed."""
WORDS_UNPACKED_AT_ONCE = 128
QUICKLY = 1  # how hard words are packed

Row = tuple[str, "array[int]"]


class Postings:
    """For each word the numbers of its entries, times four, and 0 for one that has it in its title, 1 text, 2 place."""

    def __init__(self) -> None:
        """Begin with no word."""
        self._held: dict[str, array[int]] = {}
        self._count = 0
        self._stretches: list[list[bytes]] = []

    def note(self, entry: int, several: tuple[Iterable[str], ...]) -> None:
        """Take the words of one entry, which comes after all others: those of its title, its text, its place."""
        held = self._held
        for number, words in enumerate(several, entry * 4):
            for word in words:
                found = held.get(word)
                if found is None:
                    found = held[word] = array("I")
                found.append(number)
                self._count += 1
        if self._count >= MOST_AT_ONCE:
            self._stretches.append(self._packed())

    def rows(self) -> Iterator[Row]:
        """Each word with its numbers, in the order of words; each is forgotten once it is given."""
        if not self._stretches:
            yield from self._drained()
            return
        stretches = [*map(_unpacked, self._stretches), self._drained()]
        for word, rows in groupby(merge(*stretches, key=_place), key=itemgetter(0)):
            numbers = array("I")
            for _, some in rows:
                numbers += some
            yield word, numbers

    def _drained(self) -> Iterator[Row]:
        for word in sorted(self._held, key=_order):
            yield word, self._held.pop(word)

    def _packed(self) -> list[bytes]:
        """What is held in a fraction of the room, the first words at the end."""
        pieces: list[bytes] = []
        several: list[tuple[str, bytes]] = []
        for word, numbers in self._drained():
            several.append((word, numbers.tobytes()))
            if len(several) == WORDS_UNPACKED_AT_ONCE or not self._held:
                pieces.append(compress(marshal.dumps(several), QUICKLY))
                several = []
        self._count = 0
        return pieces[::-1]


def _order(word: str) -> bytes:
    """A browser compares text by units of sixteen bits; so must the order of the words."""
    return word.encode("utf-16-be")


def _place(row: Row) -> bytes:
    return _order(row[0])


def _unpacked(stretch: list[bytes]) -> Iterator[Row]:
    while stretch:
        for word, numbers in marshal.loads(decompress(stretch.pop())):
            yield word, array("I", numbers)
