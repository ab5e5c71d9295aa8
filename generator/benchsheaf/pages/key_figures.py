"""The figures at the head of a machine's first sheet: what somebody asks of it before anything else."""

from dataclasses import dataclass

from benchsheaf.model.machine import Machine
from benchsheaf.pages.printing import binary, figure, quantity, span
from benchsheaf.pages.rates import clock_words, rate_words
from benchsheaf.pages.shelf import Desk

MOST = 8


@dataclass(frozen=True, kw_only=True, slots=True)
class KeyFigure:
    """One of the figures under the cautions."""

    term: str
    words: str
    under: str = ""


def key_figures(desk: Desk, machine: Machine) -> list[KeyFigure]:
    """Those of which the facts are there, eight at the most."""
    outfit = desk.shelf.workup.machines[machine.slug].outfits[0]
    delivered = machine.configurations[0]
    supply = desk.shelf.collection.supplies[machine.supply]
    figures = [KeyFigure(term="Built", words=str(machine.built))]
    if machine.processor:
        clock = _processor_clock(desk, machine)
        figures.append(KeyFigure(term="Processor", words=quantity(machine.processor.word_bits, "bit"), under=clock))
    if outfit.fill:
        under = f"{outfit.fill.chips} chips" + (", with parity" if outfit.fill.parity_chips else ", no parity")
        figures.append(KeyFigure(term="Memory as delivered", words=binary(outfit.fill.total_bytes), under=under))
    if machine.slots:
        bus = desk.shelf.collection.buses[machine.bus].name if machine.bus else ""
        under = f"{len(delivered.slots)} filled"
        figures.append(KeyFigure(term="Slots", words=f"{len(machine.slots)} of {bus}", under=under))
    figures.append(KeyFigure(term="Mains", words=f"{span(supply.mains, 'V')} only"))
    if outfit.power.run_w:
        share = f"{figure(outfit.power, 'run_share', 1)} of {quantity(supply.together_w, 'W')}"
        figures.append(KeyFigure(term="Running", words=figure(outfit.power, "run_w"), under=share))
        share = f"{figure(outfit.power, 'start_share', 1)} of {quantity(supply.together_w, 'W')}"
        figures.append(KeyFigure(term="Starting", words=figure(outfit.power, "start_w"), under=share))
    figures += _picture_figure(desk, machine)
    drives = [desk.shelf.collection.drives[bay.holds].name for bay in delivered.bays]
    if drives and len(figures) < MOST:
        figures.append(KeyFigure(term="Drives", words=str(len(drives)), under=" and ".join(drives)))
    return figures


def _processor_clock(desk: Desk, machine: Machine) -> str:
    """The frequency of the clock that drives the processor; nothing where it is not known."""
    named = machine.processor.clock if machine.processor else None
    clocks = desk.shelf.workup.machines[machine.slug].clocks
    return next((clock_words(each.frequency_hz) for each in clocks if each.id == named), "")


def _picture_figure(desk: Desk, machine: Machine) -> list[KeyFigure]:
    """The rates of the picture as delivered; of several cards those of the first."""
    for each in desk.shelf.workup.machines[machine.slug].pictures:
        if each.as_set:
            (mode,) = (mode for mode in desk.shelf.workup.cards[each.card].modes if mode.id == each.mode)
            words = f"{rate_words(mode.line_rate_hz)}, {rate_words(mode.frame_rate_hz)}"
            return [KeyFigure(term="Picture", words=words, under="measure before a screen is connected")]
    return []
