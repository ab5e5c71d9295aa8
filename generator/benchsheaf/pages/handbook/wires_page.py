"""Gauges of copper wire, and what a lead takes away."""

from decimal import Decimal

from benchsheaf.compute.handbook import WireFigures, lead_drop, wire_figures
from benchsheaf.pages.handbook.shape import Column, Content, Section, Table
from benchsheaf.pages.printing import number, plain, quantity

GAUGES = (0, 10, 14, 16, 18, 20, 22, 24, 26, 28, 30)
AREA_MM2, LENGTH_M, CURRENT_A = Decimal("0.82"), Decimal("0.90"), Decimal("6.45")


def wires() -> Content:
    """The gauges, and a supply lead worked out."""
    drop = lead_drop(AREA_MM2, LENGTH_M, CURRENT_A)
    half = f"{LENGTH_M / 2} m"
    return Content(
        answer="Count the wire out and the wire back. Measure at the chip that is farthest away: what is right at the "
        "plug of the supply is less there.",
        sections=(
            Section(
                anchor="lead",
                title="A supply lead, worked out",
                told=(
                    f"{half} out and {half} back are {LENGTH_M} m of copper of {AREA_MM2} mm²: "
                    f"{number(drop.lead_ohm * 1000, 1)} mΩ. At {quantity(CURRENT_A, 'A')} they lose "
                    f"{plain(drop, 'drop_v', 3)} V; contacts come on top.",
                ),
                working=(
                    f"0.017241 Ω mm²/m × {LENGTH_M} m / {AREA_MM2} mm² = {number(drop.lead_ohm, 6)} Ω (IEC 60028, "
                    f"20 °C); × {CURRENT_A} A = {plain(drop, 'drop_v', 4)} V.",
                ),
            ),
            Section(
                anchor="gauges",
                title="Gauges",
                told=("Three numbers up halve the copper. The resistance is that of one metre, one way.",),
                table=Table(
                    label="Gauges of copper wire",
                    columns=(
                        Column(name="AWG"),
                        Column(name="Diameter, mm", n=True),
                        Column(name="Area, mm²", n=True),
                        Column(name="mΩ a metre", n=True),
                    ),
                    rows=[_row(wire_figures(gauge)) for gauge in GAUGES],
                    source="ASTM B258 for the gauges, IEC 60028 for copper at 20 °C; computed.",
                ),
            ),
        ),
    )


def _row(figures: WireFigures) -> tuple[str, ...]:
    return (
        str(figures.gauge),
        number(figures.diameter_mm, 5),
        number(figures.area_mm2, 5),
        number(figures.metre_ohm * 1000, 4),
    )
