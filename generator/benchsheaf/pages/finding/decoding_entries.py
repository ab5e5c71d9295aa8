"""What can be found of ports, lines, images and contacts: on a machine's sheets, on cards and on buses."""

from collections.abc import Iterable, Iterator

from benchsheaf.model.cards import Bus, Card
from benchsheaf.model.machine import Machine
from benchsheaf.model.plugs import ContactRow, Switch
from benchsheaf.model.signals import Image, LineUse
from benchsheaf.pages.finding.board_parts import Place
from benchsheaf.pages.finding.entry import Entry
from benchsheaf.pages.printing import anchor, rail_name, words
from benchsheaf.pages.sheets import SHEETS
from benchsheaf.pages.shelf import Desk

TITLES = {sheet.name: sheet.title for sheet in SHEETS}


def decoding_entries(desk: Desk, machine: Machine) -> Iterator[Entry]:
    """Ports, lines and images of the machine's own boards, and the values that its switches give."""
    workup = desk.shelf.workup.machines[machine.slug].outfits[0]
    if machine.slots:
        place = _sheet(desk, machine, "slots")
        for each in workup.ports.answering:
            if each.card is None:
                yield place.entry("Port", each.name, "ports", f"Ports {each.first}–{each.last}", *each.parts)
        for use in machine.lines:
            yield _line(place, use)
        for line in workup.lines:
            if not line.users:
                yield place.entry("Line", f"{line.line}, free", "lines", f"{line.line} is free as delivered")
    for read in workup.switches:
        text = f"The switches read {read.value} as delivered"
        fragment = f"read-{read.port}"
        yield _sheet(desk, machine, "switches").entry("Port", f"What is read at {read.port}", fragment, text)
    if machine.firmware:
        yield from _images(_sheet(desk, machine, "firmware"), machine.firmware)


def card_entries(desk: Desk, place: Place, card: Card) -> Iterator[Entry]:
    """Ports, lines, settings, images and plugs of a card."""
    workup = desk.shelf.workup.cards[card.slug]
    for each in workup.ports.answering:
        yield place.entry("Port", each.name, "ports", f"Ports {each.first}–{each.last}", *each.parts)
    for use in workup.lines:
        yield _line(place, use, "ports")
    for switch in card.switches:
        yield _switch(place, switch)
    yield from _images(place, card.firmware)
    for socket in card.sockets:
        title = f"{socket.name} {socket.part}" if socket.part else socket.name
        yield place.entry("Plug", title, f"plug-{socket.id}", contact_words(socket.rows))


def bus_entries(place: Place, bus: Bus) -> Iterator[Entry]:
    """The contacts and the lines of a bus."""
    if bus.rows:
        yield place.entry("Plug", "Contacts of a slot", "contacts", contact_words(bus.rows))
    for line in bus.lines:
        text = f"{words(line.kind)}, {'may be shared' if line.shared else 'not shared'}"
        yield place.entry("Line", line.line, "lines", text)


def contact_words(rows: Iterable[ContactRow]) -> str:
    """What is on each contact, and the colour of its wire."""
    told = ((pin.pin, rail_name(pin.rail) if pin.rail else pin.signal, pin.colour) for row in rows for pin in row.pins)
    return ", ".join(" ".join(filter(None, (name, on, colour))) for name, on, colour in told if on)


def switch_words(switch: Switch) -> str:
    """What a switch sets, at each of its positions."""
    places = "; ".join(f"{place.to}: {place.means}" if place.means else place.to for place in switch.positions)
    return f"{switch.does}. {places}. As delivered {switch.as_delivered}"


def _sheet(desk: Desk, machine: Machine, sheet: str) -> Place:
    return Place(
        where=f"{machine.name}, {TITLES[sheet]}",
        way=lambda fragment: desk.sheet(sheet, fragment),
        machines=(machine.slug,),
    )


def _line(place: Place, use: LineUse, fragment: str = "lines") -> Entry:
    return place.entry("Line", f"{use.line}, {use.name}", fragment, f"{use.line} is used for: {use.name}")


def _switch(place: Place, switch: Switch) -> Entry:
    return Entry(
        kind="Switch",
        title=switch.switch,
        where=place.where,
        way=place.way(f"setting-{anchor(switch.switch)}"),
        text=switch_words(switch),
        machines=place.machines,
        designator=True,
    )


def _images(place: Place, images: Iterable[Image]) -> Iterator[Entry]:
    for image in images:
        sums = (("CRC-32", image.crc_32), ("CRC-16", image.crc_16), ("sum of bytes", image.sum_16))
        told = ", ".join(f"{name} {value}" for name, value in sums if value)
        text = f"Mark {image.mark}; {told}" if told else f"Mark {image.mark}"
        yield place.entry("Firmware", f"{image.part}, {image.mark}", f"image-{image.id}", text)
