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
class Cautions:
    """All shared cautions."""

    slug: str
    cautions: tuple[Caution, ...]
    sources: tuple[SourceEntry, ...] = ()
