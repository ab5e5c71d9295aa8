"""The sheets of a machine: their order, their groups, and what each is made from."""

from dataclasses import dataclass

from benchsheaf.model.collection import Collection
from benchsheaf.model.machine import Machine

REPAIRS = "repairs"


@dataclass(frozen=True, kw_only=True, slots=True)
class Sheet:
    """One sheet: `rests_on` is the section of the data without which it is only wanted, unless there is `or_on`.

    With `by` the section is not enough: one of its items must have that field. Repair records are things of their own,
    each in its file, and no section of their machine.
    """

    name: str
    title: str
    group: str
    rests_on: str
    or_on: str | None = None
    by: str | None = None

    def wanted(self, machine: Machine, collection: Collection) -> bool:
        """Whether the machine lacks what the sheet rests on."""
        if self.rests_on == REPAIRS:
            return machine.slug not in collection.repairs_of
        if self.by:
            return not any(getattr(each, self.by) for each in getattr(machine, self.rests_on))
        return not (getattr(machine, self.rests_on) or (self.or_on and getattr(machine, self.or_on)))


SHEETS = (
    Sheet(name="glance", title="At a glance", group="Make safe", rests_on="name"),
    Sheet(name="first-power", title="Before first power", group="Make safe", rests_on="rails"),
    Sheet(name="ladder", title="Bringing it up", group="Make safe", rests_on="configurations", by="before"),
    Sheet(name="power", title="Power", group="Make safe", rests_on="configurations"),
    Sheet(name="boards", title="Boards and weak parts", group="Know it", rests_on="boards"),
    Sheet(name="memory", title="Memory", group="Know it", rests_on="memory"),
    Sheet(name="slots", title="Slots and cards", group="Know it", rests_on="slots"),
    Sheet(name="switches", title="Switches", group="Know it", rests_on="switches"),
    Sheet(name="firmware", title="Firmware", group="Know it", rests_on="firmware"),
    Sheet(name="drives", title="Drives and media", group="Know it", rests_on="bays"),
    Sheet(name="display", title="Clocks and picture", group="Know it", rests_on="clocks", or_on="display"),
    Sheet(name="beeps", title="Beeps and messages", group="Fix it", rests_on="beeps", or_on="messages"),
    Sheet(name="finding", title="Finding the fault", group="Fix it", rests_on="symptoms"),
    Sheet(name="checks", title="Checks", group="Fix it", rests_on="checks"),
    Sheet(name="apart", title="Taking it apart", group="Fix it", rests_on="removals"),
    Sheet(name="new-parts", title="New parts", group="Fix it", rests_on="boards"),
    Sheet(name="service", title="Back into service", group="Fix it", rests_on="procedures"),
    Sheet(name="repairs", title="Repair records", group="Fix it", rests_on=REPAIRS),
    Sheet(name="sources", title="Sources", group="Carry it", rests_on="sources"),
)
SHEETS_BY_NAME = {sheet.name: sheet for sheet in SHEETS}
GROUPS = ("Make safe", "Know it", "Fix it", "Carry it")
