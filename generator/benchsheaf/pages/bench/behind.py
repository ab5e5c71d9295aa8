"""The faults that can be behind a sound or a message: those that change the outcome in which it is heard or read."""

from collections.abc import Sequence
from dataclasses import dataclass

from benchsheaf.compute.fault_weights import likeliest_first
from benchsheaf.model.bench import Outcome
from benchsheaf.model.machine import Machine
from benchsheaf.pages.bench.ways import Led, machine_ways
from benchsheaf.pages.shelf import Desk


@dataclass(frozen=True, kw_only=True, slots=True)
class Behind:
    """For each sound and each message by its name: the faults, the likeliest first."""

    beeps: dict[str, Sequence[Led]]
    messages: dict[str, Sequence[Led]]


def behind_signals(desk: Desk, machine: Machine) -> Behind:
    """What the checks of a machine say of its sounds and messages; nothing where no outcome names one."""
    ways = machine_ways(desk, machine)
    found = Behind(beeps={}, messages={})
    weights = {name: each.weight for name, each in ways.bench.faults.items()}
    shows = {name: each.shows for name, each in ways.bench.faults.items()}

    def led(check: str, outcome: Outcome) -> list[Led]:
        return [ways.fault(name) for name in likeliest_first(weights, shows, check, outcome.id)]

    for name, each in ways.bench.checks.items():
        for outcome in each.check.outcomes:
            if outcome.beep:
                found.beeps[outcome.beep] = led(name, outcome)
            for message in outcome.messages:
                found.messages[message] = led(name, outcome)
    return found
