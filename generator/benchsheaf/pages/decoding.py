"""Slots and cards: what sits where, at which ports each thing answers, on which lines it calls, and what is free."""

import re
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass

from benchsheaf.compute.card_conflicts import LineFigures, PortFigures, PortMapFigures, PortRun, port_number
from benchsheaf.drawing.picture import Both
from benchsheaf.drawing.port_strip import Stretch, port_strip, rows_needed
from benchsheaf.links import Thing
from benchsheaf.markup import Markup
from benchsheaf.model.cards import Bus, Card
from benchsheaf.model.machine import Machine
from benchsheaf.model.signals import BusLine, LineUse
from benchsheaf.pages.glance import sheet_cautions
from benchsheaf.pages.printing import binary
from benchsheaf.pages.shelf import Desk
from benchsheaf.pages.views import CautionView

MOST_COPIES = 6
"""So many runs of copies are told; of more it is said how many there are."""

MOST_ROWS = 24
"""Where a phone would need more rows for all that answers, no picture is drawn: the table says it shorter."""


@dataclass(frozen=True, kw_only=True, slots=True)
class PortRow:
    """Ports in a row: what answers and whose it is, or that they are free."""

    first: str
    last: str
    count: int
    name: str = ""
    free: bool = False
    owner: Markup | None = None
    parts: Sequence[Markup] = ()
    copies: Sequence[PortRun] = ()
    more_copies: int = 0


@dataclass(frozen=True, kw_only=True, slots=True)
class LineRow:
    """A request line or channel: its contacts in a slot, and who uses it."""

    line: str
    kind: str
    shared: bool
    contacts: Sequence[str]
    users: Sequence[Markup | str]


@dataclass(frozen=True, kw_only=True, slots=True)
class SlotRow:
    """One slot and what is in it as delivered."""

    slot: str
    part: Markup
    name: str = ""
    way: str | None = None
    of: Thing | None = None
    summary: str = ""


@dataclass(frozen=True, kw_only=True, slots=True)
class TakesRow:
    """What a card takes of its machine: ports, lines, memory."""

    name: str
    way: str
    slot: str
    ports: Sequence[str]
    lines: Sequence[str]
    memory: Sequence[str]


@dataclass(frozen=True, kw_only=True, slots=True)
class SlotsSheet:
    """The sheet about slots and cards."""

    cautions: Sequence[CautionView]
    bus: str | None
    bus_way: str | None
    contacts_way: str | None
    rows: Sequence[SlotRow]
    filled: int
    takes: Sequence[TakesRow]
    ports: PortMapFigures
    strip: Both | None
    port_rows: Sequence[PortRow]
    lines: Sequence[LineRow]
    free_lines: Sequence[str]
    has_switches: bool


def slots_sheet(desk: Desk, machine: Machine) -> SlotsSheet:
    """What the sheet says, as delivered."""
    workup = desk.shelf.workup.machines[machine.slug].outfits[0]
    bus = desk.shelf.collection.buses[machine.bus] if machine.bus else None
    cards = [(slot.slot, desk.shelf.collection.cards[slot.holds]) for slot in machine.configurations[0].slots]
    return SlotsSheet(
        cautions=sheet_cautions(desk, machine, "slots"),
        bus=bus.name if bus else None,
        bus_way=desk.thing("bus", bus.slug) if bus else None,
        contacts_way=desk.thing("bus", bus.slug, "contacts") if bus and bus.rows else None,
        rows=list(_slot_rows(desk, machine, dict(cards))),
        filled=len(cards),
        takes=[_takes(desk, slot, card, workup.ports, workup.lines) for slot, card in cards],
        ports=workup.ports,
        strip=_strip(workup.ports),
        port_rows=port_rows(desk, workup.ports),
        lines=[_line_row(desk, each, bus) for each in workup.lines],
        free_lines=[each.line for each in workup.lines if not each.users],
        has_switches=any(card.switches for _, card in cards),
    )


