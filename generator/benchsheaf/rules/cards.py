"""Whether cards fit beside each other: no port answered twice, no line used twice that is not shared."""

from collections.abc import Iterator, Sequence

from benchsheaf.compute.card_conflicts import LineUser, PortClash, PortFigures, decoded_line, port_number
from benchsheaf.compute.workup import CardWorkup
from benchsheaf.mistakes import Code, Mistake
from benchsheaf.model.cards import Bus, Card
from benchsheaf.model.signals import PortRange
from benchsheaf.rules.scene import MachineScene, PartScene, Scene

SENSE_60 = Code(
    id="SENSE-60",
    meaning="Two things that are plugged in together answer at the same ports.",
    words="{one} and {other} both answer at {ports}. {cure}",
    example={
        "one": "Fixed disks of OV-DK1 in SL4",
        "other": "Clock of OV-LN3 in SL5",
        "ports": "P100–P107",
        "cure": "Neither can be set otherwise: one of these ports is wrong, or one of the two has to go.",
    },
)
SENSE_61 = Code(
    id="SENSE-61",
    meaning="Two things that are plugged in together use a line that is not shared.",
    words="{one} and {other} both use {line}, which is not shared. {cure}",
    example={
        "one": "OV-LN3 in SL5",
        "other": "OV-SR2 in SL1",
        "line": "Q3",
        "cure": "Set W4 of OV-LN3 otherwise.",
    },
)
SENSE_62 = Code(
    id="SENSE-62",
    meaning="Ports lie beyond the last one that the bus has.",
    words="{name} would answer up to {last}, and {bus} has {ports} ports. Mend `first` or `count`.",
    example={"name": "Fixed disks", "last": "P20F", "bus": "L-bus", "ports": "512"},
)
SENSE_63 = Code(
    id="SENSE-63",
    meaning="A line that is not decoded is no address line of a port.",
    words="Ports are decoded from A0 to A15. Write the address lines that are left out, for example `A4`.",
)


def card_mistakes(scene: MachineScene) -> Iterator[Mistake]:
    """Ports and lines of every outfit; what the machine's own boards do among themselves is told at them."""
    machine = scene.machine
    bus = scene.collection.buses[machine.bus] if machine.bus else None
    yield from _range_mistakes(scene, machine.ports, bus)
    told: set[tuple[str, ...]] = set()
    beyond = {each.id for each in machine.ports if _is_beyond(each, bus)}
    for index, figures in enumerate(scene.workup.outfits):
        for clash in figures.ports.clashes:
            pair = [figures.ports.answering[clash.one], figures.ports.answering[clash.other]]
            names = ("port", *sorted(f"{each.card}/{each.id}" for each in pair))
            if any(each.card is None and each.id in beyond for each in pair):
                continue  # whom it meets on that way follows
            if names not in told and (pair[0].card is None or pair[0].slot != pair[1].slot):
                told.add(names)
                yield _port_clash(scene, index, pair, clash)
        for line in figures.lines:
            users = list({(user.card, user.slot): user for user in line.users}.values())
            names = ("line", line.line, *sorted(str(user.card) for user in users))
            if line.clash and names not in told:
                told.add(names)
                yield _line_clash(scene, index, line.line, users)


def own_port_mistakes(scene: PartScene) -> Iterator[Mistake]:
    """The ports of a card by themselves; nothing for other kinds."""
    card, workup = scene.part, scene.workup
    if not isinstance(card, Card) or not isinstance(workup, CardWorkup):
        return
    yield from _range_mistakes(scene, card.ports, scene.buses[card.bus])
    for clash in workup.ports.clashes:
        pair = [workup.ports.answering[clash.one], workup.ports.answering[clash.other]]
        yield _at_own(scene, card.ports, pair, clash)


def _is_beyond(ports: PortRange, bus: Bus | None) -> bool:
    """Whether a range goes beyond the last port of a bus."""
    return bool(bus and bus.ports and port_number(ports.first) + ports.count > bus.ports)


