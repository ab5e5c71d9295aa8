"""Scales: a decade axis for resistances, and steps that a person would choose for even ones."""

from collections.abc import Iterable
from dataclasses import dataclass
from decimal import Decimal
from math import log10


@dataclass(frozen=True, slots=True)
class Decades:
    """A scale on which each decade is as wide as the next; bounds are powers of ten."""

    lowest: int
    highest: int
    left: float
    right: float

    def at(self, value: Decimal) -> float:
        """Where a value stands; what lies beyond an end stands at it."""
        if value <= 0:
            return self.left
        share = (log10(value) - self.lowest) / (self.highest - self.lowest)
        return round(self.left + min(max(share, 0.0), 1.0) * (self.right - self.left), 6)

    def powers(self) -> range:
        """The powers of ten from end to end."""
        return range(self.lowest, self.highest + 1)


def decades(values: Iterable[Decimal], lowest: int, highest: int, left: float, right: float) -> Decades:
    """A scale over given powers of ten, widened by whole decades until every value lies on it."""
    for value in values:
        if value > 0:
            lowest = min(lowest, value.adjusted())
            highest = max(highest, value.adjusted() + (value != Decimal(1).scaleb(value.adjusted())))
    return Decades(lowest, highest, left, right)


def even_step(extent: float, most: int) -> float:
    """A step of 1, 2 or 5 times a power of ten that goes into an extent at most so many times."""
    step = Decimal(1).scaleb(-6)
    while True:
        for factor in (1, 2, 5):
            if float(step * factor) * most >= extent:
                return float(step * factor)
        step *= 10
