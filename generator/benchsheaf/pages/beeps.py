"""Beeps and messages: what a machine says by sound and on its screen."""

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal

from benchsheaf.compute.beeps import BeepFigures
from benchsheaf.drawing.picture import Both
from benchsheaf.drawing.timeline import common_scale, timeline
from benchsheaf.markup import Markup
from benchsheaf.model.machine import Machine
from benchsheaf.model.signals import Beep, Message
from benchsheaf.pages.bench.behind import behind_signals
from benchsheaf.pages.bench.ways import Led
from benchsheaf.pages.glance import sheet_cautions
from benchsheaf.pages.printing import NARROW, words
from benchsheaf.pages.shelf import Desk
from benchsheaf.pages.views import CautionView, Named


@dataclass(frozen=True, kw_only=True, slots=True)
class BeepRow:
    """One code with its lane; `own` is what of its timing the sentence above all lanes does not say."""

    beep: Beep
    figures: BeepFigures
    lane: Both
    own: str
    banks: Sequence[Named]
    without: Sequence[Named]
    parts: Sequence[Markup]
    behind: Sequence[Led]
    messages: Sequence[Named]


@dataclass(frozen=True, kw_only=True, slots=True)
class AlikeRow:
    """Codes that an ear may confuse; `lasts` and `gap` where they have it in common."""

    how: str
    first: Named
    others: Sequence[Named]
    lasts: str
    gap: str


@dataclass(frozen=True, kw_only=True, slots=True)
class MessageRow:
    """One message; `code` leads to how its bank and bits are read."""

    message: Message
    beeps: Sequence[Named]
    without: Sequence[Named]
    parts: Sequence[Markup]
    behind: Sequence[Led]
    code: str | None


@dataclass(frozen=True, kw_only=True, slots=True)
class BeepsSheet:
    """The sheet about what the machine says."""

    cautions: Sequence[CautionView]
    timing: str
    rows: Sequence[BeepRow]
    pitches: int
    alike: Sequence[AlikeRow]
    silence: str | None
    messages: Sequence[MessageRow]
    finding: str | None


def beeps_sheet(desk: Desk, machine: Machine) -> BeepsSheet:
    """What the sheet says."""
    rows = _beep_rows(desk, machine)
    behind = behind_signals(desk, machine).messages
    return BeepsSheet(
        cautions=sheet_cautions(desk, machine, "beeps"),
        timing=timing_words(machine),
        rows=rows,
        pitches=len({tone.pitch_hz for row in rows for tone in row.figures.tones}),
        alike=_alike_rows(desk, machine),
        silence=machine.silence,
        messages=[_message_row(desk, machine, each, behind.get(each.id, ())) for each in machine.messages],
        finding=desk.sheet("finding") if machine.symptoms else None,
    )


def beep_way(desk: Desk, beep: Beep) -> Named:
    """A code by what an ear calls it, and the way to its lane."""
    return Named(name=beep.heard, way=desk.sheet("beeps", f"beep-{beep.id}"))


def message_way(desk: Desk, message: Message) -> Named:
    """A message as it stands on the screen, and the way to what is said of it."""
    return Named(name=message.shows, way=desk.sheet("beeps", f"message-{message.id}"))


def unscaled(value: Decimal, unit: str = "s") -> str:
    """A quantity in the unit itself, never in thousandths or thousands: those of a sheet are compared."""
    return f"{value:,f}{NARROW}{unit}"


def timing_words(machine: Machine) -> str:
    """How long tones, gaps and pauses are, as far as all codes have them in common; empty without a code."""
    if not machine.beeps:
        return ""
    pitches = {tone.pitch_hz for tone in machine.tones}
    clauses: list[str] = []
    for tone in machine.tones:
        at = f" at {unscaled(tone.pitch_hz, 'Hz')}" if len(pitches) > 1 else ""
        clauses.append(f"{words(tone.id)} {'' if clauses else 'is '}{unscaled(tone.lasts_s)}{at}")
    gaps = _gaps(machine)
    if len(gaps) == 1:
        clauses.append(f"the gap {unscaled(min(gaps))}")
    if len(pitches) == 1:
        clauses.append(f"the tone {unscaled(min(pitches), 'Hz')}")
    first = ", ".join(clauses)
    return f"{first[0].upper()}{first[1:]}. {_repeated(machine)}".rstrip()