def _range_mistakes(scene: Scene, ports: Sequence[PortRange], bus: Bus | None) -> Iterator[Mistake]:
    """Ranges that go beyond the bus, and lines that are none of a port's address."""
    for index, each in enumerate(ports):
        if bus and bus.ports and _is_beyond(each, bus):
            last = port_number(each.first) + each.count - 1
            words = {"name": each.name, "last": f"P{last:03X}", "bus": bus.name, "ports": f"{bus.ports:,}"}
            yield scene.mistake(SENSE_62, "ports", index, "first", **words)
        for number, name in enumerate(each.ignores):
            if decoded_line(name) is None:
                yield scene.mistake(SENSE_63, "ports", index, "ignores", number)


def _port_clash(scene: MachineScene, index: int, pair: Sequence[PortFigures], clash: PortClash) -> Mistake:
    if all(each.card is None for each in pair):
        return _at_own(scene, scene.machine.ports, pair, clash)
    cards = [each.card for each in pair if each.card]
    words = {"ports": _runs(clash), "cure": _cure(scene, cards, None)}
    names = [_named(scene, each) for each in pair]
    path = _slot_path(scene, index, [each.slot for each in pair])
    return scene.mistake(SENSE_60, *path, one=names[0], other=names[1], **words)


def _at_own(scene: Scene, ports: Sequence[PortRange], pair: Sequence[PortFigures], clash: PortClash) -> Mistake:
    """Two of one description: told at the one that stands later in it."""
    places = [next(place for place, each in enumerate(ports) if each.id == one.id) for one in pair]
    words = {"one": pair[0].name, "other": pair[1].name, "ports": _runs(clash), "cure": "One of these ports is wrong."}
    return scene.mistake(SENSE_60, "ports", max(places), "first", **words)


def _line_clash(scene: MachineScene, index: int, line: str, users: Sequence[LineUser]) -> Mistake:
    names = [_user(scene, user) for user in users]
    cure = _cure(scene, [user.card for user in users if user.card], line)
    path = _slot_path(scene, index, [user.slot for user in users])
    return scene.mistake(SENSE_61, *path, one=", ".join(names[:-1]), other=names[-1], line=line, cure=cure)


def _user(scene: MachineScene, user: LineUser) -> str:
    if user.card is None:
        return f"{user.name} on the machine's own boards"
    return f"{scene.collection.cards[user.card].name} in {user.slot}"


def _named(scene: MachineScene, each: PortFigures) -> str:
    return f"{each.name} of {scene.collection.cards[each.card].name} in {each.slot}" if each.card else each.name


def _slot_path(scene: MachineScene, index: int, slots: Sequence[str | None]) -> tuple[str | int, ...]:
    """The line of an outfit that puts the last of some cards into its slot; the outfit's own where there is none."""
    filled = [number for number, each in enumerate(scene.machine.configurations[index].slots) if each.slot in slots]
    return ("configurations", index, "slots", filled[-1], "holds") if filled else ("configurations", index)


def _cure(scene: MachineScene, cards: Sequence[str], line: str | None) -> str:
    """What can be set so that they no longer meet: the switches on which a line of theirs depends."""
    switches = [
        f"{setting.switch} of {scene.collection.cards[slug].name}"
        for slug in dict.fromkeys(cards)
        for use in scene.collection.cards[slug].by_setting
        if line in [each.line for each in use.lines]
        for setting in use.set
    ]
    if switches:
        return f"Set {' or '.join(dict.fromkeys(switches))} otherwise."
    return "Neither can be set otherwise: one of these is wrong, or one of the two has to go."


def _runs(clash: PortClash) -> str:
    said = [run.first if run.count == 1 else f"{run.first}–{run.last}" for run in clash.runs[:4]]
    return ", ".join(said) + (" and more" if len(clash.runs) > len(said) else "")
