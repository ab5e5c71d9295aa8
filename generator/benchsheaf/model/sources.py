"""Where facts come from."""

from dataclasses import dataclass


@dataclass(frozen=True, kw_only=True, slots=True)
class SourceEntry:
    """One source: measured, a maker's paper, a standard, or somebody's recollection."""

    id: str
    kind: str
    note: str
    source: str | None = None
