"""Plugs, contact by contact, and what can be set: switches and jumpers."""

from dataclasses import dataclass

from benchsheaf.model.boards import Described, Pin


@dataclass(frozen=True, kw_only=True, slots=True)
class ContactRow(Described):
    """A row of contacts."""

    id: str
    pins: tuple[Pin, ...]


@dataclass(frozen=True, kw_only=True, slots=True)
class Connector(Described):
    """A plug that a meter meets."""

    id: str
    name: str
    seen: str | None = None
    rows: tuple[ContactRow, ...] = ()
    part: str | None = None


@dataclass(frozen=True, kw_only=True, slots=True)
class Position(Described):
    """One place where a switch or jumper can stand."""

    to: str
    means: str | None = None


@dataclass(frozen=True, kw_only=True, slots=True)
class Switch(Described):
    """One way of a switch block, or a jumper."""

    switch: str
    part: str
    does: str
    positions: tuple[Position, ...]
    as_delivered: str
    read_at: str | None = None
    bit: int | None = None
    reads_one: str | None = None
