"""What a data file holds once it is read: text values, and beside each the spot where it stands."""

from collections.abc import Iterable
from dataclasses import dataclass, field
from functools import cached_property
from typing import NamedTuple, Protocol, TypeAlias

from benchsheaf.mistakes import Mistake, Place

Value: TypeAlias = "str | list[Value] | dict[str, Value]"
Path_: TypeAlias = tuple[str | int, ...]
"""The way to a value inside a document: `("boards", 0, "parts", 3, "rated")`."""


class Spot(NamedTuple):
    """Where one value stands, and its key where it has one (0 where not); lines and columns count from 1.

    `inner` holds the spots of what the value holds, under the same names and in the same order.
    """

    line: int
    column: int
    key_line: int
    key_column: int
    inner: "dict[str, Spot] | list[Spot] | None"


class Source(Protocol):
    """Where the values of a file and their spots come from, as often as they are asked for."""

    def values(self) -> dict[str, Value]:
        """What stands in the file."""

    def spots(self) -> dict[str, Spot]:
        """The spot of each value."""

    def pack(self) -> None:
        """Take up less room: nobody will ask soon."""

    def forget(self) -> None:
        """Take up no room: nobody will ask any more."""

    def holds(self, sign: str) -> bool:
        """Whether a sign may stand somewhere in the file; no only where it does not."""

    def lines(self) -> list[str]:
        """The lines of the file, as far as they are still there."""


@dataclass(frozen=True)
class Document:
    """One data file: its shown name, and the source of its values and spots, which need not be kept."""

    file: str
    source: Source = field(repr=False, compare=False)

    @cached_property
    def values(self) -> dict[str, Value]:
        """What stands in the file."""
        return self.source.values()

    def holds(self, sign: str) -> bool:
        """Whether a sign may stand somewhere in the file: a quick no spares a walk through all its values."""
        return self.source.holds(sign)

    @cached_property
    def spots(self) -> dict[str, Spot]:
        """The spot of each value, found when first asked for: in a file without a mistake nobody asks."""
        return self.source.spots()


@dataclass(frozen=True)
class Entry:
    """One described thing: a machine with all its files, or a shared part with its one."""

    kind: str
    slug: str
    documents: tuple[Document, ...]
    holders: dict[str, Document] = field(repr=False)
    """Which document holds a top-level key."""

    @cached_property
    def values(self) -> dict[str, Value]:
        """What stands in all its files."""
        return {key: holder.values[key] for key, holder in self.holders.items()}

    def let_go(self) -> None:
        """Forget values and spots; whoever asks for them later has them found again."""
        for holder in (self, *self.documents):
            for name in ("values", "spots"):
                holder.__dict__.pop(name, None)
        for document in self.documents:
            document.source.pack()

    def forget(self) -> None:
        """Forget what stands in its files for good; their names are kept."""
        self.let_go()
        for document in self.documents:
            document.source.forget()

    def place(self, path: Iterable[str | int]) -> Place:
        """Where the value at a path stands; where there is none, the nearest thing around it that is there."""
        document, spot = self._spot(path)
        return Place(file=document.file, line=spot.line, column=spot.column) if spot else self.file_place()

    def place_within(self, path: Iterable[str | int], words: str) -> Place:
        """Where words stand in the text at a path, which may run over several lines; else where the text begins."""
        document, spot = self._spot(path)
        if spot is None:
            return self.file_place()
        lines = document.source.lines()[spot.line - 1 :]
        key = spot.key_column or spot.column
        for number, line in enumerate(lines):
            if number and line.strip() and len(line) - len(line.lstrip()) < key:
                break
            column = line.find(words, 0 if number else spot.column - 1)
            if number and column >= 0:
                return Place(file=document.file, line=spot.line + number, column=column + 1)
            if column >= 0:
                break
        return Place(file=document.file, line=spot.line, column=spot.column)

    def key_place(self, path: Iterable[str | int]) -> Place:
        """Where the key of the value at a path stands; for an item of a list, the item itself."""
        document, spot = self._spot(path)
        if spot is None:
            return self.file_place()
        if spot.key_line:
            return Place(file=document.file, line=spot.key_line, column=spot.key_column)
        return Place(file=document.file, line=spot.line, column=spot.column)

    def file_place(self) -> Place:
        """The file as a whole: of several, the one that holds the thing's name."""
        return Place(file=self.file_of("name"))

    def file_of(self, key: str) -> str:
        """The file that holds a top-level key; where none does the one with the thing's name."""
        return self.holders.get(key, self.holders.get("name", self.documents[0])).file

    def _spot(self, path: Iterable[str | int]) -> tuple[Document, Spot | None]:
        steps = iter(path)
        document = self.holders.get(str(next(steps, "")))
        if document is None:
            return self.documents[0], None
        steps = iter(path)
        spot: Spot | None = None
        inner: dict[str, Spot] | list[Spot] | None = document.spots
        for step in steps:
            found = _inside(inner, step)
            if found is None:
                break
            spot, inner = found, found.inner
        return document, spot


def _inside(inner: dict[str, Spot] | list[Spot] | None, step: str | int) -> Spot | None:
    if isinstance(inner, dict):
        return inner.get(step) if isinstance(step, str) else None
    if isinstance(inner, list) and isinstance(step, int) and 0 <= step < len(inner):
        spot: Spot = inner[step]
        return spot
    return None


@dataclass(frozen=True, slots=True)
class Reading:
    """All that stands in a folder of data: things by kind and slug, and what was wrong in reading them.

    `broken` names things with a file that could not be read whole: what they seem to lack may stand in it. `owners`
    gives the thing that each file describes, or would if it could be read.
    """

    entries: dict[tuple[str, str], Entry]
    mistakes: list[Mistake]
    broken: frozenset[tuple[str, str]]
    owners: dict[str, tuple[str, str]]
