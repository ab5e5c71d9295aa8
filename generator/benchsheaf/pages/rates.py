"""Rates of clocks and pictures in words, and what a display makes of them."""

from decimal import Decimal

from benchsheaf.compute.video import LockFigures
from benchsheaf.model.displays import Display
from benchsheaf.model.signals import Mode
from benchsheaf.pages.printing import quantity

NO_BREAK = "\u00a0"


def rate_words(rate_hz: Decimal) -> str:
    """A rate to three places of its prefix; one less where the third is a nought."""
    exact = quantity(rate_hz, "Hz", 3)
    return quantity(rate_hz, "Hz", 2) if exact.partition(NO_BREAK)[0].endswith("0") else exact


def clock_words(rate_hz: Decimal | None) -> str:
    """A clock's rate: three places under a prefix, none of a whole number of hertz."""
    if rate_hz is None:
        return "not known"
    whole = rate_hz == rate_hz.to_integral_value()
    return quantity(rate_hz, "Hz", 3 if rate_hz >= 1000 else 0 if whole else 2)


def rate_contacts(display: Display) -> str:
    """Where the two rates are measured: the contacts of the picture plug that carry them."""
    told = [f"{pin.signal} at contact {pin.pin}" for pin in display.plug if pin.signal in ("line", "frame")]
    return " and ".join(told)


def lock_words(lock: LockFigures) -> str:
    """Whether a display can lock, in words: never a plain yes, for the levels are not known."""
    if lock.rates_fit:
        return "rates fit; levels not known"
    sides = (("line rate", lock.line), ("frame rate", lock.frame))
    told = [f"{name} too {'low' if found == 'below' else 'high'}" for name, found in sides if found != "fits"]
    return f"cannot lock: {', '.join(told)}"


def mode_settings(mode: Mode) -> str:
    """The switches that a mode asks for: `W1 at A`."""
    return ", ".join(f"{each.switch} at {each.to}" for each in mode.set)
