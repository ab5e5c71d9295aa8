"""Whether outfits can be: what fits where, and what the supply carries as delivered."""

from collections.abc import Iterator

from benchsheaf.mistakes import Code, Mistake
from benchsheaf.quantities import printed
from benchsheaf.rules.scene import MachineScene

SENSE_13 = Code(
    id="SENSE-13",
    meaning="As delivered the supply would be overloaded.",
    words="As delivered {rail} takes {start}, and {supply} gives {most}. One of these figures is wrong.",
    example={"rail": "+12 V", "start": "4.35 A", "supply": "SP-96", "most": "3.2 A"},
)
SENSE_14 = Code(
    id="SENSE-14",
    meaning="A card is put into a machine of another bus.",
    words="{card} speaks {own}, and the slots of this machine speak {bus}. One of the two is wrong.",
    example={"card": "OV-TX2", "own": "l-bus", "bus": "k-bus"},
)
SENSE_15 = Code(
    id="SENSE-15",
    meaning="A drive is put into a bay for another kind.",
    words="The bay takes a {takes}, and {drive} is a {kind}. Name another bay, or another drive.",
    example={"takes": "floppy drive", "drive": "OV-HD14", "kind": "fixed disk"},
)
SENSE_16 = Code(
    id="SENSE-16",
    meaning="A slot or a bay of one outfit is filled twice.",
    words="{what} is filled twice in this outfit. One card or drive goes into each.",
    example={"what": "Slot SL2"},
)
SENSE_17 = Code(
    id="SENSE-17",
    meaning="A load resistor's body is too small.",
    words="At the rail's high end it must turn {worst} into heat: take a body of {body} or more.",
    example={"worst": "9.19 W", "body": "25 W"},
)

DRIVE_KINDS = {"fixed-disk": "fixed disk", "floppy": "floppy drive"}


def outfit_mistakes(scene: MachineScene) -> Iterator[Mistake]:
    """All outfits of the machine; only as delivered must the supply carry it."""
    machine = scene.machine
    bays = {bay.id: bay for bay in machine.bays}
    told: set[str] = set()
    for index, outfit in enumerate(machine.configurations):
        path = ("configurations", index)
        yield from _twice(scene, (*path, "slots"), "slot", [filled.slot for filled in outfit.slots])
        yield from _twice(scene, (*path, "bays"), "bay", [filled.bay for filled in outfit.bays])
        for number, filled in enumerate(outfit.slots):
            card = scene.collection.cards[filled.holds]
            if card.bus != machine.bus and card.slug not in told and not (told and machine.bus is None):
                told.add(card.slug)
                words = {"card": card.name, "own": card.bus, "bus": machine.bus or "nothing"}
                yield scene.mistake(SENSE_14, *path, "slots", number, "holds", **words)
        for number, put in enumerate(outfit.bays):
            drive, bay = scene.collection.drives[put.holds], bays[put.bay]
            if drive.kind != bay.takes:
                words = {"takes": DRIVE_KINDS[bay.takes], "drive": drive.name, "kind": DRIVE_KINDS[drive.kind]}
                yield scene.mistake(SENSE_15, *path, "bays", number, "holds", **words)
        for number, (load, figures) in enumerate(
            zip(outfit.loads, scene.workup.outfits[index].power.resistors, strict=True)
        ):
            if figures.body_w is None or load.bears_w < 2 * figures.worst_w:
                body = printed(figures.body_w, "W") if figures.body_w else "several resistors together"
                words = {"worst": printed(figures.worst_w, "W", 2), "body": body}
                yield scene.mistake(SENSE_17, *path, "loads", number, "bears", **words)
    yield from _overloaded(scene)


def _twice(scene: MachineScene, path: tuple[str | int, ...], what: str, names: list[str]) -> Iterator[Mistake]:
    for number, name in enumerate(names):
        if name in names[:number]:
            yield scene.mistake(SENSE_16, *path, number, what, what=f"{what.capitalize()} {name}")


def _overloaded(scene: MachineScene) -> Iterator[Mistake]:
    for figures in scene.workup.outfits[0].power.rails:
        if figures.carried == "no":
            words = {"rail": figures.rail, "start": printed(figures.start_a, "A", 2), "supply": scene.supply.name}
            yield scene.mistake(SENSE_13, "configurations", 0, **words, most=printed(figures.most_a, "A"))
