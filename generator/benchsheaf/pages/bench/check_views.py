"""A check as a page shows it: its gates, what must be off, its outcomes with what changes them, its limits here."""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from decimal import Decimal

from benchsheaf.compute.removal import ReachFigures
from benchsheaf.links import Thing
from benchsheaf.model.bench import Check, Outcome, Reading, Shows
from benchsheaf.model.inherited import OwnedCheck, OwnedFault
from benchsheaf.model.machine import Rail
from benchsheaf.pages.bench.ways import Led, OwnerView, Ways, anchor, whose
from benchsheaf.pages.printing import quantity, rail_name, span, words


@dataclass(frozen=True, kw_only=True, slots=True)
class ShownBy:
    """A fault behind an outcome, and how surely it shows."""

    fault: Led
    words: str


@dataclass(frozen=True, kw_only=True, slots=True)
class OutcomeView:
    """An outcome: the first is the healthy one; a condition shows a weak part and is no evidence."""

    outcome: Outcome
    healthy: bool
    unreached: bool
    condition: Led | None
    prevalence_share: Decimal | None
    shown_by: Sequence[ShownBy]


@dataclass(frozen=True, kw_only=True, slots=True)
class ReadingView:
    """A reading with the limits that hold on this machine, or without them on the page of something shared."""

    rail: str
    against: str
    limits: Sequence[tuple[str, str]]
    low: str | None


@dataclass(frozen=True, kw_only=True, slots=True)
class CheckView:
    """A check with all that stands around it."""

    anchor: str
    check: Check
    owner: OwnerView | None
    of: Thing | None
    by: str
    off: Sequence[Led]
    reach: ReachFigures | None
    after: Sequence[Led]
    own_after: Sequence[Led]  # without those that gate everything under power
    means_after: Sequence[Led]
    stages: Sequence[str]
    means_stages: Sequence[str]
    proves: str | None
    outcomes: Sequence[OutcomeView]
    readings: Sequence[ReadingView]
    guards: bool  # among those that must be healthy before any power


BY = {
    "senses": "Eyes, ears, nose or finger",
    "meter": "A meter",
    "instrument": "An instrument",
    "trial": "Trying it",
}
LIMITS = {"to-ground": "resistance to ground", "window": "voltage", "ripple": "ripple"}


def check_view(ways: Ways, each: OwnedCheck, reach: ReachFigures | None = None) -> CheckView:
    """One check; `reach` is what must come off on the machine of the page."""
    check, bench = each.check, ways.bench
    alone = ways.machine is None
    shown = shown_by(ways, each)
    return CheckView(
        anchor=anchor("check", each.name),
        check=check,
        owner=ways.owner(each.owner),
        of=whose(each.owner),
        by=BY[check.by] if check.by else "",
        off=ways.removals(reach.way if reach else check.removed),
        reach=reach,
        after=[ways.check(name) for name in bench.gates(each.name)],
        own_after=[ways.check(name) for name in each.after if name not in bench.before_power],
        means_after=[ways.check(name) for name in each.means_after],
        stages=[words(stage) for stage in check.after_stage] if alone else (),
        means_stages=[words(stage) for stage in check.means_after_stage] if alone else (),
        proves=words(check.proves) if check.proves else None,
        outcomes=[_outcome(ways, each, outcome, shown.get(outcome.id, ())) for outcome in check.outcomes],
        readings=[_reading(ways, each, reading) for reading in check.readings],
        guards=each.name in bench.before_power,
    )


def _outcome(ways: Ways, each: OwnedCheck, outcome: Outcome, shown: Sequence[ShownBy]) -> OutcomeView:
    weak = None
    if outcome.condition:
        weak = outcome.condition if "/" in outcome.condition else each.owner.prefix + outcome.condition
    return OutcomeView(
        outcome=outcome,
        healthy=outcome is each.check.outcomes[0],
        unreached=outcome.id == each.check.unreached,
        condition=ways.weak(weak) if weak else None,
        prevalence_share=ways.bench.weak_parts[weak].weak.prevalence_share if weak else None,
        shown_by=shown,
    )


def shown_by(ways: Ways, each: OwnedCheck) -> Mapping[str, Sequence[ShownBy]]:
    """The faults that change a check, under the outcome that they show."""
    found: dict[str, list[ShownBy]] = {}
    for name, fault in ways.bench.faults.items():
        rows = [shows for shows in fault.shows if shows.check == each.name]
        for shows in rows:
            found.setdefault(shows.outcome, []).append(
                ShownBy(fault=ways.fault(name), words=how_surely(shows, rows, each.check.by))
            )
    return found


def how_surely(shows: Shows, rows: Sequence[Shows], by: str | None) -> str:
    """How often a fault shows an outcome, as far as its description says; senses are never certain."""
    if shows.likelihood_share is not None:
        return f"in {quantity(shows.likelihood_share, '%')}"
    several = [row for row in rows if row.likelihood_share is None]
    if len(several) > 1:
        return "or another of its outcomes"
    return "nearly always" if by == "senses" else "always"


def _reading(ways: Ways, each: OwnedCheck, reading: Reading) -> ReadingView:
    rail = next((rail for rail in ways.machine.rails if rail.name == reading.of), None) if ways.machine else None
    return ReadingView(
        rail=rail_name(reading.of),
        against=LIMITS[reading.limit],
        limits=list(rail_limits(rail, reading.limit)) if rail else (),
        low=ways.says(each.name, reading.low_shows) if reading.low_shows else None,
    )


def rail_limits(rail: Rail, limit: str) -> Iterator[tuple[str, str]]:
    """What a reading of a rail is held against, each limit with its name."""
    if limit == "window":
        yield "window", span(rail.window, "V")
    elif limit == "ripple" and rail.ripple_v is not None:
        yield "at most", quantity(rail.ripple_v, "V")
    elif limit == "to-ground" and rail.to_ground:
        yield "usual", span(rail.to_ground.usual, "ohm")
        yield "doubtful below", quantity(rail.to_ground.doubtful_below_ohm, "ohm")
        yield "no power below", quantity(rail.to_ground.no_power_below_ohm, "ohm")


def changed_checks(faults: Iterable[OwnedFault]) -> list[str]:
    """The checks that some faults change, each once."""
    return list(dict.fromkeys(shows.check for each in faults for shows in each.shows))
