"""Whether a supply carries what is plugged in: rail by rail, running, starting, and the least that it needs."""

from benchsheaf.compute.power.figures import (
    GroundFigures,
    Load,
    LoadShare,
    PowerFigures,
    RailFigures,
    ResistorFigures,
    SupplyFigures,
)
from benchsheaf.compute.power.loads import power_figures
from benchsheaf.compute.power.resistors import ground_figures, resistor_figures, resistor_for, supply_figures

__all__ = [
    "GroundFigures",
    "Load",
    "LoadShare",
    "PowerFigures",
    "RailFigures",
    "ResistorFigures",
    "SupplyFigures",
    "ground_figures",
    "power_figures",
    "resistor_figures",
    "resistor_for",
    "supply_figures",
]
