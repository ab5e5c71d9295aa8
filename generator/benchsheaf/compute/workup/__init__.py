"""The table of contents of all figures: of a part, an outfit, a machine, the collection."""

from benchsheaf.compute.workup.figures import (
    CardWorkup,
    CollectionWorkup,
    DisplayWorkup,
    DriveWorkup,
    MachineWorkup,
    OutfitWorkup,
    SupplyWorkup,
    collection_workup,
    machine_workup,
    outfit_workup,
    sheaf_of,
)
from benchsheaf.compute.workup.loads import outfit_loads

__all__ = [
    "CardWorkup",
    "CollectionWorkup",
    "DisplayWorkup",
    "DriveWorkup",
    "MachineWorkup",
    "OutfitWorkup",
    "SupplyWorkup",
    "collection_workup",
    "machine_workup",
    "outfit_loads",
    "outfit_workup",
    "sheaf_of",
]
