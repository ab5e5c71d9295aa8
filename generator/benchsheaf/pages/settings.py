"""Switches and jumpers in print: what each sets, where it stands, and a setting as a link to its row."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from benchsheaf.links import Thing
from benchsheaf.markup import Markup
from benchsheaf.model.cards import Card
from benchsheaf.model.memory import Setting
from benchsheaf.model.plugs import Switch
from benchsheaf.pages.printing import anchor
from benchsheaf.pages.shelf import Desk


@dataclass(frozen=True, kw_only=True, slots=True)
class SwitchRow:
    """One switch or jumper: the place of its row, its part, and whose texts it has if not the page's own."""

    anchor: str
    switch: Switch
    part: Markup
    of: Thing | None = None


@dataclass(frozen=True, kw_only=True, slots=True)
class CardSwitches:
    """The switches and jumpers of a card that is plugged in as delivered."""

    name: str
    slot: str
    way: str
    rows: Sequence[SwitchRow]


def switch_rows(
    desk: Desk, switches: Iterable[Switch], prefix: str = "", place: str = "", of: Thing | None = None
) -> list[SwitchRow]:
    """Switches of a machine, or with the prefix SLUG/ of something held; `place` stands before each row's anchor."""
    return [
        SwitchRow(
            anchor=place + anchor(each.switch),
            switch=each,
            part=desk.part(prefix + each.part, brief=bool(prefix)),
            of=of,
        )
        for each in switches
    ]


def card_switches(desk: Desk, filled: Iterable[tuple[str, Card]]) -> list[CardSwitches]:
    """The switches of the cards in some slots."""
    return [
        CardSwitches(
            name=card.name,
            slot=slot,
            way=desk.thing("card", card.slug),
            rows=switch_rows(desk, card.switches, f"{card.slug}/", f"{slot}-", ("card", card.slug)),
        )
        for slot, card in filled
        if card.switches
    ]


def setting_words(desk: Desk, each: Setting) -> Markup:
    """A setting as a link to its switch: `S1-1 on`, or `W3 of OV-DK1 in`."""
    slug, _, name = each.switch.rpartition("/")
    if not slug:
        return Markup('<a href="{}" class="mono plate">{}</a> {}').format(
            desk.sheet("switches", anchor(name)), name, each.to
        )
    kind = desk.kind_of(slug)
    way = desk.thing(kind, slug, f"setting-{anchor(name)}")
    words = Markup('<a href="{}" class="mono plate">{}</a> of <span class="plate">{}</span> {}')
    return words.format(way, name, desk.shelf.name_of(kind, slug), each.to)
