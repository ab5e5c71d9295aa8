"""What can be found of a machine's sounds and messages: by what an ear calls them, by what stands on the screen."""

from collections.abc import Iterator

from benchsheaf.model.machine import Machine
from benchsheaf.pages.beeps import beep_way, message_way, unscaled
from benchsheaf.pages.finding.entry import Entry
from benchsheaf.pages.sheets import SHEETS
from benchsheaf.pages.shelf import Desk

TITLES = {sheet.name: sheet.title for sheet in SHEETS}


def sound_entries(desk: Desk, machine: Machine) -> Iterator[Entry]:
    """Each sound, each message, and the sections that people ask for."""
    workup = desk.shelf.workup.machines[machine.slug]
    figures = workup.sounds
    for beep, each in zip(machine.beeps, figures.beeps if figures else (), strict=True):
        text = f"{'Good: ' if beep.good else ''}{beep.means} Lasts {unscaled(each.lasts_s)}"
        more = ", ".join(beep.tones)
        yield _entry(machine, "Sound", beep.heard, beep_way(desk, beep).way, text, more)
    banks = workup.fault_codes.banks if workup.fault_codes else ()
    codes = " ".join(f"{bank.shown} {' '.join(each.mask for each in bank.bits)}" for bank in banks)
    for message in machine.messages:
        more = codes if "bank" in message.tokens else ""
        yield _entry(machine, "Message", message.shows, message_way(desk, message).way, message.means, more)
    yield from _sections(desk, machine)


def _sections(desk: Desk, machine: Machine) -> Iterator[Entry]:
    workup = desk.shelf.workup.machines[machine.slug]
    sections = (
        ("beeps", "confused", "Sounds that an ear may confuse", bool(workup.sounds and workup.sounds.alike)),
        ("beeps", "silence", "When nothing is heard", bool(machine.silence and (machine.beeps or machine.messages))),
        ("beeps", "messages", "Messages on the screen", bool(machine.messages)),
        ("memory", "codes", "From a message to the chip", workup.fault_codes is not None),
    )
    for sheet, fragment, title, is_there in sections:
        if is_there:
            yield _entry(machine, "Section", title, desk.sheet(sheet, fragment), sheet=sheet)


def _entry(
    machine: Machine, kind: str, title: str, way: str, text: str = "", more: str = "", sheet: str = "beeps"
) -> Entry:
    return Entry(
        kind=kind,
        title=title,
        where=f"{machine.name}, {TITLES[sheet]}",
        way=way,
        text=text,
        more=more,
        machines=(machine.slug,),
        designator=kind == "Message",
    )
