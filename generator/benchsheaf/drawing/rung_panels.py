"""What is drawn of the way up: one panel for all together and one a rail, a column for each rung in it."""

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal

from benchsheaf.compute.power import PowerFigures, RailFigures
from benchsheaf.drawing.told import as_written, rail_name, told
from benchsheaf.model.supply import Output, Supply


@dataclass(frozen=True, kw_only=True, slots=True)
class Rung:
    """One rung: its name and its figures; its number is its place."""

    name: str
    power: PowerFigures


@dataclass(frozen=True, kw_only=True, slots=True)
class Column:
    """What one rung takes in the unit of its panel: by resistors, cold, warm, starting cold; two of them in words."""

    resistors: Decimal
    cold: Decimal
    warm: Decimal
    start: Decimal
    cold_text: str
    start_text: str | None


@dataclass(frozen=True, kw_only=True, slots=True)
class Panel:
    """The columns of all rungs against the limits of one rail, or of all together."""

    name: str
    columns: tuple[Column, ...]
    most: Decimal
    most_text: str
    peak: Decimal | None = None
    peak_text: str = ""
    least: Decimal | None = None
    least_text: str = ""

    @property
    def highest(self) -> Decimal:
        """The greatest of all that is drawn."""
        return max(self.most, self.peak or Decimal(0), *(max(each.warm, each.start) for each in self.columns))

    @property
    def spoken(self) -> str:
        """The panel in one clause."""
        limits = [text for text in (self.least_text, self.most_text, self.peak_text) if text]
        told_columns = [
            f"{number} {each.cold_text}" + (f" starting {each.start_text}" if each.start_text else "")
            for number, each in enumerate(self.columns, 1)
        ]
        return f"{self.name} ({', '.join(limits)}): rung {', '.join(told_columns)}"


def rung_panels(rungs: Sequence[Rung], supply: Supply) -> tuple[Panel, ...]:
    """All together in watt, then each rail that the supply gives in ampere."""
    together = Panel(
        name="Together",
        columns=tuple(_together(each.power) for each in rungs),
        most=supply.together_w,
        most_text=f"{as_written(supply.together_w, 'W')} most",
    )
    figures = [{rail.rail: rail for rail in each.power.rails} for each in rungs]
    rails = [_rail(output, [each[output.rail] for each in figures], rungs) for output in supply.outputs]
    return (together, *rails)


def _together(power: PowerFigures) -> Column:
    starts = power.cold_start_w > power.cold_w
    return Column(
        resistors=Decimal(0),
        cold=power.cold_w,
        warm=power.run_w,
        start=power.cold_start_w,
        cold_text=told(power, "cold_w", "W", 1, 1),
        start_text=told(power, "cold_start_w", "W", 1, 1) if starts else None,
    )


def _rail(output: Output, figures: Sequence[RailFigures], rungs: Sequence[Rung]) -> Panel:
    short = output.peak_a is not None
    seconds = f" for {as_written(output.peak_for_s, 's')}" if output.peak_for_s is not None else ""
    return Panel(
        name=rail_name(output.rail),
        columns=tuple(_column(rail, rung.power) for rail, rung in zip(figures, rungs, strict=True)),
        most=output.most_a,
        most_text=f"{as_written(output.most_a, 'A')} {'continuous' if short else 'most'}",
        peak=output.peak_a,
        peak_text=f"{as_written(output.peak_a, 'A')}{seconds}" if output.peak_a is not None else "",
        least=output.least_a or None,
        least_text=f"least {as_written(output.least_a, 'A')}" if output.least_a else "",
    )


def _column(rail: RailFigures, power: PowerFigures) -> Column:
    put_on = (each.nominal_a for each in power.resistors if each.rail == rail.rail)
    starts = rail.cold_start_a > rail.cold_a
    return Column(
        resistors=sum(put_on, Decimal(0)),
        cold=rail.cold_a,
        warm=rail.run_a,
        start=rail.cold_start_a,
        cold_text=told(rail, "cold_a", "A", 2, 2),
        start_text=told(rail, "cold_start_a", "A", 2, 2) if starts else None,
    )
