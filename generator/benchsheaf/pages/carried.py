"""Whether an outfit is carried by its supply, as a mark and in words with all the reasons."""

from collections.abc import Iterator
from dataclasses import dataclass

from benchsheaf.compute.power import PowerFigures, RailFigures
from benchsheaf.model.supply import Output, Supply
from benchsheaf.pages.printing import figure, quantity, rail_name


@dataclass(frozen=True, kw_only=True, slots=True)
class Verdict:
    """Whether an outfit is carried, as a mark's name and in words."""

    mark: str
    says: str


def verdict(power: PowerFigures, supply: Supply) -> Verdict:
    """The verdict with all its reasons: overloads before a missing least load."""
    outputs = {output.rail: output for output in supply.outputs}
    over = [words for rail in power.rails if rail.carried == "no" for words in _over(rail, outputs[rail.rail])]
    if power.run_w > supply.together_w:
        over.append(f"running {figure(power, 'run_w')} over {quantity(supply.together_w, 'W')}")
    if over:
        return Verdict(mark="stop", says=f"no: {'; '.join(over)}")
    for rail in power.rails:
        if not rail.least_met:
            least = outputs[rail.rail].least_a
            needs = quantity(least, "A") if least is not None else ""
            words = f"{rail_name(rail.rail)} {figure(rail, 'least_a')} under the least, {needs}: it may tick"
            return Verdict(mark="weak", says=words)
    return Verdict(mark="good", says="yes") if power.carried == "yes" else Verdict(mark="suspect", says="not known")


def _over(rail: RailFigures, output: Output) -> Iterator[str]:
    """What a rail takes too much of: running, starting, or for too long."""
    name, peak = rail_name(rail.rail), output.peak_a or output.most_a
    if rail.run_a > output.most_a:
        yield f"{name} running {figure(rail, 'run_a')} over {quantity(output.most_a, 'A')}"
    if rail.start_a > peak:
        yield f"{name} starting {figure(rail, 'start_a')} over {quantity(peak, 'A')}"
    elif rail.run_a <= output.most_a and rail.over_for_s is not None and output.peak_for_s is not None:
        yield f"{name} over its limit for {figure(rail, 'over_for_s', 0)}, more than {quantity(output.peak_for_s, 's')}"
