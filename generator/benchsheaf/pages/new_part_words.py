"""What a new capacitor or resistor is called, which of them are alike, and where each stands on its sheet."""

from collections.abc import Sequence
from decimal import Decimal

from benchsheaf.compute.workup.new_parts import NewCapacitor, NewResistor
from benchsheaf.pages.printing import anchor, quantity
from benchsheaf.pages.shelf import Desk
from benchsheaf.pages.shopping import NOUNS, owner_of_part


def alike(capacitors: Sequence[NewCapacitor]) -> list[list[NewCapacitor]]:
    """New capacitors that look alike and go the same way round, in the order of the first of them."""
    found: dict[object, list[NewCapacitor]] = {}
    for each in capacitors:
        look = (each.kind, each.sold_f, each.rated_v, each.stands_celsius, each.sort, each.way_round)
        found.setdefault(look, []).append(each)
    return list(found.values())


def capacitor_title(desk: Desk, new: NewCapacitor) -> str:
    """What a new capacitor is: `Aluminium electrolytic, 22 µF, 50 V, 105 °C`."""
    facts = [(new.sold_f, "F"), (new.rated_v, "V"), (new.stands_celsius, "°C")]
    sort = [desk.worded(new.sort, owner_of_part(desk, new.ref))] if new.sort else []
    return ", ".join([NOUNS[new.kind].capitalize(), *_told(facts), *sort])


def resistor_title(new: NewResistor) -> str:
    """What a new resistor is: `Resistor, 220 kΩ, 1 W, 500 V`."""
    return ", ".join(["Resistor", *_told([(new.resistance_ohm, "ohm"), (new.bears_w, "W"), (new.rated_v, "V")])])


def new_anchor(ref: str) -> str:
    """The place of a new part on its sheet, by the first part that it is for."""
    return f"new-{anchor(ref)}"


def _told(facts: Sequence[tuple[Decimal | None, str]]) -> list[str]:
    """Facts with their units, those that are known."""
    return [quantity(value, unit) for value, unit in facts if value is not None]
