"""What can be found of a machine's looks, clocks and picture modes."""

from collections.abc import Iterator
from dataclasses import dataclass
from functools import partial

from benchsheaf.drawing.views import feature_words
from benchsheaf.model.machine import Machine
from benchsheaf.pages.finding.entry import Entry
from benchsheaf.pages.rates import clock_words, lock_words, mode_settings, rate_words
from benchsheaf.pages.recognising import PLACES
from benchsheaf.pages.sheets import SHEETS
from benchsheaf.pages.shelf import Desk


@dataclass(frozen=True, kw_only=True, slots=True)
class On:
    """A sheet of a machine, on which something is found."""

    desk: Desk
    machine: Machine
    sheet: str

    def entry(self, kind: str, title: str, fragment: str, text: str, more: str = "") -> Entry:
        """Something at a place of the sheet."""
        sheet = next(each for each in SHEETS if each.name == self.sheet)
        return Entry(
            kind=kind,
            title=title,
            where=f"{self.machine.name}, {sheet.title}",
            way=self.desk.sheet(self.sheet, fragment),
            text=text,
            more=more,
            machines=(self.machine.slug,),
        )


def looks_entries(desk: Desk, machine: Machine) -> Iterator[Entry]:
    """Each mark, and what is seen of the front and the back."""
    glance = On(desk=desk, machine=machine, sheet="glance")
    for mark in machine.marks:
        told = f"{PLACES[mark.seen]}: {mark.here}; {'decides' if mark.decides else 'does not decide'}"
        yield glance.entry("Mark", mark.look, f"mark-{mark.id}", told, mark.note or "")
    for view in machine.views:
        told = ", ".join(feature_words(each) for each in view.features)
        yield glance.entry("Mark", view.name, f"view-{view.id}", told)


def clock_entries(desk: Desk, machine: Machine) -> Iterator[Entry]:
    """Each clock with its frequency, and the refresh of the memory."""
    sheet = partial(On, desk=desk, machine=machine)
    workup = desk.shelf.workup.machines[machine.slug]
    for clock, figures in zip(machine.clocks, workup.clocks, strict=True):
        told = ", ".join(filter(None, (clock_words(figures.frequency_hz), clock.part, clock.at)))
        yield sheet(sheet="display").entry("Clock", clock.name, f"clock-{clock.id}", told)
    if workup.refresh:
        yield sheet(sheet="memory").entry("Section", "Refresh of the memory", "refresh", "how often, and all rows")


def picture_entries(desk: Desk, machine: Machine) -> Iterator[Entry]:
    """Each picture mode of the cards as delivered: its rates, and what the display makes of them."""
    if next(each for each in SHEETS if each.name == "display").wanted(machine, desk.shelf.collection):
        return
    sheet = On(desk=desk, machine=machine, sheet="display")
    workup = desk.shelf.workup
    for each in workup.machines[machine.slug].pictures:
        card = desk.shelf.collection.cards[each.card]
        mode = next(mode for mode in card.modes if mode.id == each.mode)
        figures = next(mode for mode in workup.cards[each.card].modes if mode.id == each.mode)
        rates = f"{rate_words(figures.line_rate_hz)}, {rate_words(figures.frame_rate_hz)}"
        verdict = f"{desk.shelf.name_of('display', each.lock.display)}: {lock_words(each.lock)}" if each.lock else ""
        told = "; ".join(filter(None, (rates, f"{card.name} {mode_settings(mode)}".rstrip(), verdict)))
        yield sheet.entry("Picture mode", mode.name, f"mode-{each.card}-{each.mode}", told)
