"""Whether banks are whole bytes, fills whole words, and areas inside the map."""

from collections.abc import Iterator

from benchsheaf.compute.memory_map import address, map_figures
from benchsheaf.mistakes import Code, Mistake
from benchsheaf.model.memory import Memory
from benchsheaf.quantities import printed
from benchsheaf.rules.scene import MachineScene
from benchsheaf.standards import BITS_A_BYTE

SENSE_09 = Code(
    id="SENSE-09",
    meaning="A bank with this chip is not one byte wide.",
    words="Bank {bank} has {chips} chips of {width} each, which makes {bits} bits, not 8. Mend one of them.",
    example={"bank": "e0", "chips": "7", "width": "1 bit", "bits": "7"},
)
SENSE_10 = Code(
    id="SENSE-10",
    meaning="A group does not fill every byte of the word once.",
    words="A word of {word} wants each of the lanes {wanted} once; these banks have {got}.",
    example={"word": "16 bit", "wanted": "0, 1", "got": "e0: 0, o0: 0"},
)
SENSE_11 = Code(
    id="SENSE-11",
    meaning="Something in the map lies beyond the last address.",
    words="{area} reaches beyond the last address, {last}.",
    example={"area": "Store E0 and O0", "last": "3FFFFF"},
)
SENSE_12 = Code(
    id="SENSE-12",
    meaning="Two things that are plugged in together answer at the same addresses.",
    words="{one} and {other} both answer from {first} to {last}. One of their addresses is wrong.",
    example={"one": "Store E0 and O0", "other": "Start ROM", "first": "000000", "last": "00FFFF"},
)


def memory_mistakes(scene: MachineScene) -> Iterator[Mistake]:
    """Banks, groups and the map of the machine."""
    memory = scene.machine.memory
    if memory is None:
        return
    yield from _groups(scene, memory)
    for index, fill in enumerate(scene.workup.fills):
        figures = map_figures(memory.address_bits, fill.areas)
        for number, area in enumerate(fill.areas):
            if area.name in figures.beyond:
                path = ("memory", "fills", index, "groups", number, "base")
                yield scene.mistake(SENSE_11, *path, area=area.name, last=figures.last)
        for clash in figures.overlaps:
            number = [area.name for area in fill.areas].index(clash.other)
            path = ("memory", "fills", index, "groups", number, "base")
            words = {"one": clash.one, "other": clash.other, "first": clash.first, "last": clash.last}
            yield scene.mistake(SENSE_12, *path, **words)
    yield from _beyond(scene, memory)
    delivered = scene.workup.outfits[0].map
    own = {area for fill in scene.workup.fills for area in fill.areas}
    for clash in delivered.overlaps if delivered else ():
        if {clash.one, clash.other} <= {area.name for area in own}:
            continue  # told above, at the fill itself
        words = {"one": clash.one, "other": clash.other, "first": clash.first, "last": clash.last}
        yield scene.mistake(SENSE_12, "configurations", 0, **words)


def _beyond(scene: MachineScene, memory: Memory) -> Iterator[Mistake]:
    """Areas beyond the last address: the machine's own at their line, a card's at the slot that holds it."""
    end = 2**memory.address_bits
    last = address(end - 1, memory.address_bits)
    for index, area in enumerate(memory.areas):
        if int(area.base, 16) + area.size_bytes > end:
            yield scene.mistake(SENSE_11, "memory", "areas", index, "base", area=area.name, last=last)
    for number, outfit in enumerate(scene.machine.configurations):
        for index, filled in enumerate(outfit.slots):
            for area in scene.collection.cards[filled.holds].areas:
                if int(area.base, 16) + area.size_bytes > end:
                    path = ("configurations", number, "slots", index, "holds")
                    yield scene.mistake(SENSE_11, *path, area=area.name, last=last)


def _groups(scene: MachineScene, memory: Memory) -> Iterator[Mistake]:
    banks = {bank.id: bank for bank in memory.banks}
    kinds = {chip.id: chip for chip in memory.chips}
    lanes = list(range(memory.word_bits // BITS_A_BYTE))
    told: set[str] = set()
    told_groups: set[tuple[str, ...]] = set()
    for index, fill in enumerate(memory.fills):
        for number, group in enumerate(fill.groups):
            path = ("memory", "fills", index, "groups", number, "banks")
            filled = sorted(banks[name].lane for name in group.banks)
            if filled != lanes and group.banks not in told_groups:
                told_groups.add(group.banks)
                words = {
                    "wanted": ", ".join(map(str, lanes)),
                    "got": ", ".join(f"{name}: {banks[name].lane}" for name in group.banks),
                }
                yield scene.mistake(SENSE_10, *path, word=printed(memory.word_bits, "bit"), **words)
            for name in group.banks:
                bank, width = banks[name], kinds[group.chip].width_bits
                # A chip that carries its own parity bit gives nine.
                if len(bank.bits) * width not in (BITS_A_BYTE, BITS_A_BYTE + 1) and name not in told:
                    told.add(name)
                    words = {"chips": str(len(bank.bits)), "bits": str(len(bank.bits) * width)}
                    at = ("memory", "banks", [each.id for each in memory.banks].index(name), "bits")
                    yield scene.mistake(SENSE_09, *at, bank=name, width=printed(width, "bit"), **words)
