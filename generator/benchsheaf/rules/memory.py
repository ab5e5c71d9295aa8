"""Whether banks are whole bytes, fills whole words, and areas inside the map."""

from collections.abc import Iterator, Sequence
from dataclasses import replace

from benchsheaf.compute.memory_map import AreaFigures, MapFigures, Overlap, address, area_figures, map_figures
from benchsheaf.mistakes import Code, Mistake
from benchsheaf.model.memory import Bank, Fill, Memory, MemoryChip
from benchsheaf.quantities import printed
from benchsheaf.rules.scene import MachineScene
from benchsheaf.standards import BITS_A_BYTE

Path = tuple[str | int, ...]
MOST_LANES = 8
"""How many bytes the widest word has."""

SENSE_09 = Code(
    id="SENSE-09",
    meaning="A bank with this chip is not one byte wide.",
    words="Bank {bank} has {chips} chips of {width} each, which makes {bits} bits, not 8. Chips for parity alone stand "
    "in `parity`.",
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
    words="{area} reaches beyond the last address, {last}. Its address or its size is wrong.",
    example={"area": "Store E0 and O0", "last": "3FFFFF"},
)
SENSE_12 = Code(
    id="SENSE-12",
    meaning="Two things that are plugged in together answer at the same addresses.",
    words="{one} and {other} both answer from {first} to {last}. One of their addresses is wrong.",
    example={"one": "Store E0 and O0", "other": "Start ROM", "first": "000000", "last": "00FFFF"},
)
SENSE_23 = Code(
    id="SENSE-23",
    meaning="A chip sits in two banks, or twice in one.",
    words="{ref} sits in bank {bank} already, at {first}. A chip gives its bits to one bank: take it out of the other.",
    example={"ref": "N49", "bank": "e0", "first": "machines/sketch-1/memory.yml:9"},
)
SENSE_24 = Code(
    id="SENSE-24",
    meaning="A bank is in two groups of one filling.",
    words="Bank {bank} is in another group of this filling already, at {first}. It answers at one address only: "
    "take it out of one.",
    example={"bank": "e0", "first": "machines/sketch-1/memory.yml:24"},
)
SENSE_25 = Code(
    id="SENSE-25",
    meaning="A memory without parity has parity chips.",
    words="Bank {bank} has chips for parity, and the memory has `parity: none`. One of the two is wrong.",
    example={"bank": "e0"},
)
SENSE_30 = Code(
    id="SENSE-30",
    meaning="A memory reads a word that is not of whole bytes.",
    words="Banks are one byte wide, and {word} is not 1 to 8 of them: a word is 8, 16, 32 or 64 bit.",
    example={"word": "12 bit"},
)
SENSE_31 = Code(
    id="SENSE-31",
    meaning="A bank is for a byte that the word does not have.",
    words="A word of {word} has {lanes}, and bank {bank} is for lane {lane}. Mend the lane, or `word`.",
    example={"word": "16 bit", "lanes": "lanes 0, 1", "bank": "e2", "lane": "2"},
)


def memory_mistakes(scene: MachineScene) -> Iterator[Mistake]:
    """Banks, groups and the map of the machine."""
    memory = scene.machine.memory
    if memory is None:
        return
    yield from _words(scene, memory)
    yield from _banks(scene, memory)
    for index, fill in enumerate(memory.fills):
        yield from _groups(scene, memory, index, fill)
    yield from _beyond(scene, memory)
    yield from _overlaps(scene, memory)


def _lanes(memory: Memory) -> list[int]:
    """The bytes of a word by their numbers; none where it is not made of one to eight bytes."""
    whole, rest = divmod(memory.word_bits, BITS_A_BYTE)
    return [] if rest or whole > MOST_LANES else list(range(whole))


def _words(scene: MachineScene, memory: Memory) -> Iterator[Mistake]:
    """The word, and the lanes that banks are for; banks that say the same of a wrong word share it."""
    lanes, word = _lanes(memory), printed(memory.word_bits, "bit")
    if not lanes:
        yield scene.mistake(SENSE_30, "memory", "word", word=word)
        return
    for index, bank in enumerate(memory.banks):
        if bank.lane not in lanes:
            known = f"lane{'s' * (len(lanes) > 1)} {', '.join(map(str, lanes))}"
            words = {"lanes": known, "bank": bank.id, "lane": str(bank.lane)}
            made = scene.mistake(SENSE_31, "memory", "banks", index, "lane", word=word, **words)
            yield replace(made, about=("lanes", scene.machine.slug))


def _banks(scene: MachineScene, memory: Memory) -> Iterator[Mistake]:
    """Each bank one byte wide, whatever it is filled with; each chip in one; parity where there is some."""
    kinds = {chip.id: chip for chip in memory.chips}
    sits: dict[str, tuple[Bank, Path]] = {}
    for index, bank in enumerate(memory.banks):
        path = ("memory", "banks", index)
        groups = [group for fill in memory.fills for group in fill.groups if bank.id in group.banks]
        chips = [kinds[group.chip] for group in groups]
        unfit = [chip for chip in chips or memory.chips if not _is_a_byte(bank, chip)]
        if unfit and (chips or len(unfit) == len(memory.chips)):
            width = unfit[0].width_bits
            words = {"chips": str(len(bank.bits)), "bits": str(len(bank.bits) * width)}
            yield scene.mistake(SENSE_09, *path, "bits", bank=bank.id, width=printed(width, "bit"), **words)
        for name, refs in (("bits", bank.bits), ("parity", bank.parity)):
            for number, ref in enumerate(refs):
                other, first = sits.setdefault(ref, (bank, (*path, name, number)))
                if first != (*path, name, number):
                    words = {"ref": ref, "bank": other.id, "first": _spot(scene, first)}
                    yield scene.mistake(SENSE_23, *path, name, number, **words)
        if bank.parity and memory.parity == "none":
            made = scene.mistake(SENSE_25, *path, "parity", bank=bank.id)
            yield replace(made, about=("parity", scene.machine.slug))


