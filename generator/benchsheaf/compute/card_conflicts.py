"""Ports and lines: where each thing answers, its copies too, who calls on which line, and what two claim."""

import re
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from itertools import combinations

from benchsheaf.model.cards import Card
from benchsheaf.model.machine import Machine, SlotFilled
from benchsheaf.model.memory import Setting
from benchsheaf.model.signals import BusLine, LineUse, PortRange

PORT_LINES = 16
"""Address lines that a port may be decoded from."""


@dataclass(frozen=True, kw_only=True, slots=True)
class Claimant:
    """A machine's own boards, or a card in a slot, with the ports and lines that it takes."""

    card: str | None
    slot: str | None
    ports: tuple[PortRange, ...]
    lines: tuple[LineUse, ...]


@dataclass(frozen=True, kw_only=True, slots=True)
class PortRun:
    """Ports in a row."""

    first: str
    last: str
    count: int


@dataclass(frozen=True, kw_only=True, slots=True)
class PortFigures:
    """Ports at which something answers; `card` is None for the machine itself."""

    id: str
    name: str
    card: str | None
    slot: str | None
    first: str
    last: str
    count: int
    copies: tuple[PortRun, ...]
    parts: tuple[str, ...] = ()


@dataclass(frozen=True, kw_only=True, slots=True)
class PortClash:
    """Ports that two claim, each by its place in the list of those that answer."""

    one: int
    other: int
    runs: tuple[PortRun, ...]


@dataclass(frozen=True, kw_only=True, slots=True)
class PortMapFigures:
    """All that answers at ports, in order of address, what is free, and what two claim.

    `last` is the last port that there is, and None where no bus says how many there are; then nothing is called free.
    """

    last: str | None
    answering: tuple[PortFigures, ...]
    free: tuple[PortRun, ...]
    free_ports: int
    clashes: tuple[PortClash, ...]


@dataclass(frozen=True, kw_only=True, slots=True)
class LineUser:
    """Who uses a line, and what for; `card` is None for the machine itself."""

    card: str | None
    slot: str | None
    name: str


@dataclass(frozen=True, kw_only=True, slots=True)
class LineFigures:
    """A request line or channel and all that use it; `clash` where several do and may not."""

    line: str
    kind: str
    shared: bool
    users: tuple[LineUser, ...]
    clash: bool


Run = tuple[int, int]


def port_number(name: str) -> int:
    """The number of a port: `P1F` is 31.

    Errors: ValueError if it is not P and a hexadecimal number.
    """
    return int(name.removeprefix("P"), 16)


def decoded_line(name: str) -> int | None:
    """Which bit of a port's address a line carries: `A4` is 4; None for what is no such line."""
    found = re.fullmatch(r"A([0-9]{1,2})", name, re.ASCII)
    return int(found[1]) if found and int(found[1]) < PORT_LINES else None


def answered_ports(written: PortRange) -> tuple[Run, ...]:
    """First and last of each run of ports at which something answers.

    Each address line that is not decoded answers for both its values, and so doubles the ports.
    """
    first = port_number(written.first)
    runs: list[Run] = [(first, first + written.count - 1)]
    for bit in sorted({bit for name in written.ignores if (bit := decoded_line(name)) is not None}):
        runs = _merged([*runs, *(each for run in runs for each in _mirrored(run, 1 << bit))])
    return tuple(runs)


def _mirrored(run: Run, weight: int) -> Iterable[Run]:
    """The same ports with one bit of the address turned over."""
    first, last = run
    while first <= last:
        end = min(last, first | (weight - 1))
        yield first ^ weight, end ^ weight
        first = end + 1


def _merged(runs: Iterable[Run]) -> list[Run]:
    whole: list[Run] = []
    for first, last in sorted(runs):
        if whole and first <= whole[-1][1] + 1:
            whole[-1] = whole[-1][0], max(whole[-1][1], last)
        else:
            whole.append((first, last))
    return whole


def claims(
    machine: Machine, slots: Iterable[SlotFilled], cards: Mapping[str, Card], settings: Sequence[Setting] = ()
) -> tuple[Claimant, ...]:
    """What the machine's own boards and the cards in its slots take, as their switches stand.

    `settings` name a switch of a card as SLUG/NAME; what they do not name stands as delivered.
    Errors: KeyError if a card is not known; links have seen to that.
    """
    own = Claimant(card=None, slot=None, ports=machine.ports, lines=machine.lines)
    return (own, *(card_claim(cards[each.holds], settings, each.slot) for each in slots))


