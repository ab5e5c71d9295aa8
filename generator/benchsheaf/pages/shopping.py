"""The list of new parts of a machine in words, on its sheet and as a table for a spreadsheet."""

from collections.abc import Callable
from functools import partial

from benchsheaf import urls
from benchsheaf.compute.shopping import ShoppingLine
from benchsheaf.export import as_csv
from benchsheaf.pages.printing import quantity
from benchsheaf.pages.shelf import Desk, Shelf

NOUNS = {
    "tantalum": "tantalum bead",
    "electrolytic": "aluminium electrolytic",
    "film": "film capacitor",
    "paper": "film capacitor",
    "ceramic": "ceramic capacitor",
    "resistor": "resistor",
}
"""What a new part is called; what was of paper is replaced by film. Of other kinds the data say what to fit."""

WHEN = {True: "replaced anyway", False: "only if found bad"}
HEAD = ("when", "count", "what", "capacitance", "resistance", "rated", "bears", "stands", "contacts", "room", "for")


def shopping_files(shelf: Shelf) -> dict[str, Callable[[], bytes]]:
    """How the table of each machine that needs new parts is made, by its address."""
    return {
        urls.shopping_data(slug): partial(_table, shelf, slug)
        for slug, workup in shelf.workup.machines.items()
        if workup.new_parts.shopping
    }


def _table(shelf: Shelf, slug: str) -> bytes:
    desk = shelf.desk(urls.shopping_data(slug), shelf.collection.machines[slug])
    rows = [_row(desk, line) for line in shelf.workup.machines[slug].new_parts.shopping]
    return as_csv([HEAD, *rows])


def _row(desk: Desk, line: ShoppingLine) -> list[str]:
    """The cells of a line; what is not known is empty."""
    facts = (
        (line.capacitance_f, "F"),
        (line.resistance_ohm, "ohm"),
        (line.rated_v, "V"),
        (line.bears_w, "W"),
        (line.stands_celsius, "°C"),
    )
    values = [quantity(value, unit) if value is not None else "" for value, unit in facts]
    pins = str(line.pins) if line.pins else ""
    names = " ".join(line.refs)
    return [WHEN[line.anyway], str(line.count), sort_words(desk, line), *values, pins, room_words(line), names]


def sort_words(desk: Desk, line: ShoppingLine) -> str:
    """What sort of part it is: as its kind is called, then what is to be fitted."""
    noun = NOUNS.get(line.kind or "", "") if line.capacitance_f is not None or line.resistance_ohm is not None else ""
    sort = desk.worded(line.sort, owner_of_part(desk, line.refs[0])) if line.sort else ""
    return ", ".join(each for each in (noun, sort) if each) or "as the old one"


def value_words(line: ShoppingLine) -> str:
    """Its values in a row: `22 µF, 50 V, 105 °C`."""
    facts = (
        (line.capacitance_f, "F"),
        (line.resistance_ohm, "ohm"),
        (line.bears_w, "W"),
        (line.rated_v, "V"),
        (line.stands_celsius, "°C"),
    )
    told = [quantity(value, unit) for value, unit in facts if value is not None]
    return ", ".join([*told, *([f"{line.pins} contacts"] if line.pins else [])])


def room_words(line: ShoppingLine) -> str:
    """How much room there is on the board for each."""
    if line.width_mm is None or line.depth_mm is None:
        return ""
    return f"{quantity(line.width_mm, 'mm').partition(chr(0xA0))[0]} × {quantity(line.depth_mm, 'mm')}"


def owner_of_part(desk: Desk, name: str) -> tuple[str, str] | None:
    """Whose words they are, where that is not the machine."""
    slug = name.rpartition("/")[0]
    return (desk.kind_of(slug), slug) if slug else None
