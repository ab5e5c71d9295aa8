"""Where checks, faults, removals, procedures and weak parts stand, seen from a page, and links to them."""

from collections.abc import Iterable
from dataclasses import dataclass, replace

from benchsheaf.links import Thing
from benchsheaf.markup import Markup
from benchsheaf.model.inherited import Bench, Held, Owner, machine_bench, part_bench
from benchsheaf.model.machine import Machine
from benchsheaf.pages.part_lists import is_drawn, weak_anchors
from benchsheaf.pages.shelf import Desk


@dataclass(frozen=True, kw_only=True, slots=True)
class Led:
    """Words that lead somewhere, or only words where there is no such page; `of` is whose it is."""

    words: str
    way: str | None = None
    of: str = ""


@dataclass(frozen=True, kw_only=True, slots=True)
class OwnerView:
    """Whose an entry is, where it is not the page's own."""

    kind: str
    name: str
    way: str
    delivered: bool


def anchor(family: str, name: str) -> str:
    """The place of an entry on its page: `check-to-ground`, `check-ov-hd14.current` for one of something held."""
    return f"{family}-{name.replace('/', '.')}"


@dataclass(frozen=True, kw_only=True, slots=True)
class Ways:
    """A page at the bench: what its machine, or its shared part, has, and where each of that stands."""

    desk: Desk
    bench: Bench
    machine: Machine | None = None

    def check(self, name: str) -> Led:
        """A check by its name on the machine's sheet; without such a sheet on the page of whose it is."""
        each = self.bench.checks[name]
        has_sheet = self.machine is None or bool(self.machine.checks)
        return self._led(each.check.name, each.owner, self._way("check", name, "checks", each.owner, has_sheet))

    def fault(self, name: str) -> Led:
        """A fault by its name, on the sheet where its full entry stands."""
        each = self.bench.faults[name]
        has_sheet = self.machine is None or bool(self.machine.symptoms)
        led = self._led(each.fault.name, each.owner, self._way("fault", name, "finding", each.owner, has_sheet))
        return led if each.owner.kind == "machine" else replace(led, of=each.owner.name)

    def procedure(self, name: str) -> Led:
        """A procedure by its name."""
        each = self.bench.procedures[name]
        has_sheet = self.machine is None or bool(self.machine.procedures)
        return self._led(
            each.procedure.name, each.owner, self._way("procedure", name, "service", each.owner, has_sheet)
        )

    def steps(self, owner: Owner, names: Iterable[str]) -> list[Led]:
        """Procedures as their owner's file names them; one of a thing that this page does not hold is only words."""
        whole = [name if "/" in name else owner.prefix + name for name in names]
        return [self.procedure(name) if name in self.bench.procedures else Led(words=name) for name in whole]

    def removals(self, names: Iterable[str]) -> list[Led]:
        """What comes off; a shared part leaves its names to its holders, so there they are only words."""
        if self.machine is None:
            return [Led(words=name.replace("-", " ")) for name in names]
        known = {each.id: each.name for each in self.machine.removals}
        return [
            self._led(known[name], self.bench.owners[0], self.desk.sheet("apart", anchor("removal", name)))
            for name in names
        ]

    def weak(self, name: str) -> Led:
        """A weak part by its name, at its row in a list."""
        each = self.bench.weak_parts[name]
        words = each.weak.what or ", ".join(each.weak.parts)
        if self.machine is not None and each.owner.kind == "machine":
            return self._led(words, each.owner, self._own_weak(self.machine, each.weak.id))
        owner = self.bench.owners[0] if each.owner.kind == "machine" else each.owner
        thing = self.desk.shelf.thing(owner.kind, owner.slug)
        places = weak_anchors(thing.weak_parts, f"{owner.slug}/", own=is_drawn(thing))
        place = next(at for at, weak in zip(places, thing.weak_parts, strict=True) if weak.id == each.weak.id)
        return self._led(words, each.owner, self.desk.thing(owner.kind, owner.slug, place))

    def owner(self, owner: Owner) -> OwnerView | None:
        """Whose something is, where it is not the page's own."""
        if owner.kind == "machine":
            return None
        way = self.desk.thing(owner.kind, owner.slug)
        return OwnerView(kind=owner.kind, name=owner.name, way=way, delivered=owner.delivered)

    def part(self, owner: Owner, name: str) -> Markup:
        """A part as its owner's file names it, as a link to where it lies."""
        alone = self.machine is None
        prefix = f"{self.bench.owners[0].slug}/" if alone else owner.prefix
        return self.desk.part(name if "/" in name else prefix + name, brief=alone)

    def says(self, check: str, outcome: str) -> str:
        """An outcome of a check in words."""
        each = self.bench.checks[check]
        return self.desk.worded(each.outcome(outcome).says, whose(each.owner))

    def _led(self, words: str, owner: Owner, way: str | None) -> Led:
        return Led(words=self.desk.worded(words, whose(owner)), way=way)

    def _way(self, family: str, name: str, sheet: str, owner: Owner, has_sheet: bool) -> str | None:
        if self.machine is None:
            holder = self.bench.owners[0]
            return self.desk.thing(holder.kind, holder.slug, anchor(family, name))
        if has_sheet:
            return self.desk.sheet(sheet, anchor(family, name))
        if owner.kind == "machine":
            return None
        return self.desk.thing(owner.kind, owner.slug, anchor(family, name.partition("/")[2]))

    def _own_weak(self, machine: Machine, ident: str) -> str | None:
        """The row on the sheet of boards: beside its board, or among those that lie on none."""
        if not machine.boards:
            return None
        for board in machine.boards:
            refs = board.refs
            own = [weak for weak in machine.weak_parts if not refs.isdisjoint(weak.parts)]
            for place, weak in zip(weak_anchors(own, own=True), own, strict=True):
                if weak.id == ident:
                    return self.desk.sheet("boards", place)
        return self.desk.sheet("boards", f"weak-{ident}")


def machine_ways(desk: Desk, machine: Machine) -> Ways:
    """The bench of a machine, seen from one of its pages; several pages in a row want the same."""
    bench = desk.shelf.kept("bench", machine.slug, lambda: machine_bench(machine, desk.shelf.collection))
    return Ways(desk=desk, bench=bench, machine=machine)


def part_ways(desk: Desk, kind: str, thing: Held) -> Ways:
    """The bench of something shared, seen from its own page."""
    return Ways(desk=desk, bench=part_bench(kind, thing))


def whose(owner: Owner) -> Thing | None:
    """The thing whose text an entry is, where it is not the page's own."""
    return None if owner.kind == "machine" else (owner.kind, owner.slug)
