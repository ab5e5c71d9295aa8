"""What can be found on the sheets of a machine, from its records and figures."""

from collections.abc import Callable, Iterator
from functools import partial

from benchsheaf.compute.memory_map import AreaFigures, ChipBits, chip_bits
from benchsheaf.compute.power import branches, ladder
from benchsheaf.model.machine import Machine, Rail
from benchsheaf.model.memory import Bank
from benchsheaf.pages.finding.bench_entries import bench_entries, repair_entries
from benchsheaf.pages.finding.board_parts import Place, part_entries
from benchsheaf.pages.finding.decoding_entries import contact_words, decoding_entries, switch_words
from benchsheaf.pages.finding.entry import Entry, in_words
from benchsheaf.pages.finding.new_part_entries import new_part_entries
from benchsheaf.pages.finding.picture_entries import clock_entries, looks_entries, picture_entries
from benchsheaf.pages.finding.sound_entries import sound_entries
from benchsheaf.pages.missing import TITLE as MISSING
from benchsheaf.pages.printing import anchor, binary, quantity, rail_anchor, rail_name, span
from benchsheaf.pages.sheets import SHEETS
from benchsheaf.pages.shelf import Desk
from benchsheaf.standards import BITS_A_BYTE

TITLES = {sheet.name: sheet.title for sheet in SHEETS}


def _entry(
    desk: Desk, machine: Machine, kind: str, title: str, place: tuple[str, str], text: str = "", *, named: bool = False
) -> Entry:
    """Something at a place of a sheet; `named` is a designator."""
    sheet, fragment = place
    return Entry(
        kind=kind,
        title=title,
        where=f"{machine.name}, {TITLES[sheet]}",
        way=desk.sheet(sheet, fragment),
        text=text,
        machines=(machine.slug,),
        designator=named,
    )


def _itself(desk: Desk, machine: Machine) -> Iterator[Entry]:
    yield Entry(
        kind="Machine",
        title=machine.name,
        where="",
        way=desk.sheet("glance"),
        text=machine.summary,
        more=str(machine.built),
        machines=(machine.slug,),
    )


def _sheets(desk: Desk, machine: Machine) -> Iterator[Entry]:
    for sheet in SHEETS:
        if not sheet.wanted(machine, desk.shelf.collection):
            yield Entry(
                kind="Sheet",
                title=sheet.title,
                where=machine.name,
                way=desk.sheet(sheet.name),
                machines=(machine.slug,),
            )
    yield Entry(kind="Sheet", title=MISSING, where=machine.name, way=desk.sheet("missing"), machines=(machine.slug,))


def _sections(desk: Desk, machine: Machine) -> Iterator[Entry]:
    """Headings of sheets that people ask for; a link that leads nowhere is found before publishing."""
    workup = desk.shelf.workup.machines[machine.slug]
    memory = machine.memory
    sections = (
        ("first-power", "resistance", "Resistance to ground", any(rail.to_ground for rail in machine.rails)),
        ("first-power", "stored-charge", "How long to wait, supply open", workup.reservoir is not None),
        ("first-power", "shorts", "Where a short is", any(rail.to_ground for rail in machine.rails)),
        ("power", "loads", "Loads against limits", True),
        ("power", "rails", "Rails and their limits", True),
        ("power", "resistors", "Load resistors", any(outfit.loads for outfit in machine.configurations)),
        ("boards", "stress", "How hard capacitors are driven", bool(machine.boards and workup.stress)),
        ("memory", "chips", "Which chip is which bit", memory is not None),
        ("memory", "map", "Memory map as delivered", memory is not None and workup.outfits[0].map is not None),
        ("slots", "ports", "Ports, and which are free", bool(machine.slots and workup.outfits[0].ports.answering)),
        ("slots", "lines", "Request lines and channels", bool(machine.slots and workup.outfits[0].lines)),
        ("firmware", "differs", "When a sum of a ROM differs", bool(machine.firmware)),
    )
    for sheet, fragment, title, is_there in sections:
        if is_there:
            yield _entry(desk, machine, "Section", title, (sheet, fragment))


def _boards(desk: Desk, machine: Machine) -> Iterator[Entry]:
    way = partial(desk.sheet, "boards")
    known = _memory_bits(machine)
    shown: set[str] = set()
    for board in machine.boards:
        text = f"Printed on the board: {board.print}" if board.print else ""
        yield _entry(desk, machine, "Board", board.name, ("boards", f"board-{board.id}"), text)
        parts = board.all_parts()
        refs = {part.ref for part in parts}
        weak = [each for each in machine.weak_parts if refs & set(each.parts) and each.id not in shown]
        shown |= {each.id for each in weak}
        place = Place(where=f"{machine.name}, {board.name}", way=way, machines=(machine.slug,))
        yield from part_entries(place, parts, weak, own=True, more=known)
    if machine.boards:
        others = [each for each in machine.weak_parts if each.id not in shown]
        yield from part_entries(Place(where=machine.name, way=way, machines=(machine.slug,)), (), others)


def _memory_bits(machine: Machine) -> dict[str, str]:
    """What each memory chip is among the bits of its bank."""
    found: dict[str, str] = {}
    for bank in machine.memory.banks if machine.memory else ():
        name = bank.on_screen
        found |= {each.ref: f"{_bits(each)} of bank {name}" for each in chip_bits(bank)}
        found |= {ref: f"parity of bank {name}" for ref in bank.parity}
    return found