def card_claim(card: Card, settings: Sequence[Setting] = (), slot: str | None = None) -> Claimant:
    """What one card takes as its switches stand; what `settings` do not name (SLUG/NAME) stands as delivered."""
    stands = {each.switch: each.as_delivered for each in card.switches}
    stands |= {
        each.switch.partition("/")[2]: each.to for each in settings if each.switch.partition("/")[0] == card.slug
    }
    lines = list(card.lines)
    for use in card.by_setting:
        if all(stands.get(each.switch) == each.to for each in use.set):
            lines += use.lines
    return Claimant(card=card.slug, slot=slot, ports=card.ports, lines=tuple(lines))


def port_map(claimants: Iterable[Claimant], ports: int | None) -> PortMapFigures:
    """All that answers at ports, the lowest first.

    Units: number of ports in, None where it is not known; ports as P and a hexadecimal number out.
    """
    written = [(each, claimant, answered_ports(each)) for claimant in claimants for each in claimant.ports]
    written.sort(key=lambda each: (port_number(each[0].first), each[0].count, each[1].slot or ""))
    highest = max((run[-1][1] for _, _, run in written), default=0)
    digits = max([3, len(f"{max(highest, (ports or 1) - 1):X}")]) if written or ports else 3
    answered = [runs for _, _, runs in written]
    free = _free(answered, ports) if ports else []
    return PortMapFigures(
        last=_port(ports - 1, digits) if ports else None,
        answering=tuple(_answering(each, claimant, runs, digits) for each, claimant, runs in written),
        free=tuple(_run(run, digits) for run in free),
        free_ports=sum(last - first + 1 for first, last in free),
        clashes=tuple(_clashes(answered, digits)),
    )


def _port(number: int, digits: int) -> str:
    return f"P{number:0{digits}X}"


def _run(run: Run, digits: int) -> PortRun:
    return PortRun(first=_port(run[0], digits), last=_port(run[1], digits), count=run[1] - run[0] + 1)


def _answering(written: PortRange, claimant: Claimant, runs: tuple[Run, ...], digits: int) -> PortFigures:
    first = port_number(written.first)
    own = (first, first + written.count - 1)
    return PortFigures(
        id=written.id,
        name=written.name,
        card=claimant.card,
        slot=claimant.slot,
        first=_port(first, digits),
        last=_port(own[1], digits),
        count=written.count,
        copies=tuple(_run(each, digits) for run in runs for each in _without(run, own)),
        parts=written.parts,
    )


def _without(run: Run, taken: Run) -> Iterable[Run]:
    """What is left of a run when another is taken out of it."""
    if run[0] < taken[0]:
        yield run[0], min(run[1], taken[0] - 1)
    if run[1] > taken[1]:
        yield max(run[0], taken[1] + 1), run[1]


def _free(answered: Iterable[tuple[Run, ...]], ports: int) -> list[Run]:
    reached, free = 0, []
    for first, last in _merged(run for runs in answered for run in runs):
        if first > reached:
            free.append((reached, min(first, ports) - 1))
        reached = max(reached, last + 1)
        if reached >= ports:
            return free
    return [*free, (reached, ports - 1)]


def _clashes(answered: Sequence[tuple[Run, ...]], digits: int) -> Iterable[PortClash]:
    for (one, its), (other, others) in combinations(enumerate(answered), 2):
        both = [(max(a[0], b[0]), min(a[1], b[1])) for a in its for b in others if max(a[0], b[0]) <= min(a[1], b[1])]
        if both:
            yield PortClash(one=one, other=other, runs=tuple(_run(run, digits) for run in _merged(both)))


def line_figures(lines: Iterable[BusLine], claimants: Sequence[Claimant]) -> tuple[LineFigures, ...]:
    """Every request line and channel of a bus with all that use it."""
    return tuple(_line(line, claimants) for line in lines)


def _line(line: BusLine, claimants: Sequence[Claimant]) -> LineFigures:
    users = tuple(
        LineUser(card=claimant.card, slot=claimant.slot, name=use.name)
        for claimant in claimants
        for use in claimant.lines
        if use.line == line.line
    )
    several = len({(user.card, user.slot) for user in users}) > 1
    return LineFigures(
        line=line.line, kind=line.kind, shared=line.shared, users=users, clash=several and not line.shared
    )
