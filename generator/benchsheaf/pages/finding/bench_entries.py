"""What can be found of the bench: complaints, checks, faults, what comes off, procedures, repair records."""

from collections.abc import Callable, Iterator

from benchsheaf.model.bench import Check, Fault, Procedure
from benchsheaf.model.inherited import Held
from benchsheaf.model.machine import Machine
from benchsheaf.pages.bench.ways import anchor
from benchsheaf.pages.finding.entry import Entry
from benchsheaf.pages.finding.picture_entries import On
from benchsheaf.pages.printing import quantity
from benchsheaf.pages.shelf import Desk

Made = Callable[[str, str, str, str], Entry]
"""From kind, title, place and text to an entry."""


def bench_entries(desk: Desk, machine: Machine) -> Iterator[Entry]:
    """Everything that belongs to the machine itself; what its parts bring along is found on their pages."""
    finding, checks, apart, service = (
        On(desk=desk, machine=machine, sheet=name) for name in ("finding", "checks", "apart", "service")
    )
    for symptom in machine.symptoms:
        told = f"{len(symptom.suspects)} suspects" if len(symptom.suspects) > 1 else "one suspect"
        yield finding.entry("Symptom", symptom.says, anchor("symptom", symptom.id), told)
    if machine.symptoms:
        yield from (_fault(finding.entry, each) for each in machine.faults)
    yield from (_check(checks.entry, each) for each in machine.checks)
    for removal in machine.removals:
        told = f"{quantity(removal.off_minutes, 'min')}. {removal.fasteners}"
        yield apart.entry("Removal", removal.name, anchor("removal", removal.id), told)
    yield from (_procedure(service.entry, each) for each in machine.procedures)


def repair_entries(desk: Desk, machine: Machine) -> Iterator[Entry]:
    """The repair records of a machine, by the owner's words."""
    for repair in desk.shelf.collection.repairs_of.get(machine.slug, ()):
        yield Entry(
            kind="Repair record",
            title=repair.owner,
            where=f"{machine.name}, {repair.date}",
            way=desk.repair(repair.slug),
            text=repair.told,
            machines=(machine.slug,),
        )


def part_bench_entries(made: Made, thing: Held) -> Iterator[Entry]:
    """The checks, faults and procedures of something shared, on its own page."""
    yield from (_fault(made, each) for each in thing.faults)
    yield from (_check(made, each) for each in thing.checks)
    procedures: tuple[Procedure, ...] = getattr(thing, "procedures", ())
    yield from (_procedure(made, each) for each in procedures)


def _fault(made: Made, fault: Fault) -> Entry:
    told = " ".join(filter(None, (fault.first_sign, fault.confirm, fault.fix.do)))
    return made("Fault", fault.name, anchor("fault", fault.id), told)


def _check(made: Made, check: Check) -> Entry:
    told = "; ".join(each.says for each in check.outcomes)
    return made("Check", check.name, anchor("check", check.id), f"{check.ask} {told}")


def _procedure(made: Made, procedure: Procedure) -> Entry:
    told = " ".join((procedure.why, *(step.do for step in procedure.steps)))
    return made("Procedure", procedure.name, anchor("procedure", procedure.id), told)
