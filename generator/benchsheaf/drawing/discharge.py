"""How the reservoir falls when the plug is out, at the worst, and when to measure it."""

from collections.abc import Iterator
from dataclasses import dataclass
from decimal import Decimal
from math import exp

from benchsheaf.compute.reservoir import ReservoirFigures
from benchsheaf.drawing.axis import even_step
from benchsheaf.drawing.lettering import text_width
from benchsheaf.drawing.picture import Both, Circle, Line, Path, Picture, Run, Shape, Steps, Words, words
from benchsheaf.drawing.told import as_written, told
from benchsheaf.model.supply import Reservoir
from benchsheaf.standards import DISCHARGED_V, EXTRA_LOW_V

CAPTION = (
    "The worst case: highest mains, capacitor and bleeder at the upper end of what they may be. The dashed line at the "
    "top is what an open bleeder leaves: the wait proves nothing, so measure."
)
WITHOUT_BLEEDER = "Nothing is known to drain it, so no time makes it fall: measure it, and drain it by the resistor."
POINTS = 60


@dataclass(frozen=True, kw_only=True, slots=True)
class Layout:
    """Where things stand in one of the two drawings, in pixels of its column."""

    css_class: str
    width: float
    left: float
    right: float
    top: float
    bottom: float
    height: float
    text: float
    most_ticks: int


WIDE = Layout(css_class="wide", width=680, left=48, right=660, top=24, bottom=214, height=240, text=13, most_ticks=8)
PHONE = Layout(
    css_class="phone", width=344, left=40, right=336, top=24, bottom=204, height=230, text=12.5, most_ticks=5
)


@dataclass(frozen=True, kw_only=True, slots=True)
class Scale:
    """Minutes across, volts up."""

    layout: Layout
    minutes: float
    volts: float

    def x(self, minutes: float) -> float:
        """Where a time stands."""
        return round(self.layout.left + (self.layout.right - self.layout.left) * minutes / self.minutes, 6)

    def y(self, volts: float) -> float:
        """Where a voltage stands."""
        return round(self.layout.bottom - (self.layout.bottom - self.layout.top) * volts / self.volts, 6)


def discharge_curve(reservoir: Reservoir, figures: ReservoirFigures, ident: str) -> Both:
    """The fall of the worst case, the class of 60 V, 10 V, and the wait as a bar.

    Units: volt, minute. Source of the curve: V = V0 e^(-t / R C), V0, R and C at the worst of `figures`.
    """
    wait = told(figures, "wait_minutes", "min", 0)
    least = as_written(DISCHARGED_V, "V")
    if figures.bleeder:
        falls = f"at the worst it falls to {least} in {told(figures.bleeder, 'worst_wait_s', 's', 1, 1)}"
    else:
        falls = "no bleeder is known"
    label = (
        f"Voltage across {reservoir.part} after the plug is out: {told(figures, 'worst_charged_v', 'V', 1)} at first, "
        f"{falls}; with an open bleeder it stays. Wait {wait}, then measure: under {least}. The table has the same."
    )
    wide, phone = (_picture(layout, reservoir, figures, ident, label) for layout in (WIDE, PHONE))
    return Both(wide=wide, phone=phone, caption=CAPTION if figures.bleeder else WITHOUT_BLEEDER)


def _picture(layout: Layout, reservoir: Reservoir, figures: ReservoirFigures, ident: str, label: str) -> Picture:
    wait = float(figures.wait_minutes)
    scale = Scale(layout=layout, minutes=max(wait, 1) * 1.06, volts=float(figures.worst_charged_v) * 1.04)
    return Picture(
        view_box=(0, 0, layout.width, layout.height),
        label=label,
        shapes=(
            *_axes(scale, wait),
            words(layout.left + 6, 12, f"volt across {reservoir.part}", size=layout.text, css_class="label2"),
            *_thresholds(scale, figures),
            *_fall(scale, figures),
            *_measure(scale, wait),
        ),
        css_class=layout.css_class,
        ident=f"{ident}-{layout.css_class}",
        most_px=layout.width if layout is WIDE else None,
    )


