"""What a rule sees: the record, its figures, and the description in which a mistake would stand."""

from collections.abc import Mapping
from dataclasses import dataclass, field

from benchsheaf.compute.workup import CardWorkup, DriveWorkup, MachineWorkup
from benchsheaf.conformity import Conformed
from benchsheaf.fields import text_at
from benchsheaf.mistakes import Code, Mistake
from benchsheaf.model.bench import Repair
from benchsheaf.model.cards import Bus, Card, Keyboard
from benchsheaf.model.collection import Collection
from benchsheaf.model.displays import Display
from benchsheaf.model.drives import Drive
from benchsheaf.model.machine import Machine
from benchsheaf.model.supply import Supply

Path = tuple[str | int, ...]


@dataclass(frozen=True, kw_only=True, slots=True)
class Scene:
    """The description that a mistake is told in."""

    conformed: Conformed

    def mistake(self, code: Code, *path: str | int, **fills: str) -> Mistake:
        """A mistake at a path of the description, with the contributor's own characters."""
        found = text_at(self.conformed.entry.values, path)
        place = self.conformed.entry.place(path)
        return code.at(place, self.conformed.spoken(path), found, **fills)


@dataclass(frozen=True, kw_only=True, slots=True)
class MachineScene(Scene):
    """A machine with its figures and all that it may hold."""

    machine: Machine
    workup: MachineWorkup
    collection: Collection

    @property
    def supply(self) -> Supply:
        """The supply that the machine was built with."""
        return self.collection.supplies[self.machine.supply]


@dataclass(frozen=True, kw_only=True, slots=True)
class PartScene(Scene):
    """A shared part, with its figures where it is a drive or a card; `buses` are those that a card may speak."""

    part: Supply | Drive | Card | Keyboard | Display
    workup: DriveWorkup | CardWorkup | None = None
    buses: Mapping[str, Bus] = field(default_factory=dict)


@dataclass(frozen=True, kw_only=True, slots=True)
class BusScene(Scene):
    """A bus, which has no figures of its own."""

    bus: Bus


@dataclass(frozen=True, kw_only=True, slots=True)
class RepairScene(Scene):
    """One repair record."""

    repair: Repair
