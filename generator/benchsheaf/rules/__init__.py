"""What needs figures to be judged: rules of the bench that no schema can say."""

from collections.abc import Iterator, Mapping
from typing import Any

from benchsheaf.compute.workup import CollectionWorkup
from benchsheaf.conformity import Conformed
from benchsheaf.links import Found, Thing, owner_of
from benchsheaf.mistakes import Mistake
from benchsheaf.model.collection import Collection
from benchsheaf.model.inherited import machine_bench, part_bench
from benchsheaf.rules.boards import board_mistakes
from benchsheaf.rules.cards import SENSE_60, SENSE_61, card_mistakes, own_port_mistakes
from benchsheaf.rules.complaints import complaint_mistakes, repair_mistakes, repeated_rows
from benchsheaf.rules.drives import drive_mistakes
from benchsheaf.rules.entries import SENSE_22, entry_mistakes
from benchsheaf.rules.faults import fault_mistakes
from benchsheaf.rules.filesystem import filesystem_mistakes
from benchsheaf.rules.firmware import card_firmware_mistakes, machine_firmware_mistakes
from benchsheaf.rules.gates import SENSE_75, gate_mistakes
from benchsheaf.rules.kinds import kind_mistakes
from benchsheaf.rules.memory import SENSE_12, memory_mistakes
from benchsheaf.rules.mentions import mention_mistakes
from benchsheaf.rules.outfits import SENSE_13, SENSE_16, outfit_mistakes
from benchsheaf.rules.rails import rail_mistakes
from benchsheaf.rules.scene import BusScene, MachineScene, PartScene, RepairScene
from benchsheaf.rules.signals import mode_mistakes, signal_mistakes
from benchsheaf.rules.sounds import sound_mistakes
from benchsheaf.rules.switches import bit_mistakes, switch_mistakes


def machine_mistakes(scene: MachineScene) -> Iterator[Mistake]:
    """All rules that a machine is judged by."""
    yield from rail_mistakes(scene)
    yield from board_mistakes(scene)
    yield from memory_mistakes(scene)
    yield from outfit_mistakes(scene)
    yield from entry_mistakes(scene)
    yield from kind_mistakes(scene)
    yield from signal_mistakes(scene)
    yield from sound_mistakes(scene)
    yield from card_mistakes(scene)
    yield from switch_mistakes(scene)
    yield from machine_firmware_mistakes(scene)
    bench = machine_bench(scene.machine, scene.collection)
    gates = list(gate_mistakes(scene, bench))
    yield from gates
    yield from fault_mistakes(scene, bench)
    yield from repeated_rows(scene)
    if all(each.code is not SENSE_75 for each in gates):  # in a circle nothing is ever reached
        yield from complaint_mistakes(scene, bench)


def part_mistakes(scene: PartScene) -> Iterator[Mistake]:
    """All rules that a shared part is judged by."""
    yield from drive_mistakes(scene)
    yield from filesystem_mistakes(scene)
    yield from mode_mistakes(scene)
    yield from board_mistakes(scene)
    yield from own_port_mistakes(scene)
    yield from bit_mistakes(scene, scene.part)
    yield from card_firmware_mistakes(scene)
    yield from entry_mistakes(scene)
    yield from kind_mistakes(scene)
    bench = part_bench(scene.conformed.entry.kind, scene.part)
    yield from gate_mistakes(scene, bench)
    yield from fault_mistakes(scene, bench)
    yield from repeated_rows(scene)


def record_mistakes(
    things: Mapping[Thing, Conformed], found: Mapping[Thing, Found], records: Collection, workup: CollectionWorkup
) -> Iterator[Mistake]:
    """What all rules find, without what only follows: a rail, a card or a drive that stands twice counts twice."""
    told = list(_all_mistakes(things, found, records, workup))
    is_double = any(each.code is SENSE_22 for each in told)
    crowded = {_outfit(each) for each in told if each.code is SENSE_16}
    for each in told:
        in_crowd = each.code in (SENSE_12, SENSE_13, SENSE_60, SENSE_61) and _outfit(each) in crowded
        if not in_crowd and not (is_double and each.code is SENSE_13):
            yield each


def _outfit(mistake: Mistake) -> tuple[str, ...]:
    """The file and the outfit that a mistake is told at."""
    return (mistake.place.file, *mistake.path.split(".")[:2])


def _all_mistakes(
    things: Mapping[Thing, Conformed], found: Mapping[Thing, Found], records: Collection, workup: CollectionWorkup
) -> Iterator[Mistake]:
    """All rules that things without a mistake of another kind are judged by.

    What machines share comes first, and then one machine after the other with all that its texts ask for, so that the
    figures of few machines need to be at hand.
    """
    wrong: set[Thing] = set()

    def noted(key: Thing, mistakes: Iterator[Mistake]) -> Iterator[Mistake]:
        for mistake in mistakes:
            wrong.add(key)
            yield mistake

    for key, mistakes in _shared_mistakes(things, records, workup):
        yield from noted(key, mistakes)
    tellers: dict[Thing, dict[Thing, Conformed]] = {}
    for key, conformed in things.items():
        tellers.setdefault(owner_of(key), {})[key] = conformed
    for owner, own in tellers.items():
        kind, slug = owner
        machine = records.machines.get(slug) if kind == "machine" else None
        if machine:
            figures = workup.machines[slug]
            scene = MachineScene(conformed=things[owner], machine=machine, workup=figures, collection=records)
            yield from noted(owner, machine_mistakes(scene))
        yield from mention_mistakes(own, found, records, workup, wrong)


def _shared_mistakes(
    things: Mapping[Thing, Conformed], records: Collection, workup: CollectionWorkup
) -> Iterator[tuple[Thing, Iterator[Mistake]]]:
    """The mistakes of each thing that machines share, and of each repair record."""
    shelves: tuple[tuple[str, Mapping[str, Any], Mapping[str, Any]], ...] = (
        ("drive", records.drives, workup.drives),
        ("supply", records.supplies, {}),
        ("card", records.cards, workup.cards),
        ("keyboard", records.keyboards, {}),
        ("display", records.displays, {}),
    )
    for kind, shelf, figures in shelves:
        for slug, part in shelf.items():
            scene = PartScene(conformed=things[kind, slug], part=part, workup=figures.get(slug), buses=records.buses)
            yield (kind, slug), part_mistakes(scene)
    for slug, bus in records.buses.items():
        yield ("bus", slug), entry_mistakes(BusScene(conformed=things["bus", slug], bus=bus))
    for slug, repair in records.repairs.items():
        yield ("repair", slug), repair_mistakes(RepairScene(conformed=things["repair", slug], repair=repair))


__all__ = ["MachineScene", "PartScene", "RepairScene", "record_mistakes"]