def _axes(scale: Scale, wait: float) -> Iterator[Shape]:
    layout = scale.layout
    yield Line(layout.left, layout.top - 10, layout.left, layout.bottom, "axis")
    yield Line(layout.left, layout.bottom, layout.right, layout.bottom, "axis")
    step = even_step(scale.volts, 4)
    for number in range(int(scale.volts / step) + 1):
        y = scale.y(number * step)
        yield Line(layout.left - 4, y, layout.left, y, "axis")
        yield words(layout.left - 8, y + 4.5, _plain(number * step), size=layout.text, anchor="end")
    step = max(even_step(max(wait, 1), layout.most_ticks), 1)
    for number in range(int(wait / step) + 1):
        minutes = number * step
        if minutes and wait - minutes < step * 0.6:
            continue
        x = scale.x(minutes)
        yield Line(x, layout.bottom, x, layout.bottom + 4, "axis")
        text = f"{_plain(minutes)}\u00a0min" if number == 1 else _plain(minutes)
        yield words(x, layout.bottom + 19, text, size=layout.text, anchor="middle")


def _plain(value: float) -> str:
    return f"{value:g}"


def _thresholds(scale: Scale, figures: ReservoirFigures) -> Iterator[Shape]:
    """What an open bleeder leaves, and the class of circuits that reaches to 60 V."""
    layout = scale.layout
    charged = scale.y(float(figures.worst_charged_v))
    yield Line(layout.left, charged, layout.right, charged, "weak-line dash")
    stays = "bleeder open: it stays charged" if figures.bleeder else "no bleeder known: it stays charged"
    volts = f"{told(figures, 'worst_charged_v', 'V', 0)}, {stays}"
    yield words(layout.right, charged + 16, volts, size=layout.text, css_class="label weak-text", anchor="end")
    if float(EXTRA_LOW_V) < scale.volts * 0.6:
        y = scale.y(float(EXTRA_LOW_V))
        yield Line(layout.left, y, layout.right, y, "axis dash")
        named = f"{as_written(EXTRA_LOW_V, 'V')}: a class for designers,"
        for line, text in enumerate((named, "no permission to touch")):
            x = scale.x(float(figures.wait_minutes)) - 12
            yield words(x, y - 22 + 16 * line, text, size=layout.text, css_class="label2", anchor="end")


def _fall(scale: Scale, figures: ReservoirFigures) -> Iterator[Shape]:
    """The curve, and the circle where it has come down to 10 V."""
    if figures.bleeder is None:
        return
    layout = scale.layout
    constant = float(figures.bleeder.worst_resistance_ohm * figures.worst_capacitance_f) / 60
    charged = float(figures.worst_charged_v)
    steps: Steps = tuple(
        ("L" if point else "M", (scale.x(minutes), scale.y(charged * exp(-minutes / constant))))
        for point in range(POINTS + 1)
        for minutes in (_spaced(point) * scale.minutes,)
    )
    yield Path(steps, "curve")
    x, y = scale.x(float(figures.bleeder.worst_wait_s) / 60), scale.y(float(DISCHARGED_V))
    yield Circle(x, y, 3.6, "outline chip", stroke_width=2)
    worst = "" if layout is PHONE else "at the worst "
    text = f"{worst}{as_written(DISCHARGED_V, 'V')} after {told(figures.bleeder, 'worst_wait_s', 's', 1, 1)}"
    wide = text_width(text, layout.text)
    before_wait = scale.x(float(figures.wait_minutes)) - 8
    right = before_wait if layout is PHONE else min(x + wide / 2, before_wait)
    yield words(max(layout.left + 4, right - wide), y - 9, text, size=layout.text)


def _spaced(point: int) -> float:
    """Points closer together where the curve is steep, as shares of the whole time."""
    return float((Decimal(point) / POINTS) ** 2)


def _measure(scale: Scale, wait: float) -> Iterator[Shape]:
    """The wait as a bar, and what is done then."""
    layout = scale.layout
    x = scale.x(wait)
    top = layout.top + (layout.bottom - layout.top) * 0.28
    yield Line(x, top, x, layout.bottom, "limit", 4)
    least = as_written(DISCHARGED_V, "V")
    for line, text in enumerate(("now measure:", f"it must be under {least}")):
        yield Words(x - 9, top + 13 + 17 * line, (Run(text),), layout.text, "label bold", "end")
    named = f"{_plain(wait)}\u00a0min"
    right = min(x + text_width(named, layout.text) / 2, layout.width)
    yield Words(right, layout.bottom + 19, (Run(named),), layout.text, "label bold", "end")