def _bits(chip: ChipBits) -> str:
    return f"bit {chip.first}" if chip.first == chip.last else f"bits {chip.first} to {chip.last}"


def _rails(desk: Desk, machine: Machine) -> Iterator[Entry]:
    for rail in machine.rails:
        place = ("power", rail_anchor(rail.name))
        yield _entry(desk, machine, "Rail", rail_name(rail.name), place, _rail_words(rail))


def _rail_words(rail: Rail) -> str:
    told = [span(rail.window, "V")]
    if rail.colour:
        told.append(f"{rail.colour} wire")
    if rail.to_ground:
        told.append(f"to ground usually {span(rail.to_ground.usual, 'ohm')}")
        told.append(f"no power below {quantity(rail.to_ground.no_power_below_ohm, 'ohm')}")
    return ", ".join(told)


def _plugs(desk: Desk, machine: Machine) -> Iterator[Entry]:
    for plug in machine.connectors:
        title = f"{plug.name} {plug.part}" if plug.part else plug.name
        yield _entry(desk, machine, "Plug", title, ("power", f"plug-{plug.id}"), contact_words(plug.rows))


def _memory(desk: Desk, machine: Machine) -> Iterator[Entry]:
    memory = machine.memory
    if memory is None:
        return
    workup = desk.shelf.workup.machines[machine.slug]
    for bank in memory.banks:
        place = ("memory", f"bank-{bank.id}")
        yield _entry(desk, machine, "Memory bank", f"Bank {bank.on_screen}", place, _bank_words(bank))
    for fill, figures in zip(memory.fills, workup.fills, strict=True):
        text = f"{binary(figures.total_bytes)}, {figures.chips} chips; {_areas(figures.areas)}"
        yield _entry(desk, machine, "Filling", fill.name, ("memory", f"fill-{fill.id}"), text)
    mapped = workup.outfits[0].map
    for area in mapped.areas if mapped else ():
        if area.owner is None:
            text = f"{area.first}–{area.last}, {binary(area.size_bytes)}"
            yield _entry(desk, machine, "Memory area", area.name, ("memory", "map"), text)


def _bank_words(bank: Bank) -> str:
    bits = f"Store {bank.on_screen}: bits 0 to {BITS_A_BYTE - 1} in {', '.join(bank.bits)}"
    return f"{bits}; parity in {', '.join(bank.parity)}" if bank.parity else bits


def _areas(areas: tuple[AreaFigures, ...]) -> str:
    return ", ".join(f"{area.name} {area.first}–{area.last}" for area in areas)


def _switches(desk: Desk, machine: Machine) -> Iterator[Entry]:
    for each in machine.switches:
        place = ("switches", anchor(each.switch))
        yield _entry(desk, machine, "Switch", each.switch, place, switch_words(each), named=True)


def _slots(desk: Desk, machine: Machine) -> Iterator[Entry]:
    filled = {each.slot: each.holds for each in machine.configurations[0].slots}
    for each in machine.slots:
        holds = filled.get(each.slot)
        text = f"{desk.shelf.name_of('card', holds)} as delivered" if holds else "free as delivered"
        yield _entry(desk, machine, "Slot", each.slot, ("slots", each.slot), text, named=True)


def _outfits(desk: Desk, machine: Machine) -> Iterator[Entry]:
    way_up = {each.id for each in (*ladder(machine.configurations), *branches(machine.configurations))}
    for outfit, made in zip(machine.configurations, desk.shelf.workup.machines[machine.slug].outfits, strict=True):
        place = ("power", f"outfit-{outfit.id}")
        if outfit is machine.configurations[0]:
            place = ("power", "loads")
        elif outfit.id in way_up:
            place = ("ladder", f"rung-{outfit.id}")
        text = f"Running {quantity(made.power.run_w, 'W', 1)}, starting {quantity(made.power.start_w, 'W', 1)}"
        yield _entry(desk, machine, "Outfit", outfit.name, place, text)


def _cautions(desk: Desk, machine: Machine) -> Iterator[Entry]:
    there = {sheet.name for sheet in SHEETS if not sheet.wanted(machine, desk.shelf.collection)}
    for each in machine.cautions:
        sheet = next((name for name in each.sheets if name in there), None)
        if sheet:
            text = " ".join(filter(None, (each.stop, each.says)))
            yield _entry(desk, machine, "Caution", each.order.rstrip("."), (sheet, f"caution-{each.id}"), text)


SECTIONS: tuple[Callable[[Desk, Machine], Iterator[Entry]], ...] = (
    _itself,
    _sheets,
    _sections,
    _boards,
    _rails,
    _plugs,
    _memory,
    _switches,
    _slots,
    decoding_entries,
    _outfits,
    looks_entries,
    clock_entries,
    picture_entries,
    _cautions,
    sound_entries,
    new_part_entries,
    bench_entries,
    repair_entries,
)


def machine_entries(desk: Desk, machine: Machine) -> Iterator[Entry]:
    """Everything of a machine; a new section of the data language adds one function to the list."""
    for entries in SECTIONS:
        yield from in_words(entries(desk, machine), desk)
