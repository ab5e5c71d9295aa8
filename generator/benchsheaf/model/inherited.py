"""What a machine's checks, faults, procedures and weak parts are together with those of everything that it holds.

A thing of something held is named as the machine's own file names it, `SLUG/NAME`, and so is all that it points at.
"""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from benchsheaf.model.bench import Check, Fault, Outcome, Procedure, Shows
from benchsheaf.model.boards import WeakPart
from benchsheaf.model.cards import Card, Keyboard
from benchsheaf.model.collection import Collection
from benchsheaf.model.displays import Display
from benchsheaf.model.drives import Drive
from benchsheaf.model.machine import Machine
from benchsheaf.model.supply import Supply

Held = Supply | Card | Drive | Keyboard | Display


@dataclass(frozen=True, kw_only=True, slots=True)
class Owner:
    """Whose a check, a fault or a procedure is; `delivered` is no for what sits in another outfit only."""

    kind: str
    slug: str
    name: str
    delivered: bool = True

    @property
    def prefix(self) -> str:
        """What stands before its names in the machine's own file."""
        return "" if self.kind == "machine" else f"{self.slug}/"


@dataclass(frozen=True, kw_only=True, slots=True)
class OwnedCheck:
    """A check as the machine names it; the stages that a shared one waits for are checks here."""

    name: str
    owner: Owner
    check: Check
    after: tuple[str, ...]
    means_after: tuple[str, ...]

    def outcome(self, ident: str) -> Outcome:
        """One of its outcomes.

        Errors: StopIteration if it has none of that name; links have seen to that.
        """
        return next(each for each in self.check.outcomes if each.id == ident)


@dataclass(frozen=True, kw_only=True, slots=True)
class OwnedFault:
    """A fault as the machine names it, with its weight here and all that it shows here."""

    name: str
    owner: Owner
    fault: Fault
    weight: int
    shows: tuple[Shows, ...]


@dataclass(frozen=True, kw_only=True, slots=True)
class OwnedProcedure:
    """A procedure as the machine names it."""

    name: str
    owner: Owner
    procedure: Procedure


@dataclass(frozen=True, kw_only=True, slots=True)
class OwnedWeakPart:
    """A weak part as the machine names it."""

    name: str
    owner: Owner
    weak: WeakPart


@dataclass(frozen=True, kw_only=True, slots=True)
class Bench:
    """All that can be checked, found, done and looked at on one machine, its own first, then what it holds.

    `before_power` are the checks that must have shown healthy before any power.
    """

    owners: tuple[Owner, ...]
    checks: Mapping[str, OwnedCheck]
    faults: Mapping[str, OwnedFault]
    procedures: Mapping[str, OwnedProcedure]
    weak_parts: Mapping[str, OwnedWeakPart]
    before_power: tuple[str, ...] = ()

    def gates(self, name: str) -> tuple[str, ...]:
        """The checks that must have shown healthy before one is done, for safety; under power those before it too."""
        each = self.checks[name]
        early = self.before_power if each.check.power == "on" and name not in self.before_power else ()
        return tuple(dict.fromkeys((*early, *each.after)))


def machine_bench(machine: Machine, collection: Collection) -> Bench:
    """What a machine has at the bench, with all that it holds in any outfit, as delivered first.

    Errors: KeyError if it holds what is not described; links have seen to that.
    """
    own = Owner(kind="machine", slug=machine.slug, name=machine.name)
    held = [(owner, held_thing(collection, owner.kind, owner.slug)) for owner in held_owners(machine, collection)]
    stages = _stages([(own, machine.checks), *((owner, thing.checks) for owner, thing in held)])
    bench = [_part(own, machine, stages), *(_part(owner, thing, stages) for owner, thing in held)]
    faults = {name: each for one in bench for name, each in one.faults.items()}
    for here in machine.shows_here:
        fault = faults[here.fault]
        weight = fault.weight if here.weight is None else here.weight
        faults[here.fault] = replace(fault, weight=weight, shows=(*fault.shows, *here.shows))
    return Bench(
        owners=tuple(owner for one in bench for owner in one.owners),
        checks={name: each for one in bench for name, each in one.checks.items()},
        faults=faults,
        procedures={name: each for one in bench for name, each in one.procedures.items()},
        weak_parts={name: each for one in bench for name, each in one.weak_parts.items()},
        before_power=machine.before_power,
    )


