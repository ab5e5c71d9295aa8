"""The sheets of one machine, each with its address, its title and the way to write it."""

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from benchsheaf import urls
from benchsheaf.model.machine import Machine
from benchsheaf.pages.beeps import beeps_sheet
from benchsheaf.pages.bench.apart import apart_sheet
from benchsheaf.pages.bench.checks import checks_sheet
from benchsheaf.pages.bench.faults import finding_sheet
from benchsheaf.pages.bench.repairs import repair_pages, repairs_sheet
from benchsheaf.pages.bench.service import service_sheet
from benchsheaf.pages.decoding import slots_sheet
from benchsheaf.pages.display import display_sheet
from benchsheaf.pages.firmware import firmware_sheet
from benchsheaf.pages.first_power import first_power_sheet
from benchsheaf.pages.frame import Frame, sheet_frame
from benchsheaf.pages.glance import boards_sheet, glance_sheet
from benchsheaf.pages.handbook.book import in_handbook
from benchsheaf.pages.ladder import ladder_sheet
from benchsheaf.pages.memory import memory_sheet
from benchsheaf.pages.new_parts import new_parts_sheet
from benchsheaf.pages.page import Page
from benchsheaf.pages.power import power_sheet
from benchsheaf.pages.sheaf import drives_sheet, sources_sheet
from benchsheaf.pages.sheets import REPAIRS, SHEETS, Sheet
from benchsheaf.pages.shelf import Desk, Shelf
from benchsheaf.pages.switches import switches_sheet

CONTENTS: Mapping[str, Callable[[Desk, Machine], Any]] = {
    "glance": glance_sheet,
    "first-power": first_power_sheet,
    "ladder": ladder_sheet,
    "power": power_sheet,
    "boards": boards_sheet,
    "memory": memory_sheet,
    "slots": slots_sheet,
    "switches": switches_sheet,
    "firmware": firmware_sheet,
    "drives": drives_sheet,
    "display": display_sheet,
    "beeps": beeps_sheet,
    "finding": finding_sheet,
    "checks": checks_sheet,
    "apart": apart_sheet,
    "new-parts": new_parts_sheet,
    "service": service_sheet,
    "repairs": repairs_sheet,
    "sources": sources_sheet,
}


def machine_pages(shelf: Shelf, machine: Machine) -> Iterator[Page]:
    """A page for each sheet that is not merely wanted, and one for each repair record."""
    for sheet in SHEETS:
        if not sheet.wanted(machine, shelf.collection):
            yield _page(shelf, machine, sheet)
    yield from repair_pages(shelf, machine)


@dataclass(frozen=True, kw_only=True, slots=True)
class _Unwritten:
    """A sheet that waits to be written; a large site has thousands, so each is small."""

    shelf: Shelf
    machine: Machine
    sheet: Sheet

    @property
    def here(self) -> str:
        """Its address."""
        return urls.sheet(self.machine.slug, self.sheet.name)

    def frame(self) -> Frame:
        """What stands around its contents, and in the column beside it."""
        here = self.here
        return self.shelf.kept(
            "frame", here, lambda: sheet_frame(self.shelf.desk(here, self.machine), self.machine, self.sheet)
        )

    def written(self) -> str:
        """The finished HTML of its contents."""
        desk = self.shelf.desk(self.here, self.machine)
        contents = CONTENTS[self.sheet.name](desk, self.machine)
        printed = desk.printed(f"{self.sheet.name}.html", frame=self.frame(), sheet=contents)
        return printed + in_handbook(desk, self.sheet.name)

    def column(self) -> str:
        """The finished HTML of the column beside it."""
        return self.shelf.desk(self.here, self.machine).printed("column.html", frame=self.frame())


def _page(shelf: Shelf, machine: Machine, sheet: Sheet) -> Page:
    waiting = _Unwritten(shelf=shelf, machine=machine, sheet=sheet)
    return Page(
        address=waiting.here,
        title=f"{machine.name}: {sheet.title}",
        written=waiting.written,
        column=waiting.column,
        edit=_edit(shelf, machine, sheet),
        brings=(urls.machine_data(machine.slug),) if sheet.name == "glance" else (),
    )


def _edit(shelf: Shelf, machine: Machine, sheet: Sheet) -> str:
    """The data file behind a sheet: behind the records the newest of them."""
    if sheet.rests_on == REPAIRS:
        return shelf.edit_path(("repair", shelf.collection.repairs_of[machine.slug][-1].slug), "date")
    return shelf.edit_path(("machine", machine.slug), sheet.rests_on)
