"""Picture modes as tables say them, on the sheet of a machine, the page of a card, the page of a display."""

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal

from benchsheaf.compute.video import LockFigures, ModeFigures
from benchsheaf.drawing.picture import Both
from benchsheaf.drawing.rate_ranges import Scale, Tick, rate_ranges
from benchsheaf.markup import Markup
from benchsheaf.model.cards import Card
from benchsheaf.model.displays import Display
from benchsheaf.model.signals import Mode
from benchsheaf.pages.rates import clock_words, lock_words, mode_settings, rate_words
from benchsheaf.pages.shelf import Desk

MOST_DRAWN = 12
"""Each mode takes a row of words in the picture of its rates."""


@dataclass(frozen=True, kw_only=True, slots=True)
class ModeRow:
    """A picture mode: its rates in print, its settings, and what they mean for a display."""

    anchor: str
    card: Card
    way: str
    mode: Mode
    figures: ModeFigures
    crystal: Markup
    settings: str
    as_set: bool
    dot_rate: str
    line_rate: str
    frame_rate: str
    verdict: str
    mark: str


def mode_row(
    desk: Desk, slug: str, mode_id: str, locks: Sequence[LockFigures], *, as_set: bool = False, named: bool = False
) -> ModeRow:
    """One mode of a card against some displays, which are `named` where the table is not of one alone."""
    card = desk.shelf.collection.cards[slug]
    mode = next(each for each in card.modes if each.id == mode_id)
    figures = next(each for each in desk.shelf.workup.cards[slug].modes if each.id == mode_id)
    displays = desk.shelf.collection.displays
    told = [f"{displays[lock.display].name}: {lock_words(lock)}" if named else lock_words(lock) for lock in locks]
    return ModeRow(
        anchor=f"mode-{slug}-{mode.id}",
        card=card,
        way=desk.thing("card", slug, "modes"),
        mode=mode,
        figures=figures,
        crystal=desk.part(f"{slug}/{mode.crystal}", brief=True),
        settings=mode_settings(mode),
        as_set=as_set,
        dot_rate=clock_words(figures.dot_rate_hz),
        line_rate=rate_words(figures.line_rate_hz),
        frame_rate=rate_words(figures.frame_rate_hz),
        verdict="; ".join(told) or "no display is described",
        mark="" if all(lock.rates_fit for lock in locks) else "stop",
    )


def card_mode_rows(desk: Desk, card: Card) -> list[ModeRow]:
    """Every mode of a card against every display that is described."""
    locks = [
        lock for display in desk.shelf.workup.displays.values() for lock in display.locks if lock.card == card.slug
    ]
    return [
        mode_row(desk, card.slug, each.id, [lock for lock in locks if lock.mode == each.id], named=True)
        for each in desk.shelf.workup.cards[card.slug].modes
    ]


def display_mode_rows(desk: Desk, slug: str) -> list[ModeRow]:
    """Every mode that is described against one display."""
    return [mode_row(desk, lock.card, lock.mode, [lock]) for lock in desk.shelf.workup.displays[slug].locks]


def rates_picture(display: Display, modes: Sequence[ModeRow]) -> Both | None:
    """The rates of modes against what a display locks to; none where there are none, or too many to be read."""
    if not 0 < len(modes) <= MOST_DRAWN:
        return None

    def ticks(name: str, printed: str, low: Decimal, high: Decimal) -> list[Tick]:
        rates = [(row, getattr(row.figures, name)) for row in modes]
        return [
            Tick(name=row.mode.name, rate_hz=rate, printed=getattr(row, printed), fits=low <= rate <= high)
            for row, rate in rates
        ]

    line, frame = display.line, display.frame
    scales = (
        Scale(name="Line rate", locks=line, ticks=ticks("line_rate_hz", "line_rate", line.low_hz, line.high_hz)),
        Scale(name="Frame rate", locks=frame, ticks=ticks("frame_rate_hz", "frame_rate", frame.low_hz, frame.high_hz)),
    )
    return rate_ranges(scales, "ranges")
