"""What the look-up can find: a title, where it is, the way there, and the text in which it is looked for."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace

from benchsheaf.links import Thing
from benchsheaf.pages.shelf import Desk

# In the order in which equals are listed: whole things first, then what protects, then ever smaller things.
KINDS = (
    "Machine",
    "Supply",
    "Drive",
    "Card",
    "Keyboard",
    "Display",
    "Medium",
    "Bus",
    "Sheet",
    "Section",
    "Board",
    "Rail",
    "Caution",
    "Symptom",
    "Weak part",
    "Fault",
    "Check",
    "Sound",
    "Message",
    "Procedure",
    "Removal",
    "Repair record",
    "Plug",
    "Volume",
    "Memory bank",
    "Memory area",
    "Port",
    "Line",
    "Firmware",
    "Filling",
    "Outfit",
    "Switch",
    "Slot",
    "Mark",
    "Clock",
    "Picture mode",
    "Part",
    "New part",
    "Handbook",
    "Term",
    "Manual",
    "Field",
    "Mistake",
)


@dataclass(frozen=True, kw_only=True, slots=True)
class Entry:
    """Something to find.

    `way` leads from the site's own folder. `text` is looked through, and the line of it with the hit is shown; `more`
    is only looked through. `machines` are the slugs of those that hold it: on a machine's page they come first. What is
    `aside` is for those who write, and comes after what is for those who repair.
    """

    kind: str
    title: str
    where: str
    way: str
    text: str = ""
    more: str = ""
    machines: tuple[str, ...] = ()
    designator: bool = False
    aside: bool = False

    @property
    def rank(self) -> tuple[int, str, str, str]:
        """The place among all entries; a kind that is not ranked comes last."""
        place = KINDS.index(self.kind) if self.kind in KINDS else len(KINDS)
        return place, self.title, self.where, self.way


def in_words(entries: Iterable[Entry], desk: Desk, of: Thing | None = None) -> Iterator[Entry]:
    """Entries whose texts ask for no figure any more: it is printed in its place. `of` as for `Desk.told`."""
    for each in entries:
        if "[[" in each.text or "[[" in each.title:
            yield replace(each, title=desk.worded(each.title, of), text=desk.worded(each.text, of))
        else:
            yield each
