"""What to buy for the weak parts of a machine, like parts together."""

from collections.abc import Iterable
from dataclasses import dataclass
from decimal import Decimal

from benchsheaf.model.boards import Part, WeakPart

NOW = ("before-mains", "replace-anyway")
"""What is done to a weak part whose new one is bought before work begins."""


@dataclass(frozen=True, kw_only=True, slots=True)
class Wanted:
    """A weak part of some holder: what is said of it, the part itself where it is described, and its name here."""

    ref: str
    weak: WeakPart
    part: Part | None


@dataclass(frozen=True, kw_only=True, slots=True)
class ShoppingLine:
    """So many alike, for these parts.

    Width and depth are the least room that one of them has on its board, for what has a value.

    `anyway` is no for what is bought only if the old one is found bad.
    """

    anyway: bool
    count: int
    refs: tuple[str, ...]
    kind: str | None
    sort: str | None
    capacitance_f: Decimal | None
    resistance_ohm: Decimal | None
    rated_v: Decimal | None
    bears_w: Decimal | None
    stands_celsius: Decimal | None
    pins: int | None
    width_mm: Decimal | None
    depth_mm: Decimal | None


def shopping_list(wanted: Iterable[Wanted]) -> tuple[ShoppingLine, ...]:
    """The new parts, those that are replaced anyway first, each old part once.

    What stands under several weak parts is bought for the first of them that is replaced anyway.
    Units: as the endings of the names say. Errors: none; a weak part for which nothing is to be fitted is left out.
    """
    fitted = [each for each in wanted if each.weak.fit is not None]
    ordered = sorted(fitted, key=lambda each: each.weak.when not in NOW)
    firsts: dict[str, Wanted] = {}
    for each in ordered:
        firsts.setdefault(each.ref, each)
    alike: dict[tuple[object, ...], list[Wanted]] = {}
    for each in firsts.values():
        alike.setdefault(_likeness(each), []).append(each)
    return tuple(_line(several) for several in alike.values())


def _likeness(each: Wanted) -> tuple[object, ...]:
    """What two parts must have in common to be bought together; how a new one lies is no matter."""
    fit = each.weak.fit
    assert fit is not None
    facts = (fit.capacitance_f, fit.resistance_ohm, fit.rated_v, fit.bears_w, fit.stands_celsius, fit.kind)
    kind = each.part.kind if each.part else None
    return (each.weak.when in NOW, kind, each.part.pins if each.part else None, *facts)


def _line(several: list[Wanted]) -> ShoppingLine:
    first = several[0]
    fit = first.weak.fit
    assert fit is not None
    by_value = fit.capacitance_f is not None or fit.resistance_ohm is not None  # of others the body is a plug's
    parts = [each.part for each in several if each.part and by_value]
    return ShoppingLine(
        anyway=first.weak.when in NOW,
        count=len(several),
        refs=tuple(each.ref for each in several),
        kind=first.part.kind if first.part else None,
        sort=fit.kind,
        capacitance_f=fit.capacitance_f,
        resistance_ohm=fit.resistance_ohm,
        rated_v=fit.rated_v,
        bears_w=fit.bears_w,
        stands_celsius=fit.stands_celsius,
        pins=first.part.pins if first.part else None,
        width_mm=min((part.body.x_mm for part in parts), default=None),
        depth_mm=min((part.body.y_mm for part in parts), default=None),
    )
