"""Which memory chip a message of the machine means: the bank that it names, and the bits that differ."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from benchsheaf.compute.memory_map import chip_bits, with_own_parity
from benchsheaf.model.memory import Bank, Memory
from benchsheaf.model.signals import CodeExample, Message
from benchsheaf.standards import BITS_A_BYTE

LETTERS = {"bank": "b", "exclusive-or": "x"}
"""The letter that stands in a message for what changes, as often as the screen has signs there."""


@dataclass(frozen=True, kw_only=True, slots=True)
class BitFigures:
    """One bit of a bank: what a message shows if it alone differs, and the chip that holds it."""

    bit: int
    mask: str
    part: str


@dataclass(frozen=True, kw_only=True, slots=True)
class BankFigures:
    """A bank as messages write it, bit by bit; chips of several bits stand at each of theirs."""

    bank: str
    shown: str
    bits: tuple[BitFigures, ...]
    parity: tuple[str, ...]


@dataclass(frozen=True, kw_only=True, slots=True)
class CodeFigures:
    """A code as the screen would show it, worked out; without bits it is the parity that is wrong."""

    message: str
    shows: str
    bank: str
    bits: tuple[int, ...]
    parts: tuple[str, ...]


@dataclass(frozen=True, kw_only=True, slots=True)
class FaultCodeFigures:
    """What a machine's messages say about its memory chips."""

    banks: tuple[BankFigures, ...]
    examples: tuple[CodeFigures, ...]


def fault_code_figures(memory: Memory, messages: Sequence[Message]) -> FaultCodeFigures | None:
    """The chips behind the messages that name a bank; None where no message does.

    Errors: KeyError if a bank is not known; links have seen to that.
    """
    naming = [message for message in messages if "bank" in message.tokens]
    if not naming:
        return None
    banks = {bank.id: bank_figures(memory, bank) for bank in memory.banks}
    examples = [code_figures(message, each, banks[each.bank]) for message in naming for each in message.examples]
    return FaultCodeFigures(banks=tuple(banks.values()), examples=tuple(examples))


def bank_figures(memory: Memory, bank: Bank) -> BankFigures:
    """The chip of each bit of a bank, and what holds its parity: chips of its own, or the last of the row."""
    chips = {bit: each.ref for each in chip_bits(bank) for bit in range(each.first, each.last + 1)}
    own = bank.bits[-1:] if with_own_parity(memory, bank) else ()
    return BankFigures(
        bank=bank.id,
        shown=bank.on_screen,
        bits=tuple(
            BitFigures(bit=bit, mask=f"{1 << bit:02X}", part=part) for bit, part in chips.items() if bit < BITS_A_BYTE
        ),
        parity=bank.parity or own,
    )


def differing_bits(exclusive_or: str) -> tuple[int, ...]:
    """The bits that are set in a hexadecimal number, lowest first: those in which what was read differs.

    Errors: ValueError if it is no hexadecimal number.
    """
    number = int(exclusive_or, 16)
    return tuple(bit for bit in range(number.bit_length()) if number >> bit & 1)


def code_figures(message: Message, example: CodeExample, bank: BankFigures) -> CodeFigures:
    """One code worked out: the chips of the bits that differ, or those of the parity where no bits are told.

    A chip that holds several of the bits is named once. Bits that the bank has not are left out; a rule tells of them.
    """
    bits = differing_bits(example.exclusive_or) if example.exclusive_or else ()
    chips = {each.bit: each.part for each in bank.bits}
    parts = tuple(dict.fromkeys(chips[bit] for bit in bits if bit in chips)) if bits else bank.parity
    values = {"bank": bank.shown, "exclusive-or": example.exclusive_or or ""}
    return CodeFigures(
        message=message.id,
        shows=code_shown(message, values),
        bank=bank.bank,
        bits=bits,
        parts=parts,
    )


def code_shown(message: Message, values: Mapping[str, str]) -> str:
    """A message with values in the place of its letters, a number with noughts to the width of its letters."""
    put = {letters_of(message.shows, token): values[token] for token in message.tokens}
    words = (put[word].rjust(len(word), "0") if word in put else word for word in message.shows.split(" "))
    return " ".join(words)


def letters_of(shows: str, token: str) -> str | None:
    """The letters of a message that stand for what changes: `xx` in `STORE b xx`; None if there are none."""
    return next((word for word in shows.split(" ") if set(word) == {LETTERS[token]}), None)
