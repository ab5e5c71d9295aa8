"""Formulas that two subjects need."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import field
from decimal import Decimal
from functools import lru_cache
from math import exp, log
from typing import Any

from benchsheaf.standards import E24


def rounded_up() -> Any:
    """A figure that a page may only round up, such as a wait or a load."""
    return field(metadata={"rounds": "up"})


def rounded_down() -> Any:
    """A figure that a page may only round down, such as headroom."""
    return field(metadata={"rounds": "down"})


def twelve(value: Decimal | float) -> Decimal:
    """A figure to twelve significant digits, so that it is the same on every machine.

    Errors: none; the sign and the unit stay as they are.
    """
    return _as_number(f"{value:.12g}")


@lru_cache(maxsize=1 << 12)  # the outfits of a machine have most of their figures in common
def _as_number(text: str) -> Decimal:
    number = Decimal(text)
    return number.normalize() if number else Decimal(0)


def seconds_to_fall(capacitance_f: Decimal, bleeder_ohm: Decimal, from_v: Decimal, to_v: Decimal) -> Decimal:
    """Time in which a bled capacitor falls from one voltage to another; 0 if it is there already.

    Units: farad, ohm, volt in; second out.
    Errors: ValueError if a voltage is not above zero.
    Source: definition of the time constant, t = R C ln(V1 / V2).
    """
    if from_v <= 0 or to_v <= 0:
        raise ValueError(f"voltages must be above zero, not {from_v} and {to_v}")
    return twelve(max(0.0, float(bleeder_ohm * capacitance_f) * log(float(from_v / to_v))))


def volts_after(capacitance_f: Decimal, bleeder_ohm: Decimal, from_v: Decimal, seconds: Decimal) -> Decimal:
    """What a bled capacitor still holds after a time.

    Units: farad, ohm, volt, second in; volt out.
    Errors: ZeroDivisionError if capacitance or resistance is zero.
    Source: definition of the time constant, V = V0 e^(-t / R C).
    """
    return twelve(float(from_v) * exp(-float(seconds / (bleeder_ohm * capacitance_f))))


def stored_energy(capacitance_f: Decimal, charged_v: Decimal) -> Decimal:
    """Energy in a charged capacitor.

    Units: farad, volt in; joule out.
    Source: E = C V² / 2.
    """
    return twelve(capacitance_f * charged_v**2 / 2)


def heat(across_v: Decimal, resistance_ohm: Decimal) -> Decimal:
    """Power that a resistor turns into heat.

    Units: volt, ohm in; watt out.
    Errors: ZeroDivisionError for no resistance.
    Source: P = V² / R.
    """
    return twelve(across_v**2 / resistance_ohm)


def standard_at_most(resistance_ohm: Decimal) -> Decimal:
    """The largest preferred value of the E24 series that is not above a resistance.

    Units: ohm in and out.
    Errors: ValueError unless the resistance is above zero.
    Source: IEC 60063.
    """
    if resistance_ohm <= 0:
        raise ValueError(f"a resistance must be above zero, not {resistance_ohm}")
    decade = resistance_ohm.adjusted() - 1
    steps = (Decimal(step).scaleb(exponent) for exponent in (decade - 1, decade) for step in E24)
    return max(step for step in steps if step <= resistance_ohm)


def standard_at_least(wanted: Decimal, series: Sequence[int]) -> Decimal:
    """The smallest value of a series that is not under a value; the series has two digits, its first is 10.

    Errors: ValueError unless the value is above zero. Source: IEC 60063.
    """
    if wanted <= 0:
        raise ValueError(f"a value must be above zero, not {wanted}")
    decade = wanted.adjusted() - 1
    return next(step for step in (Decimal(each).scaleb(decade) for each in (*series, 100)) if step >= wanted)


def smallest_at_least(wanted: Decimal, offered: Iterable[Decimal]) -> Decimal | None:
    """The smallest of what is offered that is enough; None where nothing is."""
    return min((each for each in offered if each >= wanted), default=None)


def all_before(names: Iterable[str], after: Mapping[str, Sequence[str]]) -> tuple[str, ...]:
    """Some names with all that must come before them, and before that, in the order in which `after` has them.

    `after` says of each name what must come directly before it.
    Errors: KeyError if something is named that `after` does not know.
    """
    found: set[str] = set()
    waiting = list(names)
    while waiting:
        name = waiting.pop()
        if name not in found:
            found.add(name)
            waiting += after[name]
    return tuple(name for name in after if name in found)


def stable_order(names: Sequence[str], after: Mapping[str, Sequence[str]]) -> tuple[str, ...]:
    """Names in their own order as far as nothing stands before what must come first; names outside are no matter.

    Errors: ValueError if some wait for each other in a circle.
    """
    left = list(dict.fromkeys(names))
    inside = set(left)
    ordered: dict[str, None] = {}
    while left:
        free = next((each for each in left if all(need in ordered for need in after[each] if need in inside)), None)
        if free is None:
            raise ValueError(f"these wait for each other: {', '.join(left)}")
        ordered[free] = None
        left.remove(free)
    return tuple(ordered)
