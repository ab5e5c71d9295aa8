"""Colour rings of resistors: the table, and resistors that are read."""

from decimal import Decimal

from benchsheaf.component_standards import RING_COLOURS
from benchsheaf.compute.handbook import MarkFigures, resistor_of_rings
from benchsheaf.compute.handbook.reading import RING_POWERS, RING_PPM, RING_SHARES
from benchsheaf.drawing.colour_rings import colour_rings
from benchsheaf.pages.handbook.shape import Column, Content, Section, Table
from benchsheaf.pages.printing import number, quantity

EXAMPLES = (
    ("yellow", "violet", "red", "gold"),
    ("brown", "black", "yellow", "gold"),
    ("red", "red", "brown", "silver"),
    ("yellow", "violet", "gold", "gold"),
    ("orange", "orange", "black", "gold"),
    ("brown", "black", "black", "red", "brown"),
    ("yellow", "violet", "green", "gold", "brown"),
    ("brown", "green", "black", "black", "green", "red"),
    ("yellow", "black", "red", "brown", "red", "brown"),
)
SOURCE = "IEC 60062, clause 3, from memory of the table; the values are computed."


def rings() -> Content:
    """How they are read, in pictures and in words."""
    return Content(
        answer="Begin at the end without gold or silver. Two digits up to four rings, three from five on; then the "
        "number of zeros, then the tolerance.",
        sections=(
            Section(
                anchor="read",
                title="Resistors that are read",
                told=(
                    "Heat turns red, orange and brown into each other: measure before you believe a ring. Measured in "
                    "circuit, what lies beside it makes it look smaller, never larger.",
                ),
                picture=colour_rings([(each, resistor_told(resistor_of_rings(each))) for each in EXAMPLES], "rings"),
                table=Table(
                    label="Rings and what they say",
                    columns=(Column(name="Rings"), Column(name="Resistor", wordy=True)),
                    rows=[(", ".join(each), resistor_told(resistor_of_rings(each))) for each in EXAMPLES],
                    source=SOURCE,
                ),
            ),
            Section(
                anchor="colours",
                title="Every colour",
                told=("Three rings are digits and multiplier alone, within 20 %.",),
                table=Table(
                    label="What a colour means at each place",
                    columns=(
                        Column(name="Colour"),
                        Column(name="Digit", n=True),
                        Column(name="Multiplier", n=True),
                        Column(name="Tolerance", n=True),
                        Column(name="Sixth ring", n=True),
                    ),
                    rows=[_colour(each) for each in RING_POWERS],
                    source="IEC 60062, clause 3, from memory of the edition of 2016; earlier ones differ about "
                    "orange, yellow and grey as tolerances.",
                ),
            ),
        ),
    )


def _colour(colour: str) -> tuple[str, ...]:
    power = RING_POWERS[colour]
    share, ppm = RING_SHARES.get(colour), RING_PPM.get(colour)
    return (
        colour,
        str(RING_COLOURS.index(colour)) if colour in RING_COLOURS else "–",
        f"× {number(Decimal(1).scaleb(power), max(0, -power))}",
        f"±{percent(share)}" if share else "–",
        f"{ppm} ppm/K" if ppm else "–",
    )


def percent(share: Decimal) -> str:
    """A share in per cent with the digits that it has."""
    return f"{(share * 100).normalize():f} %"


def resistor_told(figures: MarkFigures) -> str:
    """A resistor in words: its value, its tolerance where one is told, its change with temperature."""
    told = quantity(figures.value.normalize(), "ohm")
    if figures.more_share is not None:
        told += f" ±{percent(figures.more_share)}"
    return f"{told}, {figures.ppm} ppm/K" if figures.ppm else told
