"""Figures of the handbook: they follow from standards alone, and from no machine."""

from benchsheaf.compute.handbook.checksums import SumFigures, crc_sum, sum_figures
from benchsheaf.compute.handbook.markings import MarkFigures, capacitor_of_code, resistor_of_code, resistor_of_rings
from benchsheaf.compute.handbook.prefixes import PrefixFigures, prefix_figures
from benchsheaf.compute.handbook.series import off_the_formula, preferred_values
from benchsheaf.compute.handbook.wires import DropFigures, WireFigures, lead_drop, wire_figures

__all__ = [
    "DropFigures",
    "MarkFigures",
    "PrefixFigures",
    "SumFigures",
    "WireFigures",
    "capacitor_of_code",
    "crc_sum",
    "lead_drop",
    "off_the_formula",
    "preferred_values",
    "prefix_figures",
    "resistor_of_code",
    "resistor_of_rings",
    "sum_figures",
    "wire_figures",
]
