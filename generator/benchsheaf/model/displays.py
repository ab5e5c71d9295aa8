"""Displays, media, and the words of the trade."""

from dataclasses import dataclass

from benchsheaf.model.bench import Check, Fault
from benchsheaf.model.boards import Described, Pin
from benchsheaf.model.cautions import CautionHere
from benchsheaf.model.signals import Hertz
from benchsheaf.model.sources import SourceEntry


@dataclass(frozen=True, kw_only=True, slots=True)
class Display:
    """A display and the rates that it locks to."""

    slug: str
    name: str
    summary: str
    line: Hertz
    frame: Hertz
    cautions: tuple[CautionHere, ...] = ()
    sources: tuple[SourceEntry, ...] = ()
    plug: tuple[Pin, ...] = ()
    checks: tuple[Check, ...] = ()
    faults: tuple[Fault, ...] = ()
    wrong_rate: str | None = None


@dataclass(frozen=True, kw_only=True, slots=True)
class Medium:
    """A medium and the drives that take it."""

    slug: str
    name: str
    summary: str
    drives: tuple[str, ...]
    sources: tuple[SourceEntry, ...] = ()
    test_medium: str | None = None
    note: str | None = None


@dataclass(frozen=True, kw_only=True, slots=True)
class Term(Described):
    """A word of the trade."""

    id: str
    term: str
    means: str


@dataclass(frozen=True, kw_only=True, slots=True)
class Terms:
    """All shared words."""

    slug: str
    terms: tuple[Term, ...]
    sources: tuple[SourceEntry, ...] = ()
