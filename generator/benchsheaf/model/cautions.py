"""The cautions that all machines share."""

from dataclasses import dataclass

from benchsheaf.model.boards import Described
from benchsheaf.model.sources import SourceEntry


@dataclass(frozen=True, kw_only=True, slots=True)
class Caution(Described):
    """A kind of danger, its sign, and the order itself."""

    id: str
    sign: str
    order: str
    says: str


@dataclass(frozen=True, kw_only=True, slots=True)
class CautionHere(Described):
    """A danger of one machine or part, and on which sheets of a machine it must be read."""

    id: str
    caution: str
    order: str
    says: str
    sheets: tuple[str, ...]
    stop: str | None = None
    part: str | None = None


@dataclass(frozen=True, kw_only=True, slots=True)
class Cautions:
    """All shared cautions."""

    slug: str
    cautions: tuple[Caution, ...]
    sources: tuple[SourceEntry, ...] = ()
