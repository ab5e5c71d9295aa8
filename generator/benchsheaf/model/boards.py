"""Boards, the parts on them, what they draw and which of them are weak."""

from dataclasses import dataclass
from decimal import Decimal


@dataclass(frozen=True, kw_only=True, slots=True)
class Described:
    """Anything written in a description may say where it is from."""

    source: str | None = None


@dataclass(frozen=True, kw_only=True, slots=True)
class Point(Described):
    """A spot on a board, from the left and the back edge."""

    x_mm: Decimal
    y_mm: Decimal


@dataclass(frozen=True, kw_only=True, slots=True)
class Extent(Described):
    """How large something is on a board."""

    x_mm: Decimal
    y_mm: Decimal


@dataclass(frozen=True, kw_only=True, slots=True)
class Box(Described):
    """How large a body is."""

    x_mm: Decimal
    y_mm: Decimal
    z_mm: Decimal


@dataclass(frozen=True, kw_only=True, slots=True)
class Volts(Described):
    """A range of voltage; a minus counts."""

    low_v: Decimal
    high_v: Decimal


@dataclass(frozen=True, kw_only=True, slots=True)
class Ohms(Described):
    """A range of resistance."""

    low_ohm: Decimal
    high_ohm: Decimal


@dataclass(frozen=True, kw_only=True, slots=True)
class Part(Described):
    """One part on a board."""

    ref: str
    kind: str
    at: Point
    body: Extent
    name: str | None = None
    capacitance_f: Decimal | None = None
    resistance_ohm: Decimal | None = None
    frequency_hz: Decimal | None = None
    rated_v: Decimal | None = None
    tan_delta_share: Decimal | None = None
    blows_a: Decimal | None = None
    speed: str | None = None
    bears_w: Decimal | None = None
    across: str | None = None
    legs: int | None = None
    plus: str | None = None
    pins: int | None = None
    holds_bits: int | None = None
    width_bits: int | None = None
    socket: bool | None = None
    note: str | None = None


@dataclass(frozen=True, kw_only=True, slots=True)
class PartRow(Described):
    """Like parts in a row, written once."""

    refs: tuple[str, ...]
    kind: str
    at: Point
    step: Point
    body: Extent
    name: str | None = None
    capacitance_f: Decimal | None = None
    rated_v: Decimal | None = None
    across: str | None = None
    pins: int | None = None
    socket: bool | None = None
    note: str | None = None

    def parts(self) -> tuple[Part, ...]:
        """The parts of the row one by one, each at its own spot."""
        return tuple(self.part(k) for k in range(len(self.refs)))

    def part(self, k: int) -> Part:
        """One part of the row, the first with 0."""
        return Part(
            ref=self.refs[k],
            kind=self.kind,
            at=Point(x_mm=self.at.x_mm + self.step.x_mm * k, y_mm=self.at.y_mm + self.step.y_mm * k),
            body=self.body,
            name=self.name,
            capacitance_f=self.capacitance_f,
            rated_v=self.rated_v,
            across=self.across,
            pins=self.pins,
            socket=self.socket,
            note=self.note,
            source=self.source,
        )


@dataclass(frozen=True, kw_only=True, slots=True)
class Draw(Described):
    """What something takes from one rail."""

    rail: str
    run_a: Decimal
    start_a: Decimal | None = None
    start_for_s: Decimal | None = None
    rest_a: Decimal | None = None
    warm: bool | None = None


@dataclass(frozen=True, kw_only=True, slots=True)
class Fit(Described):
    """What to put in a weak part's place."""

    capacitance_f: Decimal | None = None
    rated_v: Decimal | None = None
    resistance_ohm: Decimal | None = None
    bears_w: Decimal | None = None
    stands_celsius: Decimal | None = None
    kind: str | None = None
    note: str | None = None


@dataclass(frozen=True, kw_only=True, slots=True)
class WeakPart(Described):
    """A part that is known to fail."""

    id: str
    fails: str
    signs: str
    when: str
    part: str | None = None
    what: str | None = None
    also: tuple[str, ...] = ()
    prevalence_share: Decimal | None = None
    stop: str | None = None
    do: str | None = None
    fit: Fit | None = None

    @property
    def parts(self) -> tuple[str, ...]:
        """All parts that it speaks of."""
        return ((self.part,) if self.part else ()) + self.also


@dataclass(frozen=True, kw_only=True, slots=True)
class Pin(Described):
    """One contact of a plug."""

    pin: str
    rail: str | None = None
    signal: str | None = None
    key: bool | None = None
    colour: str | None = None


@dataclass(frozen=True, kw_only=True, slots=True)
class Board(Described):
    """A board that is not a card."""

    id: str
    name: str
    size: Extent
    print: str | None = None
    draws: tuple[Draw, ...] = ()
    parts: tuple[Part, ...] = ()
    rows: tuple[PartRow, ...] = ()

    @property
    def refs(self) -> frozenset[str]:
        """The designators of all its parts, for which no part of a row need be made."""
        return frozenset(part.ref for part in self.parts).union(*(row.refs for row in self.rows))

    def all_parts(self) -> tuple[Part, ...]:
        """Single parts and those of the rows, in the order of the file."""
        return self.parts + tuple(part for row in self.rows for part in row.parts())
