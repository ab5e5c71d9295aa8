"""Clocks and picture: what runs at which rate, what is sent to the screen, and whether the screen can lock to it."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from benchsheaf.compute.clocks import ClockFigures
from benchsheaf.drawing.clock_tree import Node, clock_tree
from benchsheaf.drawing.picture import Both
from benchsheaf.markup import Markup
from benchsheaf.model.displays import Display
from benchsheaf.model.machine import Machine
from benchsheaf.model.signals import Clock
from benchsheaf.pages.glance import sheet_cautions
from benchsheaf.pages.modes import ModeRow, mode_row, rates_picture
from benchsheaf.pages.printing import number, span
from benchsheaf.pages.rates import clock_words, rate_contacts
from benchsheaf.pages.shelf import Desk
from benchsheaf.pages.views import CautionView

SHORT_DIVISOR = 255
"""Above it a divisor is written in hexadecimal as well, as it stands in the registers of a counter."""


@dataclass(frozen=True, kw_only=True, slots=True)
class ClockRow:
    """A clock with its rate in print, the name of what it comes from, and its part."""

    clock: Clock
    rate: str
    of: str
    divisor: str
    part: Markup | None


@dataclass(frozen=True, kw_only=True, slots=True)
class DisplaySheet:
    """The sheet about clocks and picture."""

    cautions: Sequence[CautionView]
    display: Display | None
    display_way: str
    contacts: str
    delivered: Sequence[ModeRow]
    modes: Sequence[ModeRow]
    ranges: Both | None
    clocks: Sequence[ClockRow]
    tree: Both | None


def display_sheet(desk: Desk, machine: Machine) -> DisplaySheet:
    """What the sheet says."""
    display = desk.shelf.collection.displays[machine.display] if machine.display else None
    modes = _modes(desk, machine)
    clocks = list(_clock_rows(desk, machine))
    return DisplaySheet(
        cautions=[*_wrong_rates(desk, display, modes), *sheet_cautions(desk, machine, "display")],
        display=display,
        display_way=desk.thing("display", display.slug) if display else "",
        contacts=rate_contacts(display) if display else "",
        delivered=[row for row in modes if row.as_set],
        modes=modes,
        ranges=rates_picture(display, modes) if display else None,
        clocks=clocks,
        tree=clock_tree([_node(row) for row in clocks], "clocks") if clocks else None,
    )


def _modes(desk: Desk, machine: Machine) -> list[ModeRow]:
    """The modes of all cards that are plugged in, against the machine's own display."""
    return [
        mode_row(desk, each.card, each.mode, [each.lock] if each.lock else [], as_set=each.as_set)
        for each in desk.shelf.workup.machines[machine.slug].pictures
    ]


def _wrong_rates(desk: Desk, display: Display | None, modes: Sequence[ModeRow]) -> Iterator[CautionView]:
    """A caution made from the figures: the modes that the display cannot lock to."""
    wrong = [row for row in modes if row.mark == "stop"]
    if display is None or not wrong:
        return
    names = " or ".join(row.settings or row.mode.name for row in wrong)
    rates = "; ".join(f"{row.settings or row.mode.name} gives {row.line_rate} and {row.frame_rate}" for row in wrong)
    locks = f"{span(display.line, 'Hz')} and {span(display.frame, 'Hz')}"
    seen = desk.told(display.wrong_rate, ("display", display.slug)) if display.wrong_rate else Markup("")
    yield CautionView(
        ident="caution-wrong-rate",
        sign="plug-out",
        order=Markup("{} cannot lock with {}: switch it off at once.").format(display.name, names),
        says=Markup("{}, and it locks at {} only. {}").format(rates, locks, seen),
        stop=Markup("No {} on the picture plug until both rates are measured and fit.").format(display.name),
    )


def _clock_rows(desk: Desk, machine: Machine) -> Iterator[ClockRow]:
    names = {clock.id: clock.name for clock in machine.clocks}
    figures: dict[str, ClockFigures] = {each.id: each for each in desk.shelf.workup.machines[machine.slug].clocks}
    for clock in machine.clocks:
        divisor = number(clock.divided_by) if clock.divided_by else ""
        if clock.divided_by and clock.divided_by > SHORT_DIVISOR:
            divisor += f" ({clock.divided_by:04X}h)"
        yield ClockRow(
            clock=clock,
            rate=clock_words(figures[clock.id].frequency_hz),
            of=names.get(clock.of or "", ""),
            divisor=divisor,
            part=desk.part(clock.part) if clock.part else None,
        )


def _node(row: ClockRow) -> Node:
    clock = row.clock
    return Node(
        id=clock.id,
        name=clock.name,
        rate=row.rate,
        part=(clock.part or "").rpartition("/")[2],
        of=clock.of,
        divided_by=clock.divided_by,
    )
