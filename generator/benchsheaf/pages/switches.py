"""Switches: what each sets, the blocks as they are set, and the value that the machine reads from them."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from benchsheaf.compute.switches import BitFigures, ReadBack, values_read
from benchsheaf.compute.workup import outfit_settings
from benchsheaf.drawing.picture import Both
from benchsheaf.drawing.switch_block import switch_block
from benchsheaf.markup import Markup
from benchsheaf.model.machine import Machine
from benchsheaf.model.plugs import Switch
from benchsheaf.pages.glance import sheet_cautions
from benchsheaf.pages.settings import CardSwitches, SwitchRow, card_switches, setting_words, switch_rows
from benchsheaf.pages.shelf import Desk
from benchsheaf.pages.views import CautionView


@dataclass(frozen=True, kw_only=True, slots=True)
class BlockView:
    """A block of several ways, drawn as delivered."""

    part: Markup
    drawing: Both


@dataclass(frozen=True, kw_only=True, slots=True)
class BitRow:
    """One bit of a value that is read: the position that gives a 1, and what it means then."""

    figures: BitFigures
    one_at: str
    means: str


@dataclass(frozen=True, kw_only=True, slots=True)
class OtherValue:
    """The value that is read under another filling or outfit, and the settings that make it so."""

    name: str
    settings: Sequence[Markup]
    value: str


@dataclass(frozen=True, kw_only=True, slots=True)
class ReadView:
    """What is read at one port: as delivered bit by bit, and under other settings."""

    figures: ReadBack
    rows: Sequence[BitRow]
    by: Sequence[str]
    ones: Sequence[str]
    others: Sequence[OtherValue]


@dataclass(frozen=True, kw_only=True, slots=True)
class SwitchesSheet:
    """The sheet about switches."""

    cautions: Sequence[CautionView]
    rows: Sequence[SwitchRow]
    blocks: Sequence[BlockView]
    reads: Sequence[ReadView]
    cards: Sequence[CardSwitches]
    fills: str | None = None


def switches_sheet(desk: Desk, machine: Machine) -> SwitchesSheet:
    """What the sheet says."""
    outfit = machine.configurations[0]
    filled = [(slot.slot, desk.shelf.collection.cards[slot.holds]) for slot in outfit.slots]
    return SwitchesSheet(
        cautions=sheet_cautions(desk, machine, "switches"),
        rows=switch_rows(desk, machine.switches),
        blocks=_blocks(desk, machine.switches),
        reads=[_read(desk, machine, each) for each in values_read(machine.switches)],
        cards=card_switches(desk, filled),
        fills=desk.sheet("memory", "fills") if machine.memory and machine.memory.fills else None,
    )


def _blocks(desk: Desk, switches: Sequence[Switch]) -> list[BlockView]:
    ways: dict[str, list[Switch]] = {}
    for each in switches:
        ways.setdefault(each.part, []).append(each)
    return [
        BlockView(
            part=desk.part(part),
            drawing=switch_block(part, own, [each.as_delivered for each in own], f"block-{part.lower()}"),
        )
        for part, own in ways.items()
        if len(own) > 1
    ]


def _read(desk: Desk, machine: Machine, figures: ReadBack) -> ReadView:
    return ReadView(
        figures=figures,
        rows=list(_bit_rows(machine, figures)),
        by=_by(machine, figures.port),
        ones=[bit.mask for bit in reversed(figures.bits) if bit.reads],
        others=_others(desk, machine, figures),
    )


def _bit_rows(machine: Machine, figures: ReadBack) -> Iterator[BitRow]:
    switches = {each.switch: each for each in machine.switches}
    for bit in figures.bits:
        way = switches[bit.switch]
        one_at = way.reads_one or ""
        means = next((each.means for each in way.positions if each.to == one_at and each.means), None)
        yield BitRow(figures=bit, one_at=one_at, means=means or way.does)


def _by(machine: Machine, port: str) -> list[str]:
    """What answers at the port, by the machine's own list of ports."""
    number = int(port.removeprefix("P"), 16)
    firsts = ((int(each.first.removeprefix("P"), 16), each) for each in machine.ports)
    return [each.name for first, each in firsts if first <= number < first + each.count]


def _others(desk: Desk, machine: Machine, delivered: ReadBack) -> list[OtherValue]:
    """The values under each filling of the memory and each outfit that read otherwise than as delivered."""
    fills = machine.memory.fills if machine.memory else ()
    several = [(each.name, each.set) for each in fills]
    several += [(each.name, outfit_settings(each, machine.memory)) for each in machine.configurations if each.set]
    found = []
    for name, settings in several:
        value = next(each.value for each in values_read(machine.switches, settings) if each.port == delivered.port)
        own = [each for each in settings if each.switch in {bit.switch for bit in delivered.bits}]
        if value != delivered.value:
            found.append(OtherValue(name=name, settings=[setting_words(desk, each) for each in own], value=value))
    return found
