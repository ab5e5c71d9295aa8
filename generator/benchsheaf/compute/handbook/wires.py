"""How thick a wire of a gauge is, and how much it loses."""

from dataclasses import dataclass
from decimal import Decimal
from math import pi

from benchsheaf.compute.laws import twelve
from benchsheaf.standards import COPPER_OHM_MM2_M, GAUGE_36_M, GAUGE_RATIO


@dataclass(frozen=True, kw_only=True, slots=True)
class WireFigures:
    """A copper wire of a gauge at 20 °C; the resistance is that of one metre, one way."""

    gauge: int
    diameter_mm: Decimal
    area_mm2: Decimal
    metre_ohm: Decimal


def wire_figures(gauge: int) -> WireFigures:
    """The wire of a gauge; -1 is 00, and so on.

    Source: ASTM B258, d = 0.005 in × 92^((36 - n) / 39); IEC 60028 for copper.
    """
    diameter = float(GAUGE_36_M) * 1000 * GAUGE_RATIO ** ((36 - gauge) / 39)
    area = pi * diameter**2 / 4
    return WireFigures(
        gauge=gauge,
        diameter_mm=twelve(diameter),
        area_mm2=twelve(area),
        metre_ohm=twelve(float(COPPER_OHM_MM2_M) / area),
    )


@dataclass(frozen=True, kw_only=True, slots=True)
class DropFigures:
    """What a lead takes away from a rail."""

    lead_ohm: Decimal
    drop_v: Decimal


def lead_drop(area_mm2: Decimal, length_m: Decimal, current_a: Decimal) -> DropFigures:
    """The drop along copper, out and back together; contacts come on top.

    Units: mm², metre of copper in all, ampere in; ohm and volt out.
    Errors: ZeroDivisionError for a wire without copper.
    Source: R = resistivity × length / area, IEC 60028; V = I R.
    """
    lead = COPPER_OHM_MM2_M * length_m / area_mm2
    return DropFigures(lead_ohm=twelve(lead), drop_v=twelve(lead * current_a))
