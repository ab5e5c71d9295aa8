"""Figures of the handbook: they follow from standards alone, and from no machine."""

from benchsheaf.compute.handbook.checksums import SumFigures, crc_sum, sum_figures
from benchsheaf.compute.handbook.markings import MarkFigures, capacitor_of_code, resistor_of_code, resistor_of_rings
from benchsheaf.compute.handbook.prefixes import PrefixFigures, prefix_figures
from benchsheaf.compute.handbook.series import off_the_formula, preferred_values
from benchsheaf.compute.handbook.volumes import DataFigures, VolumeFigures, clusters_taken, data_figures, volume_figures
from benchsheaf.compute.handbook.wires import DropFigures, WireFigures, lead_drop, wire_figures

__all__ = [
    "DataFigures",
    "DropFigures",
    "MarkFigures",
    "PrefixFigures",
    "SumFigures",
    "VolumeFigures",
    "WireFigures",
    "capacitor_of_code",
    "clusters_taken",
    "crc_sum",
    "data_figures",
    "lead_drop",
    "off_the_formula",
    "preferred_values",
    "prefix_figures",
    "resistor_of_code",
    "resistor_of_rings",
    "sum_figures",
    "volume_figures",
    "wire_figures",
]
