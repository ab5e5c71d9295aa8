"""Work at the bench: taking apart, checking, finding, fixing, and writing it down."""

from dataclasses import dataclass
from decimal import Decimal

from benchsheaf.model.boards import Described
from benchsheaf.model.sources import SourceEntry


@dataclass(frozen=True, kw_only=True, slots=True)
class Removal(Described):
    """Something that comes off, and after what."""

    id: str
    name: str
    off_minutes: Decimal
    fasteners: str
    on_minutes: Decimal | None = None
    after: tuple[str, ...] = ()
    frees: tuple[str, ...] = ()


@dataclass(frozen=True, kw_only=True, slots=True)
class Outcome(Described):
    """One answer to a check."""

    id: str
    says: str
    condition: str | None = None
    stop: bool | None = None
    duty: str | None = None
    beep: str | None = None
    messages: tuple[str, ...] = ()
    advice: str | None = None


@dataclass(frozen=True, kw_only=True, slots=True)
class Reading(Described):
    """A figure that a check writes down."""

    id: str
    of: str
    limit: str
    low_shows: str | None = None


@dataclass(frozen=True, kw_only=True, slots=True)
class Check(Described):
    """A question that a meter or an eye can answer."""

    id: str
    name: str
    ask: str
    power: str
    takes_minutes: Decimal
    outcomes: tuple[Outcome, ...]
    by: str | None = None
    tool: str | None = None
    waits_minutes: Decimal | None = None
    removed: tuple[str, ...] = ()
    after: tuple[str, ...] = ()
    means_after: tuple[str, ...] = ()
    after_stage: tuple[str, ...] = ()
    means_after_stage: tuple[str, ...] = ()
    proves: str | None = None
    unreached: str | None = None
    fitted: str | None = None
    at: str | None = None
    readings: tuple[Reading, ...] = ()
    undo: bool | None = None
    solder: bool | None = None
    note: str | None = None


@dataclass(frozen=True, kw_only=True, slots=True)
class Shows(Described):
    """What a fault does to one check."""

    check: str
    outcome: str
    likelihood_share: Decimal | None = None


@dataclass(frozen=True, kw_only=True, slots=True)
class Fix(Described):
    """What is done about a fault."""

    takes_minutes: Decimal
    do: str
    waits_minutes: Decimal | None = None
    solder: bool | None = None
    undo: bool | None = None
    procedures: tuple[str, ...] = ()


@dataclass(frozen=True, kw_only=True, slots=True)
class Fault(Described):
    """Something that can be wrong."""

    id: str
    name: str
    weight: int
    confirm: str
    fix: Fix
    proof: str
    parts: tuple[str, ...] = ()
    shows: tuple[Shows, ...] = ()
    first_sign: str | None = None


@dataclass(frozen=True, kw_only=True, slots=True)
class ShowsHere(Described):
    """A fault of something held, at the checks of the machine that holds it."""

    fault: str
    shows: tuple[Shows, ...]
    weight: int | None = None


@dataclass(frozen=True, kw_only=True, slots=True)
class Known(Described):
    """What a complaint proves by itself."""

    check: str
    outcome: str


@dataclass(frozen=True, kw_only=True, slots=True)
class Symptom(Described):
    """A complaint in an owner's words."""

    id: str
    says: str
    suspects: tuple[str, ...]
    known: tuple[Known, ...] = ()
    sure_share: Decimal | None = None
    may_try: bool | None = None


@dataclass(frozen=True, kw_only=True, slots=True)
class ProcedureStep(Described):
    """One step of a procedure."""

    do: str
    expect: str | None = None
    stop: str | None = None
    parts: tuple[str, ...] = ()


@dataclass(frozen=True, kw_only=True, slots=True)
class Procedure(Described):
    """Work that is done step by step."""

    id: str
    name: str
    why: str
    steps: tuple[ProcedureStep, ...]
    cautions: tuple[str, ...] = ()
    removed: tuple[str, ...] = ()
    takes_minutes: Decimal | None = None
    undo: bool | None = None


@dataclass(frozen=True, kw_only=True, slots=True)
class ReadingTaken(Described):
    """A reading as it was written down."""

    reading: str
    was: str


@dataclass(frozen=True, kw_only=True, slots=True)
class Entry(Described):
    """One check as it was done on one machine."""

    round: int
    check: str
    outcome: str
    readings: tuple[ReadingTaken, ...] = ()
    noted: str | None = None


@dataclass(frozen=True, kw_only=True, slots=True)
class Repair:
    """One repair as it was written down; the slug is MACHINE/NAME."""

    slug: str
    date: str
    owner: str
    symptom: str
    entries: tuple[Entry, ...]
    found: tuple[str, ...]
    took_minutes: Decimal
    told: str
    tried: tuple[str, ...] = ()
    waited_minutes: Decimal | None = None
    sources: tuple[SourceEntry, ...] = ()

    @property
    def machine(self) -> str:
        """The slug of the machine that was repaired."""
        return self.slug.partition("/")[0]
