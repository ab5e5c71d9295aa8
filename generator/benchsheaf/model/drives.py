"""Drives: their geometry, how they turn, and what may be done to them."""

from dataclasses import dataclass
from decimal import Decimal

from benchsheaf.model.bench import Check, Fault, Procedure
from benchsheaf.model.boards import Box, Described, Draw, Extent, Pin, Point, WeakPart
from benchsheaf.model.cautions import CautionHere
from benchsheaf.model.sources import SourceEntry


@dataclass(frozen=True, kw_only=True, slots=True)
class Geometry(Described):
    """Cylinders, heads and sectors as formatted."""

    cylinders: int
    heads: int
    sectors: int
    sector_bytes: int


@dataclass(frozen=True, kw_only=True, slots=True)
class LowLevelFormat(Described):
    """How a low-level format goes over the tracks."""

    turns: int
    step_s: Decimal


@dataclass(frozen=True, kw_only=True, slots=True)
class Acceptance(Described):
    """How many flaws are still accepted, cylinder 0 clean."""

    flawed_tracks: int


@dataclass(frozen=True, kw_only=True, slots=True)
class Volume(Described):
    """How sectors of a drive are laid out for files: tables of clusters, a root directory, data."""

    name: str
    hidden: int
    reserved: int
    tables: int
    roots: int
    cluster: int
    media: str
    flaw_block: int | None = None
    flaw_list: str | None = None


@dataclass(frozen=True, kw_only=True, slots=True)
class Flaw(Described):
    """One flawed sector: cylinder and head from 0, sector from 1."""

    cylinder: int
    head: int
    sector: int


@dataclass(frozen=True, kw_only=True, slots=True)
class FlawRun(Described):
    """What one format found: each flaw, or only how many there were."""

    id: str
    name: str
    sectors: int | None = None
    tracks: int | None = None
    flaws: tuple[Flaw, ...] = ()


@dataclass(frozen=True, kw_only=True, slots=True)
class FlawList(Described):
    """The runs of one drive, oldest first."""

    id: str
    name: str
    note: str | None = None
    runs: tuple[FlawRun, ...]


@dataclass(frozen=True, kw_only=True, slots=True)
class DrivePart(Described):
    """A part of a drive that a repair meets."""

    ref: str
    name: str
    at: Point | None = None
    body: Extent | None = None
    resistance_ohm: Decimal | None = None
    note: str | None = None


@dataclass(frozen=True, kw_only=True, slots=True)
class Drive:
    """A drive."""

    slug: str
    name: str
    summary: str
    kind: str
    geometry: Geometry
    turns_rpm: Decimal
    rate_bits_per_s: Decimal
    draws: tuple[Draw, ...]
    cautions: tuple[CautionHere, ...] = ()
    sources: tuple[SourceEntry, ...] = ()
    body: Box | None = None
    step_s: Decimal | None = None
    park: int | None = None
    parks_by: str | None = None
    ready_in_s: Decimal | None = None
    interleave: int | None = None
    format: LowLevelFormat | None = None
    accept: Acceptance | None = None
    volumes: tuple[Volume, ...] = ()
    flaw_lists: tuple[FlawList, ...] = ()
    plug: tuple[Pin, ...] = ()
    seen: str | None = None
    parts: tuple[DrivePart, ...] = ()
    weak_parts: tuple[WeakPart, ...] = ()
    checks: tuple[Check, ...] = ()
    faults: tuple[Fault, ...] = ()
    procedures: tuple[Procedure, ...] = ()
