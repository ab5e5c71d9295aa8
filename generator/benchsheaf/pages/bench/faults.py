"""Finding the fault: complaints in an owner's words, their suspects, and every fault with its fix."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from benchsheaf.compute.fault_weights import SymptomFigures
from benchsheaf.drawing.share_ring import share_ring
from benchsheaf.links import Thing
from benchsheaf.markup import Markup
from benchsheaf.model.bench import Symptom
from benchsheaf.model.inherited import OwnedCheck, OwnedFault, Owner, held_thing
from benchsheaf.model.machine import Machine
from benchsheaf.pages.bench.check_views import changed_checks, how_surely
from benchsheaf.pages.bench.checks import guards, ordered_checks
from benchsheaf.pages.bench.ways import Led, OwnerView, Ways, anchor, machine_ways, whose
from benchsheaf.pages.glance import sheet_cautions
from benchsheaf.pages.shelf import Desk
from benchsheaf.pages.views import CautionView, brief_caution


@dataclass(frozen=True, kw_only=True, slots=True)
class ShownAt:
    """What a fault shows at one check: outcomes, each with how surely."""

    check: Led
    outcomes: Sequence[tuple[str, str]]


@dataclass(frozen=True, kw_only=True, slots=True)
class FaultView:
    """A fault's full entry: it stands once on a machine's sheets, and once on the page of what it belongs to.

    `all_healthy` where no check shows it; the page of a part cannot say so, for it does not know the machine's checks.
    """

    anchor: str
    fault: OwnedFault
    ring: Markup
    weight_sum: int
    owner: OwnerView | None
    of: Thing | None
    parts: Sequence[Markup]
    shows: Sequence[ShownAt]
    all_healthy: bool
    procedures: Sequence[Led]
    symptoms: Sequence[Led]
    repairs: Sequence[Led]


@dataclass(frozen=True, kw_only=True, slots=True)
class SuspectView:
    """A fault behind a complaint, with its weight of the sum of all suspects."""

    fault: OwnedFault
    led: Led
    owner: OwnerView | None
    of: Thing | None
    ring: Markup
    weight: int


@dataclass(frozen=True, kw_only=True, slots=True)
class CheckRow:
    """A check on the way of a complaint: how many suspects it can speak against or for, or that it only makes safe."""

    led: Led
    check: OwnedCheck
    tells: int
    guards: bool


@dataclass(frozen=True, kw_only=True, slots=True)
class SymptomView:
    """A complaint: what the words prove already, its suspects, and the checks that these change."""

    anchor: str
    symptom: Symptom
    weight_sum: int
    known: Sequence[tuple[Led, str]]
    suspects: Sequence[SuspectView]
    checks: Sequence[CheckRow]


@dataclass(frozen=True, kw_only=True, slots=True)
class FaultGroup:
    """The faults of one owner."""

    owner: OwnerView | None
    name: str
    cautions: Sequence[CautionView]
    faults: Sequence[FaultView]


@dataclass(frozen=True, kw_only=True, slots=True)
class FindingSheet:
    """The sheet about finding the fault."""

    cautions: Sequence[CautionView]
    guards: Sequence[Led]
    symptoms: Sequence[SymptomView]
    groups: Sequence[FaultGroup]
    weight_sum: int
    worth_repairs: int
    records: int
    records_way: str | None


def finding_sheet(desk: Desk, machine: Machine) -> FindingSheet:
    """What the sheet says."""
    ways = machine_ways(desk, machine)
    workup = desk.shelf.workup.machines[machine.slug].bench
    repairs = desk.shelf.collection.repairs_of.get(machine.slug, ())
    figures = {each.id: each for each in workup.symptoms}
    order = ordered_checks(ways.bench)
    return FindingSheet(
        cautions=sheet_cautions(desk, machine, "finding"),
        guards=guards(ways),
        symptoms=[_symptom(ways, each, figures[each.id], order) for each in machine.symptoms],
        groups=list(_groups(ways, workup.weight_sum)),
        weight_sum=workup.weight_sum,
        worth_repairs=workup.worth_repairs,
        records=len(repairs),
        records_way=desk.sheet("repairs") if repairs else None,
    )


def _symptom(ways: Ways, symptom: Symptom, figures: SymptomFigures, order: Sequence[str]) -> SymptomView:
    faults = [ways.bench.faults[each.fault] for each in figures.suspects]
    return SymptomView(
        anchor=anchor("symptom", symptom.id),
        symptom=symptom,
        weight_sum=figures.weight_sum,
        known=[(ways.check(each.check), ways.says(each.check, each.outcome)) for each in symptom.known],
        suspects=[
            SuspectView(
                fault=each,
                led=ways.fault(each.name),
                owner=ways.owner(each.owner),
                of=whose(each.owner),
                ring=share_ring(each.weight, figures.weight_sum),
                weight=each.weight,
            )
            for each in faults
        ],
        checks=list(_checks(ways, symptom, faults, order)),
    )


def _checks(ways: Ways, symptom: Symptom, suspects: Sequence[OwnedFault], order: Sequence[str]) -> Iterator[CheckRow]:
    """The checks that suspects change, with those that gate them for safety, none before its gates.

    What the complaint itself proves need not be asked again, and opens all but what guards the power.
    """
    bench = ways.bench
    proved = {known.check for known in symptom.known} - set(bench.before_power)
    wanted = [name for name in changed_checks(suspects) if name not in proved]
    found: set[str] = set()
    while wanted:
        name = wanted.pop()
        if name not in found:
            found.add(name)
            wanted += [gate for gate in bench.gates(name) if gate not in proved]
    for name in order:
        if name in found:
            tells = sum(any(shows.check == name for shows in fault.shows) for fault in suspects)
            each = bench.checks[name]
            yield CheckRow(led=ways.check(name), check=each, tells=tells, guards=name in bench.before_power)


def _groups(ways: Ways, weight_sum: int) -> Iterator[FaultGroup]:
    """All faults by whose they are, the page's own first."""
    behind = _behind(ways)
    records = _records(ways)
    for owner in ways.bench.owners:
        own = [each for each in ways.bench.faults.values() if each.owner.slug == owner.slug]
        if own:
            views = [
                fault_view(ways, each, weight_sum, behind.get(each.name, ()), records.get(each.name, ()))
                for each in own
            ]
            yield FaultGroup(
                owner=ways.owner(owner), name=owner.name, cautions=_dangers(ways.desk, owner), faults=views
            )


