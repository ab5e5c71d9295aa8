"""Back into service: procedures of the machine and of what it holds, step by step."""

from collections.abc import Sequence
from dataclasses import dataclass

from benchsheaf.compute.removal import ReachFigures
from benchsheaf.links import Thing
from benchsheaf.markup import Markup
from benchsheaf.model.bench import Procedure, ProcedureStep
from benchsheaf.model.inherited import OwnedProcedure
from benchsheaf.model.machine import Machine
from benchsheaf.pages.bench.ways import Led, OwnerView, Ways, anchor, machine_ways, whose
from benchsheaf.pages.glance import sheet_cautions
from benchsheaf.pages.shelf import Desk
from benchsheaf.pages.views import CautionView, brief_caution


@dataclass(frozen=True, kw_only=True, slots=True)
class StepView:
    """A step with the parts that the hand is on."""

    step: ProcedureStep
    parts: Sequence[Markup]


@dataclass(frozen=True, kw_only=True, slots=True)
class ProcedureView:
    """A procedure: the dangers that stand before it, what must be off, its steps."""

    anchor: str
    procedure: Procedure
    owner: OwnerView | None
    of: Thing | None
    cautions: Sequence[CautionView]
    off: Sequence[Led]
    reach: ReachFigures | None
    steps: Sequence[StepView]


@dataclass(frozen=True, kw_only=True, slots=True)
class ServiceSheet:
    """The sheet about going back into service."""

    cautions: Sequence[CautionView]
    procedures: Sequence[ProcedureView]


def service_sheet(desk: Desk, machine: Machine) -> ServiceSheet:
    """What the sheet says."""
    ways = machine_ways(desk, machine)
    reach = {each.name: each for each in desk.shelf.workup.machines[machine.slug].bench.procedures}
    return ServiceSheet(
        cautions=sheet_cautions(desk, machine, "service"),
        procedures=[procedure_view(ways, each, reach[name]) for name, each in ways.bench.procedures.items()],
    )


def procedure_view(ways: Ways, each: OwnedProcedure, reach: ReachFigures | None = None) -> ProcedureView:
    """One procedure; `reach` is what must come off on the machine of the page."""
    place = anchor("procedure", each.name)
    return ProcedureView(
        anchor=place,
        procedure=each.procedure,
        owner=ways.owner(each.owner),
        of=whose(each.owner),
        cautions=[brief_caution(ways.desk, place, name) for name in each.procedure.cautions],
        off=ways.removals(reach.way if reach else each.procedure.removed),
        reach=reach,
        steps=[
            StepView(step=step, parts=[ways.part(each.owner, name) for name in step.parts])
            for step in each.procedure.steps
        ],
    )
