"""At what rates a card sends its picture, how much of each line is dark, and whether a display can lock to it."""

from collections.abc import Mapping
from dataclasses import dataclass
from decimal import Decimal

from benchsheaf.compute.laws import twelve
from benchsheaf.model.cards import Card
from benchsheaf.model.displays import Display
from benchsheaf.model.machine import Configuration
from benchsheaf.model.signals import Hertz, Mode


@dataclass(frozen=True, kw_only=True, slots=True)
class ModeFigures:
    """A picture mode: its rates, and what is shown and blank of a line and of a frame."""

    id: str
    dot_rate_hz: Decimal
    line_rate_hz: Decimal
    frame_rate_hz: Decimal
    shown_line_s: Decimal | None
    blank_line_s: Decimal | None
    shown_frame_s: Decimal | None
    blank_frame_s: Decimal | None


@dataclass(frozen=True, kw_only=True, slots=True)
class LockFigures:
    """A picture mode of a card against a display: each rate fits, or is below or above what the display locks to.

    Rates that fit are no lock yet: whether the levels fit too is not known.
    """

    display: str
    card: str
    mode: str
    line: str
    frame: str
    rates_fit: bool


@dataclass(frozen=True, kw_only=True, slots=True)
class PictureFigures:
    """A picture mode of a card that is plugged in: whether its switches stand for it, and how it meets the display."""

    card: str
    mode: str
    as_set: bool
    lock: LockFigures | None


def mode_figures(mode: Mode, dot_rate_hz: Decimal) -> ModeFigures:
    """The rates and times of a mode; times are None where what is shown is not known.

    Units: hertz in and out, second out.
    Errors: ZeroDivisionError for a mode without dots or lines, or a crystal that stands still.
    Source: one line is all its dots, one frame all its lines, shown and blank together.
    """
    line_rate_hz = dot_rate_hz / mode.dots
    dots, lines = mode.shown_dots, mode.shown_lines
    return ModeFigures(
        id=mode.id,
        dot_rate_hz=dot_rate_hz,
        line_rate_hz=twelve(line_rate_hz),
        frame_rate_hz=twelve(line_rate_hz / mode.lines),
        shown_line_s=None if dots is None else twelve(dots / dot_rate_hz),
        blank_line_s=None if dots is None else twelve((mode.dots - dots) / dot_rate_hz),
        shown_frame_s=None if lines is None else twelve(lines / line_rate_hz),
        blank_frame_s=None if lines is None else twelve((mode.lines - lines) / line_rate_hz),
    )


def lock_figures(figures: ModeFigures, card: str, display: Display) -> LockFigures:
    """Whether both rates of a mode are rates that a display locks to; the ends of its ranges belong to them.

    Units: hertz.
    """
    line, frame = _against(figures.line_rate_hz, display.line), _against(figures.frame_rate_hz, display.frame)
    return LockFigures(
        display=display.slug,
        card=card,
        mode=figures.id,
        line=line,
        frame=frame,
        rates_fit=line == frame == "fits",
    )


def _against(rate_hz: Decimal, locks: Hertz) -> str:
    return "below" if rate_hz < locks.low_hz else "above" if rate_hz > locks.high_hz else "fits"


def is_set(mode: Mode, stands: Mapping[str, str]) -> bool:
    """Whether every switch that a mode asks for stands as it asks; a mode that asks for none is always set."""
    return all(stands.get(each.switch) == each.to for each in mode.set)


def card_modes(card: Card) -> tuple[ModeFigures, ...]:
    """The picture modes of a card in the order of its file, without one whose crystal has no frequency."""
    dot_rates = {part.ref: part.frequency_hz for part in card.parts}
    return tuple(mode_figures(mode, rate) for mode in card.modes if (rate := dot_rates.get(mode.crystal)) is not None)


def display_locks(display: Display, cards: Mapping[str, Card]) -> tuple[LockFigures, ...]:
    """A display against every mode of every card."""
    return tuple(lock_figures(mode, slug, display) for slug, card in cards.items() for mode in card_modes(card))


def outfit_pictures(
    outfit: Configuration, cards: Mapping[str, Card], display: Display | None
) -> tuple[PictureFigures, ...]:
    """Every mode of the cards in an outfit, each card once; switches stand as the outfit says, else as delivered.

    Errors: KeyError for a card that is not known; links have seen to that.
    """
    found = []
    for slug in dict.fromkeys(filled.holds for filled in outfit.slots):
        card = cards[slug]
        stands = {each.switch: each.as_delivered for each in card.switches}
        stands |= {each.switch.removeprefix(f"{slug}/"): each.to for each in outfit.set if "/" in each.switch}
        asked = {mode.id: mode for mode in card.modes}
        for figures in card_modes(card):
            found.append(
                PictureFigures(
                    card=slug,
                    mode=figures.id,
                    as_set=is_set(asked[figures.id], stands),
                    lock=lock_figures(figures, slug, display) if display else None,
                )
            )
    return tuple(found)
