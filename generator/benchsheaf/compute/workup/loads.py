"""What an outfit is made of: its memory filling, its settings, and all that draws current under it."""

from decimal import Decimal

from benchsheaf.compute.power import Load
from benchsheaf.model.boards import Draw
from benchsheaf.model.collection import Collection
from benchsheaf.model.machine import BayFilled, Configuration, Machine
from benchsheaf.model.memory import Fill, Memory, Setting


def outfit_fill(memory: Memory | None, outfit: Configuration) -> Fill | None:
    """The filling of an outfit; None where there is none."""
    return next((fill for fill in memory.fills if fill.id == outfit.fill), None) if memory else None


def outfit_settings(outfit: Configuration, memory: Memory | None) -> tuple[Setting, ...]:
    """What differs from delivery under an outfit: the settings of its memory filling, then its own."""
    fill = outfit_fill(memory, outfit)
    return (*(fill.set if fill else ()), *outfit.set)


def outfit_loads(outfit: Configuration, machine: Machine, collection: Collection) -> tuple[Load, ...]:
    """What draws current under an outfit, in the order in which a table lists it."""
    boards = {board.id: board for board in machine.boards}
    loads = [Load(name=boards[name].name, draws=boards[name].draws) for name in outfit.boards]
    loads += _memory_loads(machine.memory, outfit)
    for slot in outfit.slots:
        card = collection.cards[slot.holds]
        loads.append(Load(name=card.name, draws=card.draws, kind="card", slug=card.slug))
    loads += [_drive_load(bay, collection, rests=bay.bay in outfit.rests) for bay in outfit.bays]
    if outfit.keyboard:
        keyboard = collection.keyboards[outfit.keyboard]
        loads.append(Load(name=keyboard.name, draws=keyboard.draws, kind="keyboard", slug=keyboard.slug))
    supply = collection.supplies[machine.supply]
    if supply.draws:
        loads.append(Load(name=f"{supply.name} itself", draws=supply.draws, kind="supply", slug=supply.slug))
    return tuple(load for load in loads if load.draws)


def _drive_load(bay: BayFilled, collection: Collection, *, rests: bool) -> Load:
    """What a drive takes; one that only rests takes its current at rest, and does not start."""
    drive = collection.drives[bay.holds]
    late = bay.starts == "late"
    if not rests:
        return Load(name=drive.name, draws=drive.draws, kind="drive", slug=drive.slug, late=late)
    name = f"{drive.name}, at rest"
    return Load(name=name, draws=tuple(map(_at_rest, drive.draws)), kind="drive", slug=drive.slug, late=late)


def _at_rest(draw: Draw) -> Draw:
    return Draw(rail=draw.rail, run_a=draw.run_a if draw.rest_a is None else draw.rest_a, warm=draw.warm)


def _memory_loads(memory: Memory | None, outfit: Configuration) -> list[Load]:
    """The memory chips of the outfit's filling, one load for each kind of chip."""
    fill = outfit_fill(memory, outfit)
    if memory is None or fill is None:
        return []
    banks = {bank.id: bank for bank in memory.banks}
    loads = []
    for kind in memory.chips:
        groups = [group for group in fill.groups if group.chip == kind.id]
        count = sum(len(banks[name].bits) + len(banks[name].parity) for group in groups for name in group.banks)
        if count and kind.draws:
            name = f"Memory, {count} chips of {kind.id.upper()} × {kind.width_bits}"
            loads.append(Load(name=name, draws=tuple(_times(draw, count) for draw in kind.draws)))
    return loads


def _times(draw: Draw, count: int) -> Draw:
    """The draw of several like things together."""

    def several(one_a: Decimal | None) -> Decimal | None:
        return None if one_a is None else one_a * count

    return Draw(
        rail=draw.rail,
        run_a=draw.run_a * count,
        start_a=several(draw.start_a),
        start_for_s=draw.start_for_s,
        rest_a=several(draw.rest_a),
        warm=draw.warm,
    )