def part_bench(kind: str, thing: Held) -> Bench:
    """What something shared has at the bench by itself: its own names, and no stages, since those are its holders'."""
    owner = Owner(kind="machine", slug=thing.slug, name=thing.name)
    bench = _part(owner, thing, {})
    return replace(bench, owners=(Owner(kind=kind, slug=thing.slug, name=thing.name),))


def held_owners(machine: Machine, collection: Collection) -> list[Owner]:
    """Everything that a machine holds and that may have checks of its own, each once."""
    found: dict[tuple[str, str], bool] = {("supply", machine.supply): True}
    for number, outfit in enumerate(machine.configurations):
        for filled in outfit.slots:
            found.setdefault(("card", filled.holds), number == 0)
        for put in outfit.bays:
            found.setdefault(("drive", put.holds), number == 0)
        if outfit.keyboard:
            found.setdefault(("keyboard", outfit.keyboard), number == 0)
    if machine.display:
        found["display", machine.display] = True
    return [
        Owner(kind=kind, slug=slug, name=held_thing(collection, kind, slug).name, delivered=delivered)
        for (kind, slug), delivered in found.items()
    ]


def held_thing(collection: Collection, kind: str, slug: str) -> Held:
    """Something shared that may have checks.

    Errors: KeyError if there is none; links have seen to that.
    """
    shelves: Mapping[str, Mapping[str, Held]] = {
        "supply": collection.supplies,
        "card": collection.cards,
        "drive": collection.drives,
        "keyboard": collection.keyboards,
        "display": collection.displays,
    }
    return shelves[kind][slug]


def _stages(several: Iterable[tuple[Owner, Sequence[Check]]]) -> dict[str, str]:
    """Which check proves each stage; the machine's own before those of what it holds."""
    stages: dict[str, str] = {}
    for owner, checks in several:
        for check in checks:
            if check.proves:
                stages.setdefault(check.proves, owner.prefix + check.id)
    return stages


def _part(owner: Owner, thing: Machine | Held, stages: Mapping[str, str]) -> Bench:
    """What one thing brings along, its names as the machine writes them."""
    checks = {}
    for check in thing.checks:
        name = owner.prefix + check.id
        checks[name] = OwnedCheck(
            name=name,
            owner=owner,
            check=check,
            after=tuple(_gates(owner, check.after, check.after_stage, stages)),
            means_after=tuple(_gates(owner, check.means_after, check.means_after_stage, stages)),
        )
    faults = {}
    for fault in thing.faults:
        shows = tuple(replace(each, check=_here(owner, each.check)) for each in fault.shows)
        name = owner.prefix + fault.id
        faults[name] = OwnedFault(name=name, owner=owner, fault=fault, weight=fault.weight, shows=shows)
    procedures = {
        name: OwnedProcedure(name=name, owner=owner, procedure=each)
        for each in ([] if isinstance(thing, Display) else thing.procedures)
        if (name := owner.prefix + each.id)
    }
    weak = {
        name: OwnedWeakPart(name=name, owner=owner, weak=each)
        for each in ([] if isinstance(thing, Display) else thing.weak_parts)
        if (name := owner.prefix + each.id)
    }
    return Bench(owners=(owner,), checks=checks, faults=faults, procedures=procedures, weak_parts=weak)


def _gates(owner: Owner, names: Iterable[str], stages: Iterable[str], proved_by: Mapping[str, str]) -> Iterator[str]:
    """Checks before one: those that it names, then those that prove its stages."""
    yield from (_here(owner, name) for name in names)
    yield from (proved_by[stage] for stage in stages if stage in proved_by)


def _here(owner: Owner, name: str) -> str:
    return name if "/" in name else owner.prefix + name
