"""Entries in the order in which they are listed; of a large site they are too many to be held at once."""

import marshal
from collections.abc import Iterable, Iterator
from heapq import merge
from itertools import islice
from zlib import compress, decompress

from benchsheaf.pages.finding.entry import Entry

MOST_AT_ONCE = 1 << 14
"""How many entries are held as they are, those of some forty machines; what is beyond that is packed."""
UNPACKED_AT_ONCE = 64
QUICKLY = 1  # how hard entries are packed

Stretch = list[bytes]
"""Entries in their order, some of them in each piece."""


def in_order(entries: Iterable[Entry]) -> Iterator[Entry]:
    """The entries by rank; of two with the same, the later one comes first. Each is forgotten once it is given."""
    coming = iter(entries)
    stretches: list[Stretch] = []
    held = _next(coming)
    while len(held) == MOST_AT_ONCE:
        stretches.append(_packed(held))
        held = _next(coming)
    if not stretches:
        return _drained(held)
    return merge(_drained(held), *map(_unpacked, reversed(stretches)), key=lambda each: each.rank)


def _next(coming: Iterator[Entry]) -> list[Entry]:
    """As many as are held at once, the last by rank first."""
    return sorted(islice(coming, MOST_AT_ONCE), key=lambda each: each.rank, reverse=True)


def _drained(held: list[Entry]) -> Iterator[Entry]:
    while held:
        yield held.pop()


def _packed(held: list[Entry]) -> Stretch:
    """The same in a tenth of the room; what was held is used up."""
    pieces = []
    while held:
        several = [_plain(held.pop()) for _ in range(min(UNPACKED_AT_ONCE, len(held)))]
        pieces.append(compress(marshal.dumps(several), QUICKLY))
    return pieces[::-1]


def _plain(entry: Entry) -> tuple[object, ...]:
    return tuple(getattr(entry, name) for name in Entry.__slots__)


def _unpacked(stretch: Stretch) -> Iterator[Entry]:
    while stretch:
        for each in marshal.loads(decompress(stretch.pop())):
            yield Entry(**dict(zip(Entry.__slots__, each, strict=True)))
