"""What a workshop goes by, whatever the machine."""

from dataclasses import dataclass

from benchsheaf.model.boards import Described
from benchsheaf.model.sources import SourceEntry


@dataclass(frozen=True, kw_only=True, slots=True)
class Fact(Described):
    """One thing that a workshop goes by, and how well it is founded."""

    id: str
    topic: str
    says: str
    mark: str
    seen: str | None = None


@dataclass(frozen=True, kw_only=True, slots=True)
class Practice:
    """All that a workshop goes by."""

    slug: str
    practice: tuple[Fact, ...]
    sources: tuple[SourceEntry, ...] = ()
