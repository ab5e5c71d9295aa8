"""Plugs and slots contact by contact, in print: contacts in a row that carry the same, or count on, are told as one."""

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from benchsheaf.compute.power import PowerFigures
from benchsheaf.drawing.connector import connector
from benchsheaf.drawing.picture import Both
from benchsheaf.markup import Markup
from benchsheaf.model.boards import Pin
from benchsheaf.model.machine import Machine
from benchsheaf.model.plugs import Connector, ContactRow
from benchsheaf.pages.printing import rail_name
from benchsheaf.pages.shelf import Desk

MOST_IN_A_ROW = 40
"""Of longer rows no picture is drawn: its words would be too small to read."""

FEW = 12
"""The words of more contacts than these stay folded on the wide page too, where the picture says them."""


@dataclass(frozen=True, kw_only=True, slots=True)
class ContactRun:
    """Contacts that stand together: `a3–a10`, and what is on them: `D0–D7`; a wire's colour where they have one."""

    pins: str
    on: str
    colour: str | None = None


@dataclass(frozen=True, kw_only=True, slots=True)
class ContactTable:
    """A row of contacts in short."""

    name: str
    runs: Sequence[ContactRun]
    wired: bool


@dataclass(frozen=True, kw_only=True, slots=True)
class SocketView:
    """A plug on a card; without rows its contacts are not known yet."""

    connector: Connector
    part: Markup | None
    drawing: Both | None
    rows: Sequence[ContactTable]
    long: bool


@dataclass(frozen=True, kw_only=True, slots=True)
class PlugRails:
    """The contacts of a plug that carry each rail, and ground last."""

    name: Markup | str
    way: str
    cells: Sequence[str]


def socket_view(desk: Desk, written: Connector, prefix: str = "") -> SocketView:
    """What is known of one plug; `prefix` is SLUG/ for a plug of something held."""
    return SocketView(
        connector=written,
        part=desk.part(prefix + written.part, brief=bool(prefix)) if written.part else None,
        drawing=contact_picture(desk, written.rows, written.seen, f"plug-{written.id}"),
        rows=contact_tables(written.rows),
        long=sum(len(row.pins) for row in written.rows) > FEW,
    )


def slot_words(machine: Machine) -> str:
    """What the slots of a machine are called together: `Slots SL1 to SL5`."""
    names = [each.slot for each in machine.slots]
    return f"Slots {names[0]} to {names[-1]}" if len(names) > 1 else f"Slot {names[0]}"


def contact_picture(desk: Desk, rows: Sequence[ContactRow], seen: str | None, ident: str) -> Both | None:
    """The drawing of a plug, where anything is known of it and it is not too long."""
    if not rows or seen is None or max(len(row.pins) for row in rows) > MOST_IN_A_ROW:
        return None
    return connector(rows, desk.worded(seen), ident)


def contact_tables(rows: Sequence[ContactRow]) -> list[ContactTable]:
    """Each row of contacts in short."""
    return [
        ContactTable(name=row.id, runs=list(_runs(row.pins)), wired=any(pin.colour for pin in row.pins)) for row in rows
    ]


def _runs(pins: Sequence[Pin]) -> Iterator[ContactRun]:
    together: list[Pin] = []
    for pin in pins:
        if together and not _goes_on(together, pin):
            yield _run(together)
            together = []
        together.append(pin)
    if together:
        yield _run(together)


def _goes_on(together: Sequence[Pin], pin: Pin) -> bool:
    """Whether a contact is the next of those before it: its number counts on, what is on it is alike or counts on."""
    last = together[-1]
    if pin.key or last.key or pin.colour != last.colour or not _counts_on(last.pin, pin.pin):
        return False
    if pin.rail or last.rail:
        return pin.rail == last.rail
    alike = together[0].signal == last.signal
    if len(together) > 1 and alike:
        return pin.signal == last.signal
    return (len(together) == 1 and pin.signal == last.signal) or _counts_on(last.signal or "", pin.signal or "")


def _counts_on(before: str, after: str) -> bool:
    """Whether two names have the same letters and numbers in a row: `a3` and `a4`, `D7` and `D8`."""
    one, other = (re.fullmatch(r"(.*?)([0-9]+)", name) for name in (before, after))
    return bool(one and other and one[1] == other[1] and int(other[2]) == int(one[2]) + 1)


def _run(together: Sequence[Pin]) -> ContactRun:
    first, last = together[0], together[-1]
    if first.key:
        on = "no contact (key)"
    elif first.rail:
        on = rail_name(first.rail)
    else:
        on = f"{first.signal}–{last.signal}" if first.signal != last.signal else first.signal or ""
    return ContactRun(pins=_span(first.pin, last.pin), on=on, colour=first.colour)


def _span(first: str, last: str) -> str:
    return first if first == last else f"{first}–{last}"


def plug_rails(desk: Desk, machine: Machine, power: PowerFigures) -> Iterator[PlugRails]:
    """Each plug of the machine, then a slot of its bus."""
    for plug in machine.connectors:
        yield PlugRails(name=plug.part or plug.name, way=f"#plug-{plug.id}", cells=_cells(plug.rows, power))
    bus = desk.shelf.collection.buses[machine.bus] if machine.bus else None
    if bus and bus.rows and machine.slots:
        way = desk.thing("bus", bus.slug, "contacts")
        yield PlugRails(name=slot_words(machine), way=way, cells=_cells(bus.rows, power))


def _cells(rows: Sequence[ContactRow], power: PowerFigures) -> list[str]:
    pins = [pin for row in rows for pin in row.pins]
    cells = [" ".join(pin.pin for pin in pins if pin.rail == rail.rail) for rail in power.rails]
    return [*cells, " ".join(pin.pin for pin in pins if pin.signal == "ground")]