def _is_a_byte(bank: Bank, chip: MemoryChip) -> bool:
    """Whether chips of a kind make a bank of one byte; a single chip may carry its own parity bit as the ninth."""
    return len(bank.bits) * chip.width_bits == BITS_A_BYTE or (len(bank.bits), chip.width_bits) == (1, BITS_A_BYTE + 1)


def _groups(scene: MachineScene, memory: Memory, index: int, fill: Fill) -> Iterator[Mistake]:
    """Each group of a filling a whole word, told once for the same banks; each bank in one group."""
    banks, lanes = {bank.id: bank for bank in memory.banks}, _lanes(memory)
    sits: dict[str, Path] = {}
    for number, group in enumerate(fill.groups):
        path = ("memory", "fills", index, "groups", number, "banks")
        filled = [banks[name].lane for name in group.banks]
        if sorted(filled) != lanes and set(filled) <= set(lanes):
            got = ", ".join(f"{name}: {banks[name].lane}" for name in group.banks)
            words = {"word": printed(memory.word_bits, "bit"), "wanted": ", ".join(map(str, lanes)), "got": got}
            made = scene.mistake(SENSE_10, *path, **words)
            yield replace(made, about=("group", scene.machine.slug, *group.banks))
        again = [(each, name) for each, name in enumerate(group.banks) if name in sits]
        for each, name in again[:1]:
            yield scene.mistake(SENSE_24, *path, each, bank=name, first=_spot(scene, sits[name]))
        sits |= {name: (*path, each) for each, name in enumerate(group.banks) if name not in sits}


def _spot(scene: MachineScene, path: Path) -> str:
    """Where something stands, as a sentence says it."""
    place = scene.conformed.entry.place(path)
    return f"{place.file}:{place.line}"


def _beyond(scene: MachineScene, memory: Memory) -> Iterator[Mistake]:
    """What lies beyond the last address: the machine's own at its line, a card's once, at the first slot."""
    end = 2**memory.address_bits
    last = address(end - 1, memory.address_bits)
    for index, fill in enumerate(scene.workup.fills):
        for number, group in enumerate(fill.areas):
            if int(group.last, 16) >= end:
                path = ("memory", "fills", index, "groups", number, "base")
                yield scene.mistake(SENSE_11, *path, area=group.name, last=last)
    for index, area in enumerate(memory.areas):
        if int(area.base, 16) + area.size_bytes > end:
            yield scene.mistake(SENSE_11, "memory", "areas", index, "base", area=area.name, last=last)
    told: set[tuple[str, str]] = set()
    for number, outfit in enumerate(scene.machine.configurations):
        for index, filled in enumerate(outfit.slots):
            for area in scene.collection.cards[filled.holds].areas:
                if int(area.base, 16) + area.size_bytes > end and (filled.holds, area.id) not in told:
                    told.add((filled.holds, area.id))
                    at = ("configurations", number, "slots", index, "holds")
                    yield scene.mistake(SENSE_11, *at, area=area.name, last=last)


def _overlaps(scene: MachineScene, memory: Memory) -> Iterator[Mistake]:
    """Each two that answer at the same addresses once: at the machine's own area, at the filling, or at the outfit."""
    told: set[Overlap] = set()
    bits = memory.address_bits
    own = [area_figures(area, None, bits) for area in memory.areas]
    for clash in _clashes(map_figures(bits, own)):
        told.add(clash)
        number = next(at for at, area in enumerate(own) if area.name == clash.other and area.first == clash.first)
        yield _clash(scene, clash, "memory", "areas", number, "base")
    doubled = {fill.id for fill in memory.fills if _has_a_bank_again(fill)}
    for index, fill in enumerate(scene.workup.fills):
        for clash in _clashes(map_figures(bits, [*own, *fill.areas])):
            if clash not in told and fill.id not in doubled:
                told.add(clash)
                yield _clash(scene, clash, "memory", "fills", index, "groups", _group_of(clash, fill.areas), "base")
    for index, (outfit, written) in enumerate(zip(scene.workup.outfits, scene.machine.configurations, strict=True)):
        for clash in _clashes(outfit.map) if outfit.map else ():
            if clash not in told and written.fill not in doubled:
                told.add(clash)
                yield _clash(scene, clash, "configurations", index)


def _has_a_bank_again(fill: Fill) -> bool:
    """Whether a bank is in two groups, which is told as such: that these answer twice only follows."""
    names = [name for group in fill.groups for name in group.banks]
    return len(names) > len(set(names))


def _clashes(figures: MapFigures) -> Iterator[Overlap]:
    """What is claimed twice, without what lies beyond the map and is told for that."""
    return (clash for clash in figures.overlaps if not {clash.one, clash.other} & set(figures.beyond))


def _group_of(clash: Overlap, groups: Sequence[AreaFigures]) -> int:
    """The group of a filling that a clash is about: the later of two, or the only one."""
    names = [area.name for area in groups]
    return names.index(clash.other if clash.other in names else clash.one)


def _clash(scene: MachineScene, clash: Overlap, *path: str | int) -> Mistake:
    words = {"one": clash.one, "other": clash.other, "first": clash.first, "last": clash.last}
    return scene.mistake(SENSE_12, *path, **words)