def _dangers(desk: Desk, owner: Owner) -> list[CautionView]:
    """What waits in something held, each danger once: the hand that fixes it is far below the head of the sheet."""
    if owner.kind == "machine":
        return []
    thing = held_thing(desk.shelf.collection, owner.kind, owner.slug)
    kinds = [each.caution for each in getattr(thing, "cautions", ())]
    if getattr(thing, "reservoir", None) is not None:
        kinds.insert(0, "stored-charge")
    known = desk.shelf.collection.cautions
    return [brief_caution(desk, f"faults-{owner.slug}", name) for name in dict.fromkeys(kinds) if name in known]


def fault_view(
    ways: Ways, each: OwnedFault, weight_sum: int, symptoms: Sequence[Led] = (), repairs: Sequence[Led] = ()
) -> FaultView:
    """The full entry of a fault; `weight_sum` is that of all faults that stand beside it."""
    return FaultView(
        anchor=anchor("fault", each.name),
        fault=each,
        ring=share_ring(each.weight, weight_sum),
        weight_sum=weight_sum,
        owner=ways.owner(each.owner),
        of=whose(each.owner),
        parts=[ways.part(each.owner, name) for name in each.fault.parts],
        shows=[_shown_at(ways, each, name) for name in changed_checks([each])],
        all_healthy=ways.machine is not None and not each.shows,
        procedures=ways.steps(each.owner, each.fault.fix.procedures),
        symptoms=symptoms,
        repairs=repairs,
    )


def _shown_at(ways: Ways, fault: OwnedFault, name: str) -> ShownAt:
    rows = [shows for shows in fault.shows if shows.check == name]
    by = ways.bench.checks[name].check.by
    return ShownAt(
        check=ways.check(name),
        outcomes=[(ways.says(name, row.outcome), how_surely(row, rows, by)) for row in rows],
    )


def _behind(ways: Ways) -> Mapping[str, Sequence[Led]]:
    """The complaints that each fault can be behind."""
    found: dict[str, list[Led]] = {}
    for symptom in ways.machine.symptoms if ways.machine else ():
        way = ways.desk.sheet("finding", anchor("symptom", symptom.id))
        for name in symptom.suspects:
            found.setdefault(name, []).append(Led(words=ways.desk.worded(symptom.says), way=way))
    return found


def _records(ways: Ways) -> Mapping[str, Sequence[Led]]:
    """The repair records that found each fault."""
    found: dict[str, list[Led]] = {}
    desk = ways.desk
    repairs = desk.shelf.collection.repairs_of.get(ways.machine.slug, ()) if ways.machine else ()
    for repair in repairs:
        for name in repair.found:
            found.setdefault(name, []).append(
                Led(words=f"{repair.date}: {desk.worded(repair.owner)}", way=desk.repair(repair.slug))
            )
    return found
