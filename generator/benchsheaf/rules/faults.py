"""Whether what a fault shows can be: likelihoods, healthy outcomes, conditions, and rows in the right file."""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import replace
from decimal import Decimal

from benchsheaf.mistakes import Code, Mistake
from benchsheaf.model.bench import Check, Shows
from benchsheaf.model.inherited import Bench
from benchsheaf.quantities import printed
from benchsheaf.rules.scene import MachineScene, PartScene, Path, Scene

SENSE_70 = Code(
    id="SENSE-70",
    meaning="The likelihoods of one fault at one check make more than 100 %.",
    words="The likelihoods of this fault at `{check}` make {sum} together, and at most 100 % is possible, since "
    "only one outcome is seen. Lower one of them.",
    example={"check": "start-sound", "sum": "115 %"},
)
SENSE_71 = Code(
    id="SENSE-71",
    meaning="At one check, some rows of a fault have a likelihood and some have none.",
    words="Another row of this fault at `{check}` has none. Give each row a `likelihood`, or none of them: "
    "then they share equally.",
    example={"check": "start-sound"},
)
SENSE_72 = Code(
    id="SENSE-72",
    meaning="A fault names the healthy outcome of a check.",
    words="This is the first outcome of `{check}`, the healthy one, and a fault names only what it changes. "
    "Leave the row out: what the likelihoods of the others leave over is healthy by itself.",
    example={"check": "to-ground"},
)
SENSE_73 = Code(
    id="SENSE-73",
    meaning="A fault shows an outcome that is a condition.",
    words="This outcome of `{check}` has a `condition`: it is dealt with and proves nothing, so no fault can show it. "
    "Point at another outcome, or take `condition` off that one.",
    example={"check": "look"},
)
SENSE_74 = Code(
    id="SENSE-74",
    meaning="A row of `shows_here` belongs into the fault's own file.",
    words="{what} in {where}: put this row into `shows` of that fault there. "
    "`shows_here` is for faults of what is plugged in, at this machine's own checks.",
    example={"what": "Fault and check stand", "where": "machines/_parts/drives/ov-hd14.yml"},
)

HUNDRED = Decimal(1)
CheckNamed = Callable[[str], Check]


def fault_mistakes(scene: MachineScene | PartScene, bench: Bench) -> Iterator[Mistake]:
    """All faults of a file, and in a machine what the faults of held things show here."""
    thing = scene.machine if isinstance(scene, MachineScene) else scene.part

    def named(name: str) -> Check:
        return bench.checks[name].check

    for number, fault in enumerate(thing.faults):
        yield from _rows(scene, ("faults", number, "shows"), fault.shows, named)
    if isinstance(scene, MachineScene):
        for number, here in enumerate(scene.machine.shows_here):
            yield from _rows(scene, ("shows_here", number, "shows"), here.shows, named)
        yield from _misplaced(scene, bench)


def _rows(scene: Scene, path: Path, rows: Sequence[Shows], named: CheckNamed) -> Iterator[Mistake]:
    for number, row in enumerate(rows):
        outcome = next(each for each in named(row.check).outcomes if each.id == row.outcome)
        if outcome is named(row.check).outcomes[0]:
            told = scene.mistake(SENSE_72, *path, number, "outcome", check=row.check)
            # Where the healthy outcome was taken away, all rows at the next one are wrong for that one reason.
            yield replace(told, about=("healthy", told.place.file, row.check))
        elif outcome.condition is not None:
            yield scene.mistake(SENSE_73, *path, number, "outcome", check=row.check)
    for check in dict.fromkeys(row.check for row in rows):
        yield from _likelihoods(scene, path, rows, check)


def _likelihoods(scene: Scene, path: Path, rows: Sequence[Shows], check: str) -> Iterator[Mistake]:
    """The rows of one fault at one check, judged at the last of them that has a likelihood."""
    each: dict[str, tuple[int, Decimal | None]] = {}
    for number, row in enumerate(rows):
        if row.check == check:
            each.setdefault(row.outcome, (number, row.likelihood_share))  # one that stands twice is told already
    given = list(each.values())
    shares = [(number, share) for number, share in given if share is not None]
    if not shares:
        return
    at = (*path, shares[-1][0], "likelihood")
    if len(shares) < len(given):
        yield scene.mistake(SENSE_71, *at, check=check)
    elif (total := sum((share for _, share in shares), Decimal(0))) > HUNDRED:
        yield scene.mistake(SENSE_70, *at, check=check, sum=printed(total, "%"))


def _misplaced(scene: MachineScene, bench: Bench) -> Iterator[Mistake]:
    """Rows about a fault of this file, or at a check of the fault's own file."""
    for number, here in enumerate(scene.machine.shows_here):
        slug = here.fault.rpartition("/")[0]
        if not slug:
            where = scene.conformed.entry.place(("faults",)).file
            yield scene.mistake(SENSE_74, "shows_here", number, "fault", what="The fault stands", where=where)
            continue
        for index, row in enumerate(here.shows):
            if row.check.rpartition("/")[0] == slug:
                at = ("shows_here", number, "shows", index, "check")
                owner = bench.faults[here.fault].owner
                yield scene.mistake(SENSE_74, *at, what="Fault and check stand", where=f"the file of {owner.name}")
