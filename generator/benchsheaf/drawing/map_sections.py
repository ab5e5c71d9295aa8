"""A memory map cut into stretches: what answers in each, and which areas must stand side by side."""

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from benchsheaf.compute.memory_map import AreaFigures, MapFigures


@dataclass(frozen=True, kw_only=True, slots=True)
class Section:
    """A stretch of addresses in which the same areas answer; none of them: a gap."""

    first: int
    last: int
    holders: tuple[int, ...]  # by their place in the list of areas
    is_beyond: bool

    @property
    def size(self) -> int:
        """Bytes."""
        return self.last - self.first + 1

    @property
    def is_wrong(self) -> bool:
        """Whether two claim it, or the machine has no such address."""
        return len(self.holders) > 1 or self.is_beyond


@dataclass(frozen=True, kw_only=True, slots=True)
class Lane:
    """Which column of how many an area has, so that those that meet stand side by side."""

    column: int
    columns: int


def sections(figures: MapFigures) -> tuple[Section, ...]:
    """The whole map from the first address to the last, and what lies beyond."""
    end = int(figures.last, 16) + 1
    edges = {0, end}
    for area in figures.areas:
        edges |= {int(area.first, 16), int(area.last, 16) + 1}
    ordered = sorted(edges)
    found = []
    for first, after in pairwise(ordered):
        holders = tuple(
            number
            for number, area in enumerate(figures.areas)
            if int(area.first, 16) <= first and int(area.last, 16) + 1 >= after
        )
        if holders or first < end:
            found.append(Section(first=first, last=after - 1, holders=holders, is_beyond=first >= end))
    return tuple(found)


def lanes(areas: Sequence[AreaFigures]) -> tuple[Lane, ...]:
    """A column for each area; areas come in order of address."""
    columns: list[int] = []
    groups: list[list[int]] = []
    reach = -1
    for number, area in enumerate(areas):
        first, last = int(area.first, 16), int(area.last, 16)
        if first > reach:
            groups.append([])
        group = groups[-1]
        taken = {columns[other] for other in group if int(areas[other].last, 16) >= first}
        columns.append(next(column for column in range(len(group) + 1) if column not in taken))
        group.append(number)
        reach = max(reach, last)
    most = {number: max(columns[other] for other in group) + 1 for group in groups for number in group}
    return tuple(Lane(column=column, columns=most[number]) for number, column in enumerate(columns))
