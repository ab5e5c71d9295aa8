"""Whether a supply carries what is plugged in: rail by rail, running, starting, and the least that it needs."""

from benchsheaf.compute.power.figures import (
    GroundFigures,
    LeastLoadFigures,
    Load,
    LoadShare,
    PowerFigures,
    RailFigures,
    ResistorFigures,
    StartMoment,
    SupplyFigures,
)
from benchsheaf.compute.power.ladder import branches, ladder
from benchsheaf.compute.power.loads import power_figures
from benchsheaf.compute.power.resistors import (
    ground_figures,
    high_end,
    least_load_figures,
    low_end,
    resistor_figures,
    resistor_for,
    resistor_set,
    supply_figures,
)
from benchsheaf.compute.power.shorts import (
    SplitFigures,
    TrackFigures,
    copper_ohm,
    resistance_beside,
    split_figures,
    track_figures,
)

__all__ = [
    "GroundFigures",
    "LeastLoadFigures",
    "Load",
    "LoadShare",
    "PowerFigures",
    "RailFigures",
    "ResistorFigures",
    "SplitFigures",
    "StartMoment",
    "SupplyFigures",
    "TrackFigures",
    "branches",
    "copper_ohm",
    "ground_figures",
    "high_end",
    "ladder",
    "least_load_figures",
    "low_end",
    "power_figures",
    "resistance_beside",
    "resistor_figures",
    "resistor_for",
    "resistor_set",
    "split_figures",
    "supply_figures",
    "track_figures",
]
