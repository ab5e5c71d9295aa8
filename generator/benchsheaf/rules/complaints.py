"""Whether suspects can be behind their complaint, and whether lists and repair records say things once, in order."""

from collections.abc import Iterator, Sequence
from dataclasses import replace

from benchsheaf.mistakes import Code, Mistake
from benchsheaf.model.bench import Known, Shows
from benchsheaf.model.inherited import Bench, OwnedFault
from benchsheaf.rules.scene import MachineScene, PartScene, Path, RepairScene, Scene

SENSE_81 = Code(
    id="SENSE-81",
    meaning="What a complaint proves rules out one of its own suspects.",
    words="`known` has `{outcome}` at `{check}`, which this fault never gives: {why}. "
    "Take the suspect off, or that line of `known`.",
    example={
        "outcome": "free",
        "check": "reset",
        "why": "it changes `ready`, which stands before that check, and then `held` is seen",
    },
)
SENSE_82 = Code(
    id="SENSE-82",
    meaning="A list says the same thing twice.",
    words="`{name}` stands in this list already, at line {line}. Once is enough: take one of the two off.",
    example={"name": "c62-short", "line": "12"},
)
SENSE_83 = Code(
    id="SENSE-83",
    meaning="Rounds of a repair record are out of order.",
    words="After round {before} comes round {before} again, or {next} once something was fixed. The first is 1.",
    example={"before": "1", "next": "2"},
)


def complaint_mistakes(scene: MachineScene, bench: Bench) -> Iterator[Mistake]:
    """All symptoms of a machine against the faults and checks that it has."""
    for number, symptom in enumerate(scene.machine.symptoms):
        path = ("symptoms", number)
        yield from _twice(scene, (*path, "known"), [each.check for each in symptom.known], "check")
        for index, suspect in enumerate(symptom.suspects):
            for known in symptom.known:
                why = _why_not(bench, bench.faults[suspect], known, symptom.known)
                if why:
                    words = {"outcome": known.outcome, "check": known.check, "why": why}
                    told = scene.mistake(SENSE_81, *path, "suspects", index, **words)
                    # One line of a check or of `known` may rule out several suspects, for one and the same reason.
                    yield replace(told, about=("ruled out", told.place.file, *words.values()))
                    break


def repeated_rows(scene: MachineScene | PartScene) -> Iterator[Mistake]:
    """Rows of faults that stand twice, and faults that `shows_here` names twice."""
    thing = scene.machine if isinstance(scene, MachineScene) else scene.part
    for number, fault in enumerate(thing.faults):
        yield from _twice(scene, ("faults", number, "shows"), _said(fault.shows), "outcome")
    if isinstance(scene, MachineScene):
        yield from _twice(scene, ("shows_here",), [each.fault for each in scene.machine.shows_here], "fault")
        for number, here in enumerate(scene.machine.shows_here):
            yield from _twice(scene, ("shows_here", number, "shows"), _said(here.shows), "outcome")


def repair_mistakes(scene: RepairScene) -> Iterator[Mistake]:
    """The rounds of one repair record, which go up one by one."""
    before = 1
    for number, entry in enumerate(scene.repair.entries):
        if entry.round not in ({1} if number == 0 else {before, before + 1}):
            words = {"before": str(before), "next": str(before + 1)}
            yield scene.mistake(SENSE_83, "entries", number, "round", **words)
            return
        before = entry.round


def _said(rows: Sequence[Shows]) -> list[str]:
    return [f"{row.check}: {row.outcome}" for row in rows]


def _twice(scene: Scene, path: Path, names: Sequence[str], *field: str) -> Iterator[Mistake]:
    for number, name in enumerate(names):
        if name in names[:number]:
            first = scene.conformed.entry.place((*path, names.index(name), *field))
            yield scene.mistake(SENSE_82, *path, number, *field, name=name, line=str(first.line))


def _why_not(bench: Bench, fault: OwnedFault, known: Known, all_known: Sequence[Known]) -> str | None:
    """Why a fault never shows what is known; None where it may.

    The rule: a check that waits for one which the fault changes, and which is not known to be healthy, shows its
    `unreached` outcome, or nothing of worth where it has none. Else it shows what the fault's rows say, the rest of
    their likelihood being healthy; eyes, ears, noses and fingers may always miss what is there.
    """
    owned = bench.checks[known.check]
    check, healthy = owned.check, owned.check.outcomes[0].id
    if owned.outcome(known.outcome).condition:
        return None  # a condition proves nothing
    good = {each.check for each in all_known if each.outcome == bench.checks[each.check].check.outcomes[0].id}
    changed = {row.check for row in fault.shows}
    first = next((name for name in _all_gates(bench, known.check) if name in changed - good), None)
    if first is not None:
        if check.unreached in (None, known.outcome):
            return None
        return f"it changes `{first}`, which stands before that check, and then `{check.unreached}` is seen"
    rows = [row for row in fault.shows if row.check == known.check]
    if any(row.outcome == known.outcome and row.likelihood_share != 0 for row in rows):
        return None
    if known.outcome != healthy:
        return "none of its rows names that outcome"
    shares = [row.likelihood_share for row in rows]
    if not rows or (check.by == "senses" and None in shares):
        return None
    sure = None in shares or sum(each for each in shares if each is not None) == 1  # more than that is told already
    return "it changes that check for certain" if sure else None


def _all_gates(bench: Bench, name: str) -> list[str]:
    """All checks before one, directly or through others, those before power among them."""
    found: dict[str, None] = {}
    waiting = [name]
    while waiting:
        each = waiting.pop()
        for gate in (*bench.gates(each), *bench.checks[each].means_after):
            if gate not in found and gate != name:
                found[gate] = None
                waiting.append(gate)
    return list(found)
