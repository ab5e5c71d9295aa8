"""The table of contents of all figures: of a part, an outfit, a machine, the collection."""

from benchsheaf.compute.workup.figures import (
    CardWorkup,
    CollectionWorkup,
    DisplayWorkup,
    DriveWorkup,
    MachineWorkup,
    SupplyWorkup,
    card_workup,
    collection_workup,
    drive_workup,
    machine_workup,
    sheaf_of,
)
from benchsheaf.compute.workup.loads import outfit_fill, outfit_loads, outfit_settings
from benchsheaf.compute.workup.outfit import OutfitWorkup, outfit_workup

__all__ = [
    "CardWorkup",
    "CollectionWorkup",
    "DisplayWorkup",
    "DriveWorkup",
    "MachineWorkup",
    "OutfitWorkup",
    "SupplyWorkup",
    "card_workup",
    "collection_workup",
    "drive_workup",
    "machine_workup",
    "outfit_fill",
    "outfit_loads",
    "outfit_settings",
    "outfit_workup",
    "sheaf_of",
]
