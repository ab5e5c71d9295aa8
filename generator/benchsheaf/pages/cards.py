"""What only cards and buses have: ports, lines, settings, images, sockets, contacts of a slot."""

from collections.abc import Sequence
from dataclasses import dataclass

from benchsheaf.drawing.picture import Both
from benchsheaf.markup import Markup
from benchsheaf.model.cards import Bus, Card
from benchsheaf.model.memory import Setting
from benchsheaf.pages.contacts import ContactTable, SocketView, contact_picture, contact_tables, socket_view
from benchsheaf.pages.decoding import LineRow, PortRow, card_line_rows, line_row, port_rows
from benchsheaf.pages.firmware import CoverageRow, ImageView, coverage_rows, image_views
from benchsheaf.pages.settings import SwitchRow, switch_rows
from benchsheaf.pages.shelf import Desk


@dataclass(frozen=True, kw_only=True, slots=True)
class ByRow:
    """Lines that a card uses only while its switches stand in some way."""

    settings: Sequence[Setting]
    lines: Sequence[str]


@dataclass(frozen=True, kw_only=True, slots=True)
class CardView:
    """A card as delivered, by itself."""

    ports: Sequence[PortRow]
    lines: Sequence[LineRow]
    by_setting: Sequence[ByRow]
    switches: Sequence[SwitchRow]
    images: Sequence[ImageView]
    coverage: Sequence[CoverageRow]
    sockets: Sequence[SocketView]


@dataclass(frozen=True, kw_only=True, slots=True)
class BusView:
    """A bus: its contacts as picture and in short, its lines and the cards that use them."""

    bus: Bus
    last_port: str | None
    drawing: Both | None
    rows: Sequence[ContactTable]
    lines: Sequence[LineRow]


def card_view(desk: Desk, card: Card) -> CardView:
    """What the page of a card says beside what all things say."""
    workup = desk.shelf.workup.cards[card.slug]
    prefix = f"{card.slug}/"
    return CardView(
        ports=port_rows(desk, workup.ports, owners=False),
        lines=card_line_rows(desk, card, workup.lines),
        by_setting=[
            ByRow(settings=each.set, lines=[f"{use.line}, {use.name}" for use in each.lines])
            for each in card.by_setting
        ],
        switches=switch_rows(desk, card.switches, prefix, "setting-"),
        images=image_views(desk, card.firmware, prefix, brief=True),
        coverage=list(coverage_rows(desk, card.areas, workup.coverage, card.firmware, prefix, brief=True)),
        sockets=[socket_view(desk, each, prefix) for each in card.sockets],
    )


def bus_view(desk: Desk, bus: Bus) -> BusView:
    """What the page of a bus says beside what all things say."""
    users: dict[str, list[Markup | str]] = {each.line: [] for each in bus.lines}
    for machine in desk.shelf.collection.machines.values():
        for use in machine.lines if machine.bus == bus.slug else ():
            way = desk.sheet("slots", "lines", machine.slug) if machine.slots else desk.thing("machine", machine.slug)
            users[use.line].append(_user(use.name, way, machine.name))
    for card in desk.shelf.collection.cards.values():
        for use in desk.shelf.workup.cards[card.slug].lines if card.bus == bus.slug else ():
            users[use.line].append(_user(use.name, desk.thing("card", card.slug), card.name))
    return BusView(
        bus=bus,
        last_port=f"P{bus.ports - 1:03X}" if bus.ports else None,
        drawing=contact_picture(desk, bus.rows, bus.seen, "slot"),
        rows=contact_tables(bus.rows),
        lines=[line_row(each, bus, users[each.line]) for each in bus.lines],
    )


def _user(name: str, way: str, plate: str) -> Markup:
    return Markup('{}, <a class="plate" href="{}">{}</a>').format(name, way, plate)
