"""Entries as files that a script can load: which words are where, and what the results say, in small pieces.

Each file is a classic script with one call of `benchsheafSearch(stamp, name, data)`, so that it works where nothing can
be fetched. The stamp is the same in all files of one build; files of two builds do not fit together.

The manifest tells where each piece begins: `words` the first letters of each piece of words, `blocks` the number of the
first entry of each block. A piece of words is a list of `[word, titles, texts, places]`, sorted by word, with the
numbers of the entries that have the word in their title, their text, or the place where they are; each number is
written as the distance from the one before. Two words with a space between follow each other in a title; a last `=`
says that they are the whole title. `@SLUG` has all that a machine holds. A block holds `[title, text, place, fragment,
kind, designator]` for each entry, with its own lists of places and kinds.
"""

import json
from array import array
from collections.abc import Iterable, Iterator, Mapping
from hashlib import sha256
from itertools import chain, pairwise
from zlib import compress, decompress

from benchsheaf import urls
from benchsheaf.pages.finding.entry import Entry
from benchsheaf.pages.finding.order import in_order
from benchsheaf.pages.finding.postings import Postings
from benchsheaf.pages.finding.spelling import spellings, words

# Small enough that a phone loads what it needs and little else, large enough that files stay few.
WORDS_BYTES = 32_000
BLOCK_BYTES = 16_000
QUICKLY = 1  # how hard a piece is packed until it is written


class Pieces(Mapping[str, bytes]):
    """The files by their addresses. Until one is asked for it is kept packed, as all of a large site are many."""

    def __init__(self) -> None:
        """Begin with none."""
        self._packed: dict[str, bytes] = {}
        self._sum = sha256()

    def put(self, name: str, data: str) -> None:
        """Take the data of one more piece, made so that they cannot end a script, wherever they are put."""
        piece = data.replace("<", "\\u003c").replace("\u2028", "\\u2028").replace("\u2029", "\\u2029").encode()
        self._sum.update(f"{name} {len(piece)} ".encode() + piece)
        self._packed[urls.search_data(name)] = compress(b'"%s",%s);\n' % (name.encode(), piece), QUICKLY)

    def __getitem__(self, address: str) -> bytes:
        """A file with the stamp of all."""
        stamp = self._sum.hexdigest()[:8].encode()
        return b'benchsheafSearch("%s",%s' % (stamp, decompress(self._packed[address]))

    def __iter__(self) -> Iterator[str]:
        """The addresses."""
        return iter(self._packed)

    def __len__(self) -> int:
        """How many files there are."""
        return len(self._packed)


def shard_files(entries: Iterable[Entry], names: Mapping[str, str]) -> Pieces:
    """Every file of the search data by its address; `names` has the machines' names by slug."""
    postings = Postings()
    pieces = Pieces()
    starts: list[str] = []
    firsts: list[int] = []
    # Of a large site there are very many: each entry is forgotten once it is written, and then each word.
    drained = _noted(in_order(entries), postings, names)
    count = 0
    for number, (several, block) in enumerate(_blocks(drained)):
        firsts.append(count)
        pieces.put(f"entries-{number}", block)
        count += several
    for number, (start, shelf) in enumerate(_word_shelves(postings)):
        starts.append(start)
        pieces.put(f"words-{number}", shelf)
    pieces.put("manifest", _json({"words": starts, "blocks": firsts, "entries": count}))
    return pieces


def _noted(entries: Iterable[Entry], postings: Postings, names: Mapping[str, str]) -> Iterator[Entry]:
    """The entries as they come; in `postings` each word gets those that have it in title, else text, else place."""
    places: dict[tuple[str, tuple[str, ...]], frozenset[str]] = {}
    for number, entry in enumerate(entries):
        title = words(entry.title)
        spelt = spellings(entry.title)
        in_title = frozenset() if entry.aside else spelt.union(_phrases(title))
        in_text = spelt.union(spellings(entry.text), spellings(entry.more)) - in_title
        place = (entry.where, entry.machines)
        if place not in places:
            held = (spellings(names[slug]) for slug in entry.machines)
            places[place] = spellings(entry.where).union(*held, (f"@{slug}" for slug in entry.machines))
        in_place = places[place] - in_title - in_text
        postings.note(number, (in_title, in_text, in_place))
        yield entry


def _phrases(title: tuple[str, ...]) -> Iterator[str]:
    """Each two words that follow each other, and the whole, so that the order of words can be asked for."""
    yield from (f"{one} {other}" for one, other in pairwise(title))
    if title:
        yield f"{' '.join(title)} ="


def _word_shelves(postings: Postings) -> Iterator[tuple[str, str]]:
    """Pieces of the sorted words, which are used up, each with the shortest start that parts it from the one before."""
    rows: list[str] = []
    size, start, before = 0, "", ""
    for word, numbers in postings.rows():
        lists = ",".join(map(str, _without_empty_ends(numbers))).replace(" ", "")  # as JSON has numbers
        row = f"[{_json(word)},{lists}]"
        if rows and size + len(row) > WORDS_BYTES:
            yield start, f"[{','.join(rows)}]"
            rows, size, start = [], 0, _parting(before, word)
        rows.append(row)
        size += len(row)
        before = word
    yield start, f"[{','.join(rows)}]"


def _without_empty_ends(found: "array[int]") -> list[list[int]]:
    """For title, text and place the distances between the numbers of entries; no list at the end is empty."""
    lists: list[list[int]] = [[], [], []]
    before = [0, 0, 0]
    for each in found:
        number, kind = divmod(each, 4)
        lists[kind].append(number - before[kind])
        before[kind] = number
    while not lists[-1]:
        lists.pop()
    return lists


def _parting(before: str, word: str) -> str:
    """The shortest start of a word that comes after the word before it."""
    alike = next((k for k, (one, other) in enumerate(zip(before, word, strict=False)) if one != other), len(before))
    return word[: alike + 1]


def _blocks(entries: Iterator[Entry]) -> Iterator[tuple[int, str]]:
    """Pieces of the entries, each with the number of those that it holds."""
    for begun in entries:
        places: dict[tuple[str, str], int] = {}
        kinds: dict[str, int] = {}
        rows: list[str] = []
        size = 0
        for entry in chain([begun], entries):
            page, _, fragment = entry.way.partition("#")
            if (entry.where, page) not in places:
                size += len(entry.where) + len(page)
            place = places.setdefault((entry.where, page), len(places))
            kind = kinds.setdefault(entry.kind, len(kinds))
            row: list[object] = [entry.title, entry.text, place, fragment, kind]
            rows.append(_json([*row, 1] if entry.designator else row))
            size += len(rows[-1])
            if size >= BLOCK_BYTES:
                break
        yield len(rows), f"[{_json(list(places))},{_json(list(kinds))},[{','.join(rows)}]]"


_json = json.JSONEncoder(ensure_ascii=False, separators=(",", ":")).encode