def _gaps(machine: Machine) -> set[Decimal]:
    return {beep.gap_s for beep in machine.beeps if beep.gap_s is not None and len(beep.tones) > 1}


def _pauses(machine: Machine) -> set[Decimal]:
    return {beep.again_s for beep in machine.beeps if beep.again_s is not None}


def _repeated(machine: Machine) -> str:
    """Which codes are repeated and after what silence; where the silences differ each lane says its own."""
    once = [beep for beep in machine.beeps if beep.again_s is None]
    pauses = [beep.again_s for beep in machine.beeps if beep.again_s is not None]
    if not pauses:
        return "Each sounds once."
    if len(set(pauses)) > 1:
        return ""
    after = f"after {unscaled(pauses[0])} of silence."
    if not once:
        return f"All are repeated {after}"
    if all(beep.good for beep in once):
        return f"All but the good one are repeated {after}"
    return f"All but {' and '.join(beep.heard for beep in once)} are repeated {after}"


def _own_timing(machine: Machine, beep: Beep) -> str:
    told = []
    if len(_gaps(machine)) > 1 and len(beep.tones) > 1 and beep.gap_s is not None:
        told.append(f"gap {unscaled(beep.gap_s)}")
    if len(_pauses(machine)) > 1:
        told.append(f"again after {unscaled(beep.again_s)} of silence" if beep.again_s else "once")
    return ", ".join(told)


def _beep_rows(desk: Desk, machine: Machine) -> list[BeepRow]:
    figures = desk.shelf.workup.machines[machine.slug].sounds
    if figures is None:
        return []
    scale = common_scale(figures.beeps)
    behind = behind_signals(desk, machine).beeps
    return [
        BeepRow(
            beep=beep,
            figures=each,
            lane=timeline(each, scale, beep.heard, f"lane-{beep.id}"),
            own=_own_timing(machine, beep),
            banks=_banks(desk, machine, beep),
            without=_things(desk, beep.normal_without),
            parts=[desk.part(name) for name in beep.parts],
            behind=behind.get(beep.id, ()),
            messages=[message_way(desk, each) for each in machine.messages if beep.id in each.with_beeps],
        )
        for beep, each in zip(machine.beeps, figures.beeps, strict=True)
    ]


def _banks(desk: Desk, machine: Machine, beep: Beep) -> list[Named]:
    known = {bank.id: bank for bank in machine.memory.banks} if machine.memory else {}
    return [Named(name=known[name].on_screen, way=desk.sheet("memory", f"bank-{name}")) for name in beep.banks]


def _things(desk: Desk, slugs: Sequence[str]) -> list[Named]:
    held = [(desk.kind_of(slug), slug) for slug in slugs]
    return [Named(name=desk.shelf.name_of(kind, slug), way=desk.thing(kind, slug)) for kind, slug in held]


def _alike_rows(desk: Desk, machine: Machine) -> list[AlikeRow]:
    figures = desk.shelf.workup.machines[machine.slug].sounds
    if figures is None:
        return []
    beeps = {beep.id: beep for beep in machine.beeps}
    lasts = {each.id: each.lasts_s for each in figures.beeps}
    rows = []
    for alike in figures.alike:
        several = [beeps[name] for name in alike.beeps]
        same = {lasts[name] for name in alike.beeps}
        gaps = {beep.gap_s for beep in several[1:] if beep.gap_s is not None}
        rows.append(
            AlikeRow(
                how=alike.how,
                first=beep_way(desk, several[0]),
                others=[beep_way(desk, beep) for beep in several[1:]],
                lasts=unscaled(min(same)) if len(same) == 1 else "",
                gap=unscaled(min(gaps)) if len(gaps) == 1 else "",
            )
        )
    return rows


def _message_row(desk: Desk, machine: Machine, message: Message, behind: Sequence[Led]) -> MessageRow:
    beeps = {beep.id: beep for beep in machine.beeps}
    return MessageRow(
        message=message,
        beeps=[beep_way(desk, beeps[name]) for name in message.with_beeps],
        without=_things(desk, message.normal_without),
        parts=[desk.part(name) for name in message.parts],
        behind=behind,
        code=desk.sheet("memory", "codes") if "bank" in message.tokens else None,
    )
