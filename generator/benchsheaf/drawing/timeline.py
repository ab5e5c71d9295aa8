"""Codes of sound as blocks on a line: each lane begins at nought, and all lanes of a machine have one scale."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from decimal import ROUND_CEILING, Decimal

from benchsheaf.compute.beeps import BeepFigures
from benchsheaf.drawing.axis import even_step
from benchsheaf.drawing.picture import Both, Box, Line, Picture, Shape
from benchsheaf.drawing.told import SPACE

BLOCK = 17
"""Height of a tone."""

RAISED = 9
"""How much higher a block stands for each pitch above the lowest of the machine."""

HALF = Decimal("0.5")
MOST_TICKS = 40


@dataclass(frozen=True, kw_only=True, slots=True)
class Layout:
    """Where things stand in one of the two drawings, in pixels of its column."""

    css_class: str
    width: float
    left: float
    right: float


WIDE = Layout(css_class="wide", width=440, left=1, right=438)
PHONE = Layout(css_class="phone", width=344, left=1, right=342)


@dataclass(frozen=True, kw_only=True, slots=True)
class Scale:
    """What all lanes of a machine share: how long they are, and which pitches there are, the lowest first."""

    extent_s: Decimal
    pitches_hz: tuple[Decimal, ...]


def common_scale(beeps: Sequence[BeepFigures]) -> Scale:
    """One scale for all codes, from nought to the half second in which the longest ends.

    Units: second and hertz.
    Errors: ValueError if there is no code.
    """
    longest = max(beep.lasts_s for beep in beeps)
    halves = (longest / HALF).to_integral_value(ROUND_CEILING)
    pitches = {tone.pitch_hz for beep in beeps for tone in beep.tones}
    return Scale(extent_s=max(halves, Decimal(1)) * HALF, pitches_hz=tuple(sorted(pitches)))


def timeline(figures: BeepFigures, scale: Scale, heard: str, ident: str) -> Both:
    """The lane of one code; `heard` is what an ear calls it.

    Units: second.
    """
    blocks = ", ".join(f"{each.start_s} to {each.end_s}{SPACE}s" for each in figures.tones)
    label = f"{heard}: {'tones' if len(figures.tones) > 1 else 'one tone'} from {blocks}. The list says what it means."
    wide, phone = (_picture(layout, figures, scale, ident, label) for layout in (WIDE, PHONE))
    return Both(wide=wide, phone=phone)


def _picture(layout: Layout, figures: BeepFigures, scale: Scale, ident: str, label: str) -> Picture:
    raised = RAISED * (len(scale.pitches_hz) - 1)
    base = 2.0 + BLOCK + raised
    unit = (layout.right - layout.left) / float(scale.extent_s)
    shapes: list[Shape] = [
        Box(
            layout.left + float(tone.start_s) * unit,
            base - BLOCK - RAISED * scale.pitches_hz.index(tone.pitch_hz),
            float(tone.end_s - tone.start_s) * unit,
            BLOCK,
            "tone",
        )
        for tone in figures.tones
    ]
    shapes += _axis(layout, scale, unit, base)
    return Picture(
        view_box=(0, 0, layout.width, base + 10),
        label=label,
        shapes=tuple(shapes),
        css_class=layout.css_class,
        ident=f"{ident}-{layout.css_class}",
        most_px=layout.width if layout is WIDE else None,
    )


def _axis(layout: Layout, scale: Scale, unit: float, base: float) -> Iterator[Line]:
    """The line, a long tick for each second and a short one for each half; for long codes fewer, at even steps."""
    yield Line(layout.left, base, layout.right, base, "axis", 1.2)
    step = max(float(HALF), even_step(float(scale.extent_s), MOST_TICKS))
    for number in range(int(float(scale.extent_s) / step) + 1):
        x = layout.left + number * step * unit
        yield Line(x, base, x, base + (8 if number * step % 1 == 0 else 4), "axis", 1.2)
