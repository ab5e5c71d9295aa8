"""Whether checks can be done in some order, and whether their outcomes and readings say what they mean."""

from collections.abc import Iterator

from benchsheaf.mistakes import Code, Mistake
from benchsheaf.model.bench import Check
from benchsheaf.model.inherited import Bench
from benchsheaf.rules.scene import MachineScene, PartScene, Path, Scene

SENSE_75 = Code(
    id="SENSE-75",
    meaning="A check waits for itself, by way of stages or of what is plugged in.",
    words="This goes round in a circle, each waiting for the next: {circle}. "
    "One of these lines has to go, here or in the other file.",
    example={"circle": "picture → ov-hd14/reads-all → picture"},
)
SENSE_76 = Code(
    id="SENSE-76",
    meaning="A check that is not reached would look healthy.",
    words="`{outcome}` is the healthy outcome: a check that cannot be reached must not look healthy. "
    "Name what is seen then, or leave `unreached` out where it tells nothing.",
    example={"outcome": "usual"},
)
SENSE_77 = Code(
    id="SENSE-77",
    meaning="The first outcome of a check is not a healthy one.",
    words="The first outcome is the healthy one, and this has a `{field}`. Put the healthy outcome first.",
    example={"field": "stop"},
)
SENSE_78 = Code(
    id="SENSE-78",
    meaning="A low reading would give the healthy outcome.",
    words="`{outcome}` is the healthy outcome, and a low reading is not healthy. Name the outcome that it shows.",
    example={"outcome": "usual"},
)
SENSE_79 = Code(
    id="SENSE-79",
    meaning="A reading is held against a limit that its rail does not have.",
    words="The rail {rail} has no `{field}` to hold this reading against. Add it to the rail, or take this reading "
    "off.",
    example={"rail": "-12 V", "field": "to_ground"},
)
SENSE_80 = Code(
    id="SENSE-80",
    meaning="A check before power needs power.",
    words="`{check}` is done with power on, and what stands here is done before any power. "
    "Take it off this list, or do it with power off.",
    example={"check": "supply-alone"},
)

LIMITS = {"to-ground": "to_ground", "ripple": "ripple"}
"""Limits that a rail need not have, and the field of each."""


def gate_mistakes(scene: MachineScene | PartScene, bench: Bench) -> Iterator[Mistake]:
    """All checks of a file; circles, rails and what stands before power for a machine only."""
    thing = scene.machine if isinstance(scene, MachineScene) else scene.part
    for number, check in enumerate(thing.checks):
        yield from _outcomes(scene, ("checks", number), check)
    if isinstance(scene, MachineScene):
        for number, name in enumerate(scene.machine.before_power):
            if bench.checks[name].check.power == "on":
                yield scene.mistake(SENSE_80, "before_power", number, check=name)
        yield from _limits(scene)
        yield from _circle(scene, bench)


def _outcomes(scene: Scene, path: Path, check: Check) -> Iterator[Mistake]:
    healthy = check.outcomes[0]
    if check.unreached == healthy.id:
        yield scene.mistake(SENSE_76, *path, "unreached", outcome=healthy.id)
    field = next((each for each in ("condition", "stop") if getattr(healthy, each)), None)
    if field:
        yield scene.mistake(SENSE_77, *path, "outcomes", 0, field, field=field)
    for number, reading in enumerate(check.readings):
        if reading.low_shows == healthy.id:
            yield scene.mistake(SENSE_78, *path, "readings", number, "low_shows", outcome=healthy.id)


def _limits(scene: MachineScene) -> Iterator[Mistake]:
    """Readings of the machine's own checks; a held check reads rails in the words of its own file."""
    rails = {rail.name: rail for rail in scene.machine.rails}
    for number, check in enumerate(scene.machine.checks):
        for index, reading in enumerate(check.readings):
            rail = rails[reading.of]
            given = {"to-ground": rail.to_ground, "ripple": rail.ripple_v}
            if reading.limit in LIMITS and given[reading.limit] is None:
                words = {"rail": rail.name, "field": LIMITS[reading.limit]}
                yield scene.mistake(SENSE_79, "checks", number, "readings", index, "limit", **words)


def _circle(scene: MachineScene, bench: Bench) -> Iterator[Mistake]:
    """The first ring of checks that wait for each other: one is enough, since the rest may be gone with it."""
    gates = {name: (*bench.gates(name), *each.means_after) for name, each in bench.checks.items()}
    ring = _ring(gates)
    if not ring:
        return
    own = next((number for number, check in enumerate(scene.machine.checks) if check.id in ring), None)
    at: Path = ("name",) if own is None else ("checks", own, "id")
    yield scene.mistake(SENSE_75, *at, circle=" → ".join((*ring, ring[0])))


def _ring(gates: dict[str, tuple[str, ...]]) -> list[str]:
    """Names that wait for each other in a circle, each for the next; empty where there is none."""
    left = dict(gates)
    while free := [each for each, before in left.items() if not any(gate in left for gate in before)]:
        for each in free:
            del left[each]
    trail: list[str] = []
    name: str | None = next(iter(left), None)
    while name is not None and name not in trail:
        trail.append(name)
        name = next(each for each in left[name] if each in left)
    return trail[trail.index(name) :] if name is not None else []
