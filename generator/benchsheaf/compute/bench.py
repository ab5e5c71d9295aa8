"""What is worked out for a machine's bench: weights of complaints, ways to what must come off, what repairs took."""

from dataclasses import dataclass

from benchsheaf.compute.fault_weights import WORTH_REPAIRS, SymptomFigures, symptom_figures
from benchsheaf.compute.removal import ReachFigures, RemovalFigures, reach_figures, removal_figures
from benchsheaf.compute.repairs import RepairFigures, repair_figures
from benchsheaf.model.collection import Collection
from benchsheaf.model.inherited import machine_bench
from benchsheaf.model.machine import Machine


@dataclass(frozen=True, kw_only=True, slots=True)
class BenchWorkup:
    """What is worked out for the bench: weights of all faults that the machine holds, what must come off, repairs."""

    worth_repairs: int
    weight_sum: int
    symptoms: tuple[SymptomFigures, ...]
    removals: tuple[RemovalFigures, ...]
    checks: tuple[ReachFigures, ...]
    procedures: tuple[ReachFigures, ...]
    repairs: tuple[RepairFigures, ...]


def bench_workup(machine: Machine, collection: Collection) -> BenchWorkup:
    """The weights of a machine's complaints, and the ways to what checks and procedures want off."""
    bench = machine_bench(machine, collection)
    weights = {name: each.weight for name, each in bench.faults.items()}
    minutes = {name: each.check.takes_minutes for name, each in bench.checks.items()}
    fixes = {name: each.fault.fix.takes_minutes for name, each in bench.faults.items()}
    lasting = [name for name, each in bench.faults.items() if each.fault.fix.undo is False]
    return BenchWorkup(
        worth_repairs=WORTH_REPAIRS if machine.worth is None else machine.worth,
        weight_sum=sum(weights.values()),
        symptoms=tuple(symptom_figures(each, weights, lasting) for each in machine.symptoms),
        removals=removal_figures(machine.removals),
        checks=tuple(reach_figures(name, machine.removals, each.check.removed) for name, each in bench.checks.items()),
        procedures=tuple(
            reach_figures(name, machine.removals, each.procedure.removed) for name, each in bench.procedures.items()
        ),
        repairs=tuple(repair_figures(each, minutes, fixes) for each in collection.repairs_of.get(machine.slug, ())),
    )
