"""Whether a list that holds one entry for a thing holds two, and whether each contact carries one thing."""

from collections.abc import Iterator

from benchsheaf.mistakes import Code, Mistake
from benchsheaf.model.boards import Draw, Pin
from benchsheaf.model.memory import Setting
from benchsheaf.model.supply import Output
from benchsheaf.rules.scene import BusScene, MachineScene, PartScene
from benchsheaf.rules.within import Path, within

SENSE_22 = Code(
    id="SENSE-22",
    meaning="One thing has two entries in a list that has one for each.",
    words="{name} has an entry in this list already, at {first}. Make one of the two.",
    example={"name": "+12 V", "first": "machines/sketch-1/boards.yml:12"},
)
SENSE_28 = Code(
    id="SENSE-28",
    meaning="A contact carries nothing, or two things.",
    words="Contact {pin} has {what}. A contact has one of three: a rail, a signal, or `key: yes` where it is left out.",
    example={"pin": "3", "what": "a rail and a signal"},
)


def entry_mistakes(scene: MachineScene | PartScene | BusScene) -> Iterator[Mistake]:
    """Draws, outputs, settings and contacts of a machine or of a shared part."""
    record = _record(scene)
    # A load that only a warm machine has stands beside the one that it always has.
    draws = [(path, "rail", draw.rail, bool(draw.warm)) for path, draw in within(record, Draw)]
    outputs = [(path, "rail", output.rail, False) for path, output in within(record, Output)]
    settings = [(path, "switch", each.switch, False) for path, each in within(record, Setting)]
    first: dict[tuple[Path, str, bool], Path] = {}
    for path, field, name, apart in (*draws, *outputs, *settings):
        other = first.setdefault((path[:-1], name, apart), path)
        if other != path:
            place = scene.conformed.entry.place(other)
            yield scene.mistake(SENSE_22, *path, field, name=name, first=f"{place.file}:{place.line}")
    for path, pin in within(record, Pin):
        what = _not_one(pin)
        if what:
            yield scene.mistake(SENSE_28, *path, "pin", pin=pin.pin, what=what)


def _record(scene: MachineScene | PartScene | BusScene) -> object:
    if isinstance(scene, MachineScene):
        return scene.machine
    return scene.bus if isinstance(scene, BusScene) else scene.part


def _not_one(pin: Pin) -> str:
    """What a contact has instead of one thing, in words; nothing for one that is right."""
    has = [words for words, there in (("a rail", pin.rail), ("a signal", pin.signal), ("`key: yes`", pin.key)) if there]
    return "" if len(has) == 1 else " and ".join(has) or "neither a rail nor a signal"
