"""How a message that names a memory bank is read, with codes worked out to the chip."""

from collections.abc import Sequence
from dataclasses import dataclass

from benchsheaf.compute.fault_codes import CodeFigures
from benchsheaf.markup import Markup
from benchsheaf.model.machine import Machine
from benchsheaf.pages.beeps import message_way
from benchsheaf.pages.shelf import Desk
from benchsheaf.pages.views import Named


@dataclass(frozen=True, kw_only=True, slots=True)
class CodeRow:
    """One code worked out: what the screen shows, the bank's row, the bits, the chips."""

    figures: CodeFigures
    bank: Named
    parts: Sequence[Markup]


@dataclass(frozen=True, kw_only=True, slots=True)
class FaultCodesView:
    """Messages that name a bank: those that tell the bits, those that mean the parity, and codes worked out."""

    with_bits: Sequence[Named]
    without_bits: Sequence[Named]
    rows: Sequence[CodeRow]


def fault_codes_view(desk: Desk, machine: Machine) -> FaultCodesView | None:
    """What the section says; None for a machine whose messages name no bank."""
    figures = desk.shelf.workup.machines[machine.slug].fault_codes
    if figures is None:
        return None
    naming = [message for message in machine.messages if "bank" in message.tokens]
    shown = {bank.bank: bank.shown for bank in figures.banks}
    return FaultCodesView(
        with_bits=[message_way(desk, each) for each in naming if "exclusive-or" in each.tokens],
        without_bits=[message_way(desk, each) for each in naming if "exclusive-or" not in each.tokens],
        rows=[
            CodeRow(
                figures=each,
                bank=Named(name=shown[each.bank], way=desk.sheet("memory", f"bank-{each.bank}")),
                parts=[desk.part(name) for name in each.parts],
            )
            for each in figures.examples
        ],
    )
