"""Whether codes of sound can be told apart, and messages read as they are said to be."""

from collections.abc import Iterator
from dataclasses import replace

from benchsheaf.compute.beeps import heard_tones
from benchsheaf.compute.fault_codes import LETTERS, differing_bits, letters_of
from benchsheaf.mistakes import Code, Mistake
from benchsheaf.model.signals import Beep, CodeExample, Message
from benchsheaf.quantities import printed
from benchsheaf.rules.scene import MachineScene
from benchsheaf.standards import BITS_A_BYTE

SENSE_40 = Code(
    id="SENSE-40",
    meaning="Two codes of sound have the same tones and gap, and nobody can tell them apart.",
    words="This sounds the same as `{other}`. Mend the tones of one, or make one code of them that means both.",
    example={"other": "rom-sum"},
)
SENSE_41 = Code(
    id="SENSE-41",
    meaning="More than one code of sound is the good one.",
    words="`{other}` is the good one already. Only one sound can tell of a healthy start: take `good` off one of "
    "the two.",
    example={"other": "good"},
)
SENSE_42 = Code(
    id="SENSE-42",
    meaning="A code of several tones has no gap.",
    words="{count} tones without a gap are one long tone. Add `gap:` with the silence between two of them.",
    example={"count": "3"},
)
SENSE_43 = Code(
    id="SENSE-43",
    meaning="The silence before a code is repeated is not longer than the gap inside it.",
    words="It is repeated after {again}, which must be longer than the gap of {gap}: else nobody hears where it ends.",
    example={"again": "100 ms", "gap": "180 ms"},
)
SENSE_44 = Code(
    id="SENSE-44",
    meaning="A message names a memory bank, and the machine has none.",
    words="This message names a bank, and no banks are described. Add `memory:` with its banks, or take `bank` out.",
)
SENSE_45 = Code(
    id="SENSE-45",
    meaning="What changes in a message has no letters in it.",
    words="`{shows}` has no word of the letter {letter} alone, which stands for {token} on the screen. Add it, or "
    "mend `tokens`.",
    example={"shows": "STORE", "letter": "b", "token": "the bank"},
)
SENSE_46 = Code(
    id="SENSE-46",
    meaning="An example of a message does not fit what changes in it.",
    words="{why}",
    example={"why": "This message tells no bits that differ: take `exclusive_or` out."},
)
SENSE_47 = Code(
    id="SENSE-47",
    meaning="Tones, or what silence means, are described, and no code of sound is.",
    words="No page would show this, since no sound is described. Add `beeps:` with what is heard, or take it out.",
)

TOKENS = {"bank": "the bank", "exclusive-or": "the bits that differ"}


def sound_mistakes(scene: MachineScene) -> Iterator[Mistake]:
    """All codes of sound, then all messages."""
    yield from _unheard(scene)
    yield from _same_sounds(scene)
    good = [(index, beep) for index, beep in enumerate(scene.machine.beeps) if beep.good]
    for index, _ in good[1:]:
        yield scene.mistake(SENSE_41, "beeps", index, "good", other=good[0][1].id)
    for index, beep in enumerate(scene.machine.beeps):
        yield from _silences(scene, index, beep)
    for index, message in enumerate(scene.machine.messages):
        yield from _message(scene, index, message)


def _unheard(scene: MachineScene) -> Iterator[Mistake]:
    """What a page would have no place for."""
    machine = scene.machine
    if machine.tones and not machine.beeps:
        yield scene.mistake(SENSE_47, "tones")
    if machine.silence and not (machine.beeps or machine.messages):
        yield scene.mistake(SENSE_47, "silence")


def _same_sounds(scene: MachineScene) -> Iterator[Mistake]:
    """Codes that are the same to an ear; one that sounds once and one that is repeated can be told apart."""
    tones = {tone.id: tone for tone in scene.machine.tones}
    first: dict[object, str] = {}
    for index, beep in enumerate(scene.machine.beeps):
        gap = beep.gap_s if len(beep.tones) > 1 else None
        other = first.setdefault((heard_tones(tones, beep), gap, beep.again_s is None), beep.id)
        if other != beep.id:
            yield scene.mistake(SENSE_40, "beeps", index, "tones", other=other)


def _silences(scene: MachineScene, index: int, beep: Beep) -> Iterator[Mistake]:
    if len(beep.tones) == 1:
        return
    if beep.gap_s is None:
        yield scene.mistake(SENSE_42, "beeps", index, "tones", count=str(len(beep.tones)))
    elif beep.again_s is not None and beep.again_s <= beep.gap_s:
        words = {"again": printed(beep.again_s, "s"), "gap": printed(beep.gap_s, "s")}
        yield scene.mistake(SENSE_43, "beeps", index, "again", **words)


def _message(scene: MachineScene, index: int, message: Message) -> Iterator[Mistake]:
    """Its letters, then its examples; without a bank on the machine neither tells anything more."""
    path = ("messages", index)
    if "bank" in message.tokens and scene.machine.memory is None:
        yield scene.mistake(SENSE_44, *path, "tokens")
        return
    for token in message.tokens:
        if letters_of(message.shows, token) is None:
            words = {"shows": message.shows, "letter": LETTERS[token], "token": TOKENS[token]}
            yield scene.mistake(SENSE_45, *path, "shows", **words)
    for number, example in enumerate(message.examples):
        why = _misfit(message, example)
        if why:
            told = scene.mistake(SENSE_46, *path, "examples", number, why=why)
            yield replace(told, about=("example", told.place.file, message.id, why))


def _misfit(message: Message, example: CodeExample) -> str | None:
    """Why an example cannot stand on the screen; None if it can."""
    if "bank" not in message.tokens:
        return "This message names no bank: add `bank` to `tokens`, or take the example out."
    if "exclusive-or" not in message.tokens:
        return "This message tells no bits that differ: take `exclusive_or` out." if example.exclusive_or else None
    if example.exclusive_or is None:
        return "This message tells the bits that differ: add `exclusive_or` with a hexadecimal number."
    bits = differing_bits(example.exclusive_or)
    if not bits:
        return "Without a bit that differs there is no message: give a number that is not 0."
    return (
        None
        if bits[-1] < BITS_A_BYTE
        else f"A bank is one byte wide: give a number up to FF, not {example.exclusive_or}."
    )
