"""In which column and row each removal of the graph stands, and where arrows pass through."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import NamedTuple


class Cell(NamedTuple):
    """A place in a column: the step `number` itself, or room for its arrow to `target` to pass through."""

    column: int
    number: int
    target: int | None = None


@dataclass(frozen=True, kw_only=True, slots=True)
class Grid:
    """Columns from left to right, and the pairs of cells in neighbouring ones that a line joins."""

    columns: tuple[tuple[Cell, ...], ...]
    joined: tuple[tuple[Cell, Cell], ...]


def grid(after: Sequence[Sequence[int]]) -> Grid:
    """Cells for steps 1, 2, 3 and so on, each with the numbers of the steps directly before it, all of them smaller."""
    column: dict[int, int] = {}
    for number, before in enumerate(after, 1):
        column[number] = max((column[each] + 1 for each in before), default=0)
    joined: list[tuple[Cell, Cell]] = []
    for number, before in enumerate(after, 1):
        for first in before:
            through = [Cell(place, first, number) for place in range(column[first] + 1, column[number])]
            chain = [Cell(column[first], first), *through, Cell(column[number], number)]
            joined += pairwise(chain)
    cells = [Cell(column[number], number) for number in column] + [one for one, _ in joined if one.target is not None]
    return Grid(columns=_ordered(cells, joined), joined=tuple(joined))


def _ordered(cells: Sequence[Cell], joined: Sequence[tuple[Cell, Cell]]) -> tuple[tuple[Cell, ...], ...]:
    """Each column in the order of the middle of what leads to it, so that few lines cross."""
    columns: list[tuple[Cell, ...]] = []
    places: dict[Cell, int] = {}
    for number in range(max((cell.column for cell in cells), default=-1) + 1):
        own = [cell for cell in cells if cell.column == number]
        middle = {cell: _middle([places[one] for one, other in joined if other == cell]) for cell in own}
        column = tuple(sorted(own, key=lambda cell: (middle[cell], cell.number, cell.target or 0)))
        places |= {cell: place for place, cell in enumerate(column)}
        columns.append(column)
    return tuple(columns)


def _middle(places: Sequence[int]) -> float:
    return sum(places) / len(places) if places else 0.0


def directly(after: Mapping[str, Sequence[str]], ways: Mapping[str, Sequence[str]]) -> dict[str, tuple[str, ...]]:
    """What comes directly before each name: without what has to be off already for another of them.

    `ways` has for each name all that comes before it, itself included.
    """
    return {
        name: tuple(one for one in before if not any(one in ways[other] for other in before if other != one))
        for name, before in after.items()
    }
