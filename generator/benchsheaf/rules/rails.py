"""Whether rails, their windows, their readings to ground and their wires agree with each other."""

from collections.abc import Iterator

from benchsheaf.mistakes import Code, Mistake
from benchsheaf.quantities import printed, printed_range
from benchsheaf.rules.scene import MachineScene
from benchsheaf.standards import MOST_EXTRA_W

SENSE_01 = Code(
    id="SENSE-01",
    meaning="A rail's nominal voltage lies outside its own window.",
    words="The nominal voltage lies outside the window of {window}. A minus rail has minus signs in all three.",
    example={"window": "11.40–12.60 V"},
)
SENSE_02 = Code(
    id="SENSE-02",
    meaning='"No power below" would leave too much extra power in one part.',
    words="At this reading one part would turn {extra} extra into heat; at most {most} is safe. Give a higher figure.",
    example={"extra": "2.61 W", "most": "1 W"},
)
SENSE_03 = Code(
    id="SENSE-03",
    meaning="The three figures of resistance to ground are not in order.",
    words="No power below ({no_power}) must be under doubtful below ({doubtful}), and that under the usual ({usual}).",
    example={"no_power": "140 Ω", "doubtful": "80 Ω", "usual": "1.8–3.0 kΩ"},
)
SENSE_04 = Code(
    id="SENSE-04",
    meaning="A wire on a rail has another colour than the rail's own.",
    words="The rail {rail} has {own} wires (see `rails`). One of the two is wrong.",
    example={"rail": "+5 V", "own": "violet"},
)
SENSE_05 = Code(
    id="SENSE-05",
    meaning="The supply is not made for the machine's mains.",
    words="{supply} is for {range} only, and the machine's mains is {mains}. One of the two is wrong.",
    example={"supply": "SP-96", "range": "220–240 V", "mains": "115 V"},
)
SENSE_06 = Code(
    id="SENSE-06",
    meaning="A rail of the machine comes from no output of its supply.",
    words="{supply} has no output for this rail. Its outputs are {outputs}. Add one there, or mend the name here.",
    example={"supply": "SP-96", "outputs": "+5 V, +12 V and −12 V"},
)
SENSE_21 = Code(
    id="SENSE-21",
    meaning="A rail's window holds 0 V.",
    words="A rail is never at 0 V. Both ends of its window lie on one side of it; a minus rail has two minus signs.",
)

SENSE_26 = Code(
    id="SENSE-26",
    meaning="The nominal mains voltage lies outside what the machine's own plate allows.",
    words="The nominal voltage lies outside the {range} of this machine's own plate. One of them is wrong.",
    example={"range": "100–120 V"},
)


def rail_mistakes(scene: MachineScene) -> Iterator[Mistake]:
    """Rails against themselves, the supply and the plugs."""
    extra = {figures.rail: figures.extra_w for figures in scene.workup.ground}
    outputs = {output.rail for output in scene.supply.outputs}
    for index, rail in enumerate(scene.machine.rails):
        if rail.window.low_v <= 0 <= rail.window.high_v:
            yield scene.mistake(SENSE_21, "rails", index, "window", "low")
        elif not rail.window.low_v <= rail.nominal_v <= rail.window.high_v:
            window = printed_range(rail.window.low_v, rail.window.high_v, "V")
            yield scene.mistake(SENSE_01, "rails", index, "nominal", window=window)
        if rail.to_ground and not _in_order(scene, index):
            ground = rail.to_ground
            yield scene.mistake(
                SENSE_03,
                *("rails", index, "to_ground", "no_power_below"),
                no_power=printed(ground.no_power_below_ohm, "ohm"),
                doubtful=printed(ground.doubtful_below_ohm, "ohm"),
                usual=printed_range(ground.usual.low_ohm, ground.usual.high_ohm, "ohm"),
            )
        elif rail.to_ground and extra[rail.name] > MOST_EXTRA_W:
            words = {"extra": printed(extra[rail.name], "W", 2), "most": printed(MOST_EXTRA_W, "W")}
            yield scene.mistake(SENSE_02, "rails", index, "to_ground", "no_power_below", **words)
        if rail.name not in outputs:
            names = ", ".join(output.rail for output in scene.supply.outputs)
            yield scene.mistake(SENSE_06, "rails", index, "name", supply=scene.supply.name, outputs=names)
    yield from _mains(scene)
    yield from _colours(scene)


def _in_order(scene: MachineScene, index: int) -> bool:
    ground = scene.machine.rails[index].to_ground
    return ground is None or ground.no_power_below_ohm < ground.doubtful_below_ohm <= ground.usual.low_ohm


def _mains(scene: MachineScene) -> Iterator[Mistake]:
    own, mains = scene.machine.mains, scene.supply.mains
    if not own.low_v <= own.nominal_v <= own.high_v:
        yield scene.mistake(SENSE_26, "mains", "nominal", range=printed_range(own.low_v, own.high_v, "V"))
    elif not mains.low_v <= own.nominal_v <= mains.high_v:
        yield scene.mistake(
            SENSE_05,
            *("mains", "nominal"),
            supply=scene.supply.name,
            range=printed_range(mains.low_v, mains.high_v, "V"),
            mains=printed(own.nominal_v, "V"),
        )


def _colours(scene: MachineScene) -> Iterator[Mistake]:
    colours = {rail.name: rail.colour for rail in scene.machine.rails}
    for plug, connector in enumerate(scene.machine.connectors):
        for row, contacts in enumerate(connector.rows):
            for index, pin in enumerate(contacts.pins):
                own = colours.get(pin.rail or "")
                if own and pin.colour and pin.colour != own:
                    path = ("connectors", plug, "rows", row, "pins", index, "colour")
                    yield scene.mistake(SENSE_04, *path, rail=pin.rail or "", own=own)