def _slot_rows(desk: Desk, machine: Machine, filled: Mapping[str, Card]) -> Iterator[SlotRow]:
    for each in machine.slots:
        card = filled.get(each.slot)
        yield SlotRow(
            slot=each.slot,
            part=desk.part(each.slot),
            name=card.name if card else "",
            way=desk.thing("card", card.slug) if card else None,
            of=("card", card.slug) if card else None,
            summary=card.summary if card else "",
        )


def _takes(desk: Desk, slot: str, card: Card, ports: PortMapFigures, lines: Iterable[LineFigures]) -> TakesRow:
    own = [each for each in ports.answering if each.slot == slot]
    return TakesRow(
        name=card.name,
        way=desk.thing("card", card.slug),
        slot=slot,
        ports=[f"{each.first}–{each.last}" for each in own],
        lines=[line.line for line in lines if any(user.slot == slot for user in line.users)],
        memory=[f"{area.name}, {binary(area.size_bytes)} from {area.base}" for area in card.areas],
    )


def port_rows(desk: Desk, ports: PortMapFigures, *, owners: bool = True) -> list[PortRow]:
    """What answers, and what is free, from the lowest port up; `owners` says whose each is."""
    rows = [_port_row(desk, each, owners) for each in ports.answering]
    rows += [PortRow(first=run.first, last=run.last, count=run.count, free=True) for run in ports.free if owners]
    return sorted(rows, key=lambda row: (port_number(row.first), port_number(row.last)))


def _port_row(desk: Desk, each: PortFigures, owners: bool) -> PortRow:
    prefix = f"{each.card}/" if each.card else ""
    return PortRow(
        first=each.first,
        last=each.last,
        count=each.count,
        name=each.name,
        owner=_card_link(desk, each.card) if each.card and owners else None,
        parts=[desk.part(prefix + name, brief=True) for name in each.parts],
        copies=each.copies[:MOST_COPIES],
        more_copies=len(each.copies[MOST_COPIES:]),
    )


def _card_link(desk: Desk, slug: str) -> Markup:
    return Markup('<a class="plate" href="{}">{}</a>').format(
        desk.thing("card", slug), desk.shelf.name_of("card", slug)
    )


def _strip(ports: PortMapFigures) -> Both | None:
    stretches: list[Stretch] = []
    for each in ports.answering:
        stretches.append(Stretch(first=port_number(each.first), last=port_number(each.last), name=each.name))
        stretches += [
            Stretch(first=port_number(run.first), last=port_number(run.last), name=each.name, copy=True)
            for run in each.copies[:MOST_COPIES]
        ]
    if not stretches or rows_needed(stretches) > MOST_ROWS:
        return None
    stretches.sort(key=lambda each: each.first)
    last = port_number(ports.last) if ports.last else None
    return port_strip(stretches, last, len(ports.answering[0].first) - 1, "ports")


def _line_row(desk: Desk, line: LineFigures, bus: Bus | None) -> LineRow:
    users: list[Markup | str] = [
        Markup("{}, {}").format(user.name, _card_link(desk, user.card)) if user.card else f"{user.name}, main board"
        for user in line.users
    ]
    written = BusLine(line=line.line, kind=line.kind, shared=line.shared)
    return line_row(written, bus, users)


def line_row(line: BusLine, bus: Bus | None, users: Sequence[Markup | str]) -> LineRow:
    """A line with its contacts: those that carry its name, for a channel the name behind ASK, GRANT and the like."""
    wanted = re.compile(rf"([A-Z]*){re.escape(line.line)}" if line.kind == "channel" else re.escape(line.line))
    pins = [pin for row in (bus.rows if bus else ()) for pin in row.pins]
    return LineRow(
        line=line.line,
        kind=line.kind,
        shared=line.shared,
        contacts=[pin.pin for pin in pins if pin.signal and wanted.fullmatch(pin.signal)],
        users=users,
    )


def card_line_rows(desk: Desk, card: Card, uses: Sequence[LineUse]) -> list[LineRow]:
    """The lines that a card uses as delivered, with what the bus says of them."""
    bus = desk.shelf.collection.buses[card.bus]
    return [line_row(line, bus, [use.name]) for line in bus.lines for use in uses if line.line == use.line]
