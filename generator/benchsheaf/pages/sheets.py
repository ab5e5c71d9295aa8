"""The sheets of a machine: their order, their groups, and what each is made from."""

from dataclasses import dataclass

from benchsheaf.model.machine import Machine


@dataclass(frozen=True, kw_only=True, slots=True)
class Sheet:
    """One sheet: `rests_on` is the section of the data without which it is only wanted, unless there is `or_on`."""

    name: str
    title: str
    group: str
    rests_on: str
    or_on: str | None = None

    def wanted(self, machine: Machine) -> bool:
        """Whether the machine lacks what the sheet rests on."""
        return not (getattr(machine, self.rests_on) or (self.or_on and getattr(machine, self.or_on)))


SHEETS = (
    Sheet(name="glance", title="At a glance", group="Make safe", rests_on="name"),
    Sheet(name="first-power", title="Before first power", group="Make safe", rests_on="rails"),
    Sheet(name="power", title="Power", group="Make safe", rests_on="configurations"),
    Sheet(name="boards", title="Boards and weak parts", group="Know it", rests_on="boards"),
    Sheet(name="memory", title="Memory", group="Know it", rests_on="memory"),
    Sheet(name="slots", title="Slots and cards", group="Know it", rests_on="slots"),
    Sheet(name="switches", title="Switches", group="Know it", rests_on="switches"),
    Sheet(name="firmware", title="Firmware", group="Know it", rests_on="firmware"),
    Sheet(name="drives", title="Drives and media", group="Know it", rests_on="bays"),
    Sheet(name="display", title="Clocks and picture", group="Know it", rests_on="clocks", or_on="display"),
    Sheet(name="beeps", title="Beeps and messages", group="Fix it", rests_on="beeps", or_on="messages"),
    Sheet(name="sources", title="Sources", group="Carry it", rests_on="sources"),
)
GROUPS = ("Make safe", "Know it", "Fix it", "Carry it")
