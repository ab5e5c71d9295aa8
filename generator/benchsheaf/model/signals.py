"""What a machine looks like, what it says, and what it decodes."""

from dataclasses import dataclass
from decimal import Decimal

from benchsheaf.model.boards import Described, Extent, Point
from benchsheaf.model.memory import Setting


@dataclass(frozen=True, kw_only=True, slots=True)
class Switching(Described):
    """What it costs to switch a machine on and off."""

    on_minutes: Decimal
    off_minutes: Decimal


@dataclass(frozen=True, kw_only=True, slots=True)
class Mark(Described):
    """Something by which a machine is recognised."""

    id: str
    seen: str
    look: str
    here: str
    decides: bool
    part: str | None = None
    note: str | None = None


@dataclass(frozen=True, kw_only=True, slots=True)
class Feature(Described):
    """Something that the eye finds on a front or a back."""

    id: str
    kind: str
    name: str
    at: Point
    body: Extent
    colour: str | None = None
    count: int | None = None
    step: Point | None = None
    rings: int | None = None


@dataclass(frozen=True, kw_only=True, slots=True)
class View(Described):
    """A front or a back, drawn from its sizes."""

    id: str
    name: str
    size: Extent
    features: tuple[Feature, ...]


@dataclass(frozen=True, kw_only=True, slots=True)
class Clock(Described):
    """A crystal, or a rate divided from another clock."""

    id: str
    name: str
    part: str | None = None
    of: str | None = None
    divided_by: int | None = None
    at: str | None = None


@dataclass(frozen=True, kw_only=True, slots=True)
class PortRange(Described):
    """Ports at which something answers."""

    id: str
    name: str
    first: str
    count: int
    ignores: tuple[str, ...] = ()
    parts: tuple[str, ...] = ()


@dataclass(frozen=True, kw_only=True, slots=True)
class LineUse(Described):
    """A request line or channel that something uses, and what for."""

    line: str
    name: str


@dataclass(frozen=True, kw_only=True, slots=True)
class SettingUse(Described):
    """What a card uses while its switches and jumpers stand in some way."""

    set: tuple[Setting, ...]
    lines: tuple[LineUse, ...]


@dataclass(frozen=True, kw_only=True, slots=True)
class BusLine(Described):
    """A request line or channel of a bus."""

    line: str
    kind: str
    shared: bool


@dataclass(frozen=True, kw_only=True, slots=True)
class Image(Described):
    """What a ROM chip holds, by its sums."""

    id: str
    part: str
    mark: str
    size_bytes: int
    covers: str
    sum_8: str | None = None
    sum_16: str | None = None
    crc_16: str | None = None
    crc_32: str | None = None
    starts: str | None = None
    ends: str | None = None


@dataclass(frozen=True, kw_only=True, slots=True)
class Tone(Described):
    """A sound that codes are made of."""

    id: str
    lasts_s: Decimal
    pitch_hz: Decimal


@dataclass(frozen=True, kw_only=True, slots=True)
class Beep(Described):
    """What a machine says by sound."""

    id: str
    tones: tuple[str, ...]
    means: str
    gap_s: Decimal | None = None
    again_s: Decimal | None = None
    good: bool | None = None
    normal_without: tuple[str, ...] = ()
    banks: tuple[str, ...] = ()
    parts: tuple[str, ...] = ()

    @property
    def heard(self) -> str:
        """What an ear calls it: `long short`, `four short`; with a comma between tones whose names are of two words."""
        names = [name.replace("-", " ") for name in self.tones]
        if len(set(names)) == 1 and len(names) in _SEVERAL:
            return f"{_SEVERAL[len(names)]} {names[0]}"
        return (", " if any(" " in name for name in names) else " ").join(names)


_SEVERAL = {3: "three", 4: "four", 5: "five", 6: "six", 7: "seven", 8: "eight", 9: "nine"}
"""Of two like tones the names are said; more than nine an ear does not count."""


@dataclass(frozen=True, kw_only=True, slots=True)
class CodeExample(Described):
    """A message with a bank, and bits, in the place of its letters."""

    bank: str
    exclusive_or: str | None = None


@dataclass(frozen=True, kw_only=True, slots=True)
class Message(Described):
    """What a machine shows on the screen."""

    id: str
    shows: str
    means: str
    with_beeps: tuple[str, ...] = ()
    tokens: tuple[str, ...] = ()
    examples: tuple[CodeExample, ...] = ()
    normal_without: tuple[str, ...] = ()
    parts: tuple[str, ...] = ()


@dataclass(frozen=True, kw_only=True, slots=True)
class Mode(Described):
    """What a card sends to a screen."""

    id: str
    name: str
    crystal: str
    dots: int
    lines: int
    shown_dots: int | None = None
    shown_lines: int | None = None
    set: tuple[Setting, ...] = ()


@dataclass(frozen=True, kw_only=True, slots=True)
class Hertz(Described):
    """A range of rates."""

    low_hz: Decimal
    high_hz: Decimal
