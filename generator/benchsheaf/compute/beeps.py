"""How long each code of a machine sounds, when each of its tones begins and ends, and which ones an ear may confuse."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from decimal import Decimal
from itertools import combinations

from benchsheaf.model.signals import Beep, Tone

Heard = tuple[tuple[Decimal, Decimal], ...]
"""What reaches the ear of a code: of each tone its length and its pitch, whatever it is called."""


@dataclass(frozen=True, kw_only=True, slots=True)
class ToneFigures:
    """One tone of a code, from its beginning to its end, counted from the beginning of the code."""

    tone: str
    start_s: Decimal
    end_s: Decimal
    pitch_hz: Decimal


@dataclass(frozen=True, kw_only=True, slots=True)
class BeepFigures:
    """One code: from its first tone to the end of its last, without the silence before it is repeated."""

    id: str
    lasts_s: Decimal
    tones: tuple[ToneFigures, ...]


@dataclass(frozen=True, kw_only=True, slots=True)
class AlikeFigures:
    """Codes that an ear may confuse, and how.

    `same`: the same tones in the same order, so that only gaps, or whether it is repeated, tell them apart.
    `order`: the same tones in another order. `begins`: the first one is how the others begin. `ends`: the first one is
    how the others end, and these are repeated, so that whoever listens late hears it.
    """

    how: str
    beeps: tuple[str, ...]


@dataclass(frozen=True, kw_only=True, slots=True)
class SoundFigures:
    """All codes of a machine."""

    beeps: tuple[BeepFigures, ...]
    alike: tuple[AlikeFigures, ...]


def sound_figures(tones: Sequence[Tone], beeps: Sequence[Beep]) -> SoundFigures:
    """When each tone of each code sounds, and which codes are alike.

    Units: second and hertz.
    Errors: KeyError if a tone is not known; links have seen to that.
    """
    known = {tone.id: tone for tone in tones}
    return SoundFigures(
        beeps=tuple(beep_figures(known, beep) for beep in beeps),
        alike=tuple(_alike({beep.id: heard_tones(known, beep) for beep in beeps}, beeps)),
    )


def beep_figures(tones: Mapping[str, Tone], beep: Beep) -> BeepFigures:
    """The timeline of one code: its length is the sum of its tones and of the gaps between them.

    Units: second and hertz.
    Errors: KeyError if a tone is not known.
    """
    found = []
    start = end = Decimal(0)
    for name in beep.tones:
        end = start + tones[name].lasts_s
        found.append(ToneFigures(tone=name, start_s=start, end_s=end, pitch_hz=tones[name].pitch_hz))
        start = end + (beep.gap_s or 0)  # a code of one tone has no gap; of several a rule asks for it
    return BeepFigures(id=beep.id, lasts_s=end, tones=tuple(found))


def heard_tones(tones: Mapping[str, Tone], beep: Beep) -> Heard:
    """What an ear can go by: of each tone its length and its pitch.

    Units: second and hertz.
    Errors: KeyError if a tone is not known.
    """
    return tuple((tones[name].lasts_s, tones[name].pitch_hz) for name in beep.tones)


def _alike(heard: Mapping[str, Heard], beeps: Sequence[Beep]) -> Iterator[AlikeFigures]:
    """Groups of the same tones, in the same order and in another; what begins others; what ends others."""
    same: dict[Heard, list[str]] = {}
    order: dict[Heard, list[str]] = {}
    for name, tones in heard.items():
        same.setdefault(tones, []).append(name)
        order.setdefault(tuple(sorted(tones)), []).append(name)
    yield from (AlikeFigures(how="same", beeps=tuple(names)) for names in same.values() if len(names) > 1)
    mixed = (names for names in order.values() if len({heard[name] for name in names}) > 1)
    yield from (AlikeFigures(how="order", beeps=tuple(names)) for names in mixed)
    again = {beep.id for beep in beeps if beep.again_s is not None}
    begins: dict[str, list[str]] = {}
    ends: dict[str, list[str]] = {}
    for one, other in combinations(heard, 2):
        short, long = sorted((one, other), key=lambda name: len(heard[name]))
        size = len(heard[short])
        if size == len(heard[long]):
            continue
        if heard[long][:size] == heard[short]:
            begins.setdefault(short, []).append(long)
        if long in again and heard[long][-size:] == heard[short]:
            ends.setdefault(short, []).append(long)
    yield from (AlikeFigures(how="begins", beeps=(name, *others)) for name, others in begins.items())
    yield from (AlikeFigures(how="ends", beeps=(name, *others)) for name, others in ends.items())
