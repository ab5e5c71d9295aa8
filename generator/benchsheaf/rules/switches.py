"""Whether switches are read as bits of their own, and whether outfits set what is there."""

from collections.abc import Iterator

from benchsheaf.compute.switches import positions
from benchsheaf.mistakes import Code, Mistake
from benchsheaf.model.cards import Card
from benchsheaf.model.machine import Machine
from benchsheaf.rules.scene import MachineScene, Scene

SENSE_64 = Code(
    id="SENSE-64",
    meaning="Two switches are read as the same bit of one port.",
    words="{other} is bit {bit} of {port} already. Each way has a bit of its own: mend one of the two.",
    example={"other": "S1-1", "bit": "0", "port": "P008"},
)
SENSE_67 = Code(
    id="SENSE-67",
    meaning="The filling as delivered wants a switch otherwise than it is delivered.",
    words="The filling {fill} wants {switch} at {to}, and as delivered it stands at {delivered}. One of them is wrong.",
    example={"fill": "fill-1", "switch": "S1-1", "to": "on", "delivered": "off"},
)
SENSE_68 = Code(
    id="SENSE-68",
    meaning="A bay is at rest in an outfit that has no drive in it.",
    words="No drive is in the bay {bay} in this outfit, so none can be at rest there. Put one there, or take the "
    "bay out of `rests`.",
    example={"bay": "floppy"},
)
SENSE_69 = Code(
    id="SENSE-69",
    meaning="An outfit sets a switch of something that is not plugged in.",
    words="`{slug}` is not plugged in in this outfit, so nothing of it is set. Take this setting out, or plug it in.",
    example={"slug": "ov-dk1"},
)


def bit_mistakes(scene: Scene, thing: object) -> Iterator[Mistake]:
    """Two switches of one thing that are read as one bit; nothing for what has no switches."""
    taken: dict[tuple[str, int], str] = {}
    for index, each in enumerate(thing.switches if isinstance(thing, Machine | Card) else ()):
        if each.read_at is None or each.bit is None:
            continue
        place = each.read_at, each.bit
        if place in taken:
            words = {"other": taken[place], "bit": str(each.bit), "port": each.read_at}
            yield scene.mistake(SENSE_64, "switches", index, "bit", **words)
        taken.setdefault(place, each.switch)


def switch_mistakes(scene: MachineScene) -> Iterator[Mistake]:
    """Bits, the filling as delivered, and what outfits set or let rest."""
    yield from bit_mistakes(scene, scene.machine)
    yield from _filling(scene)
    for index, outfit in enumerate(scene.machine.configurations):
        filled = {each.bay for each in outfit.bays}
        for number, bay in enumerate(outfit.rests):
            if bay not in filled:
                yield scene.mistake(SENSE_68, "configurations", index, "rests", number, bay=bay)
        plugged = {each.holds for each in outfit.slots} | {each.holds for each in outfit.bays}
        plugged |= {scene.machine.supply, outfit.keyboard or ""}
        for number, setting in enumerate(outfit.set):
            slug = setting.switch.rpartition("/")[0]
            if slug and slug not in plugged:
                yield scene.mistake(SENSE_69, "configurations", index, "set", number, "switch", slug=slug)


def _filling(scene: MachineScene) -> Iterator[Mistake]:
    """As delivered the filling must find its switches as it wants them; told at the filling."""
    delivered = scene.machine.configurations[0]
    stands = positions(scene.machine.switches, delivered.set)
    fills = scene.machine.memory.fills if scene.machine.memory else ()
    for index, fill in enumerate(fills):
        for number, setting in enumerate(fill.set if fill.id == delivered.fill else ()):
            found = stands.get(setting.switch, setting.to)
            if found != setting.to:
                path = ("memory", "fills", index, "set", number, "to")
                words = {"fill": fill.id, "switch": setting.switch, "to": setting.to, "delivered": found}
                yield scene.mistake(SENSE_67, *path, **words)
