"""Figures in the words that pictures carry: rounded the way that their field says, with as few digits as they need."""

from dataclasses import fields
from decimal import Decimal
from typing import Any

from benchsheaf.quantities import LONG, ROUNDINGS, printed

SPACE = "\u00a0"


def told(record: Any, name: str, unit: str, most: int = 3, least: int = 0) -> str:
    """A figure of a record in the unit itself: at most so many places, ending noughts left out down to the least.

    Errors: StopIteration if the record has no such field; that is a bug of ours.
    """
    rounds = next(each for each in fields(record) if each.name == name).metadata.get("rounds", "half")
    value = Decimal(getattr(record, name)) * (100 if unit == "%" else 1)
    number = f"{value.quantize(Decimal(1).scaleb(-most), ROUNDINGS[rounds], LONG):,f}"
    whole, point, places = number.partition(".")
    kept = places[:least] + places[least:].rstrip("0")
    return f"{whole}{point if kept else ''}{kept}{SPACE}{unit}".replace("-", "−")


def rail_name(name: str) -> str:
    """A rail's name with a true minus, held together."""
    return name.replace("-", "−").replace(" ", SPACE)


def as_written(value: Decimal, unit: str) -> str:
    """A fact with the digits that its paper has."""
    return printed(value, unit)
