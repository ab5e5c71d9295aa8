"""The checks, faults and procedures of something shared, on its own page."""

from collections.abc import Sequence
from dataclasses import dataclass

from benchsheaf.model.inherited import Held
from benchsheaf.pages.bench.check_views import CheckView, check_view
from benchsheaf.pages.bench.checks import ordered_checks
from benchsheaf.pages.bench.faults import FaultView, fault_view
from benchsheaf.pages.bench.service import ProcedureView, procedure_view
from benchsheaf.pages.bench.ways import Led, part_ways
from benchsheaf.pages.shelf import Desk


@dataclass(frozen=True, kw_only=True, slots=True)
class PartBench:
    """What belongs to a part wherever it sits; `finding` leads to the machines on which its faults show."""

    checks: Sequence[CheckView]
    faults: Sequence[FaultView]
    procedures: Sequence[ProcedureView]
    finding: Sequence[Led]


def part_sections(desk: Desk, kind: str, thing: Held) -> PartBench:
    """The sections of one part."""
    ways = part_ways(desk, kind, thing)
    bench = ways.bench
    weight_sum = sum(each.weight for each in bench.faults.values())
    holders = dict.fromkeys(pointer.thing[1] for pointer in desk.shelf.links.held_by.get((kind, thing.slug), ()))
    machines = [machine for slug in holders if (machine := desk.shelf.collection.machines.get(slug))]
    return PartBench(
        checks=[check_view(ways, bench.checks[name]) for name in ordered_checks(bench)],
        faults=[fault_view(ways, each, weight_sum) for each in bench.faults.values()],
        procedures=[procedure_view(ways, each) for each in bench.procedures.values()],
        finding=[
            Led(words=machine.name, way=desk.sheet("finding", "faults", machine.slug))
            for machine in machines
            if machine.symptoms
        ],
    )
