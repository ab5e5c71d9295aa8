"""What is drawn of a supply under its loads: one lane a rail, and one for all together."""

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal

from benchsheaf.compute.power import PowerFigures, RailFigures
from benchsheaf.drawing.picture import Run
from benchsheaf.drawing.told import as_written, rail_name, told
from benchsheaf.model.machine import Rail
from benchsheaf.model.supply import Output, Supply

Text = tuple[Run, ...]
OVER = Run(", over the limit", "stop-text bold")
TOO_LONG = Run(", too long", "stop-text bold")


@dataclass(frozen=True, kw_only=True, slots=True)
class Lane:
    """One bar: all in the unit of its limit, with the words that stand at it."""

    name: str
    steps: tuple[Decimal, ...]  # running loads in the order of the table; they end at `run`
    run: Decimal
    start: Decimal
    most: Decimal
    peak: Decimal | None
    least: Decimal | None
    run_text: Text
    start_text: Text | None
    most_text: Text
    peak_text: Text | None
    least_text: Text | None

    @property
    def furthest(self) -> Decimal:
        """The greatest of all that is drawn, by the continuous limit."""
        return max(self.run, self.start, self.most, self.peak or Decimal(0)) / self.most

    @property
    def spoken(self) -> str:
        """The lane in one clause."""
        texts = [self.run_text, self.start_text, self.most_text, self.peak_text, self.least_text]
        return f"{self.name} " + ", ".join("".join(run.text for run in text) for text in texts if text)


def lanes(power: PowerFigures, supply: Supply, rails: Sequence[Rail], brief: bool = False) -> tuple[Lane, ...]:
    """The machine's rails in its own order, as far as the supply gives them, then all together; brief for a phone."""
    outputs = {output.rail: output for output in supply.outputs}
    figures = {each.rail: each for each in power.rails}
    given = [rail.name for rail in rails if rail.name in figures and rail.name in outputs]
    return (*(_rail(power, figures[name], outputs[name], brief) for name in given), _together(power, supply))


def _rail(power: PowerFigures, figures: RailFigures, output: Output, brief: bool) -> Lane:
    loads = [share.run_a for share in figures.shares]
    loads += [each.nominal_a for each in power.resistors if each.rail == figures.rail]
    short = output.peak_a is not None
    return Lane(
        name=rail_name(figures.rail),
        steps=tuple(load for load in loads if load > 0),
        run=figures.run_a,
        start=figures.start_a,
        most=output.most_a,
        peak=output.peak_a,
        least=output.least_a or None,
        run_text=_figure(figures, "run", "A", over=figures.run_a > output.most_a),
        start_text=(Run("start "), *_starting(figures, output, brief)) if figures.start_a > figures.run_a else None,
        most_text=_bold(output.most_a, "A", (" cont." if brief else " continuous") if short else " most"),
        peak_text=_peak(output, brief),
        least_text=_least(figures, output, brief),
    )


def _bold(value: Decimal, unit: str, more: str) -> Text:
    return Run(as_written(value, unit), "bold"), Run(more)


def _figure(figures: RailFigures | PowerFigures, name: str, unit: str, over: bool) -> Text:
    """A load, its share of the continuous limit, and whether it is over it."""
    load = told(figures, f"{name}_{unit.lower()}", unit, 3 if unit == "A" else 2, 2)
    share = told(figures, f"{name}_share", "%", 1, 1)
    return (Run(load, "bold"), Run(f", {share}"), *((OVER,) if over else ()))


def _starting(figures: RailFigures, output: Output, brief: bool) -> Text:
    """What starting takes, and for how long it is over the continuous limit."""
    over = figures.start_a > max(output.most_a, output.peak_a or Decimal(0))
    texts = _figure(figures, "start", "A", over=over and brief)
    if figures.start_a <= output.most_a or (over and brief):
        return texts
    if output.peak_a and not brief:
        texts += (Run(" of continuous"),)
    if figures.over_for_s is None:
        return (*texts, Run(", time not known" if brief else ", for how long is not known"), *((OVER,) if over else ()))
    long = output.peak_for_s is not None and figures.over_for_s > output.peak_for_s
    seconds = Run(f", {told(figures, 'over_for_s', 's', 1)}")
    return (*texts, seconds, *((OVER,) if over else (TOO_LONG,) if long else ()))


def _peak(output: Output, brief: bool) -> Text | None:
    if output.peak_a is None:
        return None
    if output.peak_for_s is None:
        return _bold(output.peak_a, "A", " for a short time")
    seconds = as_written(output.peak_for_s, "s")
    return _bold(output.peak_a, "A", f", {seconds}" if brief else f" for {seconds} at most")


def _least(figures: RailFigures, output: Output, brief: bool) -> Text | None:
    if not output.least_a:
        return None
    text = f"least {as_written(output.least_a, 'A')}"
    if figures.least_met:
        return (Run(text),)
    sure = "" if brief else f", only {told(figures, 'least_a', 'A', 3, 2)} is sure"
    return (Run(f"{text}: not met{sure}", "stop-text bold"),)


def _together(power: PowerFigures, supply: Supply) -> Lane:
    run_over, start_over = power.run_w > supply.together_w, power.start_w > supply.together_w
    starts = power.start_w > power.run_w
    return Lane(
        name="Together",
        steps=(power.run_w,) if power.run_w > 0 else (),
        run=power.run_w,
        start=power.start_w,
        most=supply.together_w,
        peak=None,
        least=None,
        run_text=_figure(power, "run", "W", run_over),
        start_text=(Run("start "), *_figure(power, "start", "W", start_over)) if starts else None,
        most_text=_bold(supply.together_w, "W", " most"),
        peak_text=None,
        least_text=None,
    )
