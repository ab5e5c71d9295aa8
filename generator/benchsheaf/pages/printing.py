"""How facts and figures are put into print; templates use these and nothing else."""

import re
from collections.abc import Callable, Hashable, Mapping
from dataclasses import fields
from decimal import Decimal
from functools import cache
from pathlib import Path
from typing import Any, cast

from benchsheaf.compute.named_figures import is_range
from benchsheaf.drawing.new_part import RING_FILLS
from benchsheaf.drawing.picture import Both, drawn
from benchsheaf.markup import Markup
from benchsheaf.quantities import LONG, ROUNDINGS, SUFFIX, printed, printed_binary, printed_range

TEMPLATES = Path(__file__).parent / "templates"
NARROW = "\u00a0"
SYMBOLS = {"ohm": "Ω", "B": "bytes"}
KIBI = 1024
UNIT_OF = {suffix: unit for unit, suffix in SUFFIX.items()}


def quantity(value: Decimal | int, unit: str, places: int | None = None) -> str:
    """A fact with its unit, its digits as they were written; or to some places."""
    return printed(value, unit, places)


def waiting(minutes: Decimal) -> str:
    """A time of waiting: in hours where it is whole or half hours and two at the least, otherwise in minutes."""
    halves, rest = divmod(minutes, 30)
    if rest or halves < 4:
        return printed(minutes, "min")
    hours, half = divmod(int(halves), 2)
    return printed(Decimal(f"{hours}.5" if half else hours), "h")


def span(record: Any, unit: str) -> str:
    """A range record, low to high, under one unit."""
    suffix = SUFFIX[unit]
    return printed_range(getattr(record, f"low_{suffix}"), getattr(record, f"high_{suffix}"), unit)


def figure(record: Any, name: str, places: int = 2) -> str:
    """A figure of a record in its own unit, rounded the way that its field says: a wait up, headroom down."""
    number = plain(record, name, places)
    symbol = _symbol(name)
    return f"{number}{NARROW}{symbol}" if symbol else number


def plain(record: Any, name: str, places: int = 2) -> str:
    """The same without its unit, for the cells of a column that names it."""
    value = getattr(record, name)
    scaled = Decimal(value) * 100 if _unit(name) == "%" else Decimal(value)
    return number(scaled, places, _rounds(cast(Hashable, type(record)), name))


@cache
def _rounds(record: Any, name: str) -> str:
    return str(next(each for each in fields(record) if each.name == name).metadata.get("rounds", "half"))


def number(value: Decimal | int, places: int = 0, rounds: str = "half") -> str:
    """A bare number with a true minus and thousands with commas."""
    rounded = Decimal(value).quantize(Decimal(1).scaleb(-places), ROUNDINGS[rounds], LONG)
    body = f"{rounded.copy_abs():,f}"
    return f"\u2212{body}" if rounded < 0 else body


MOST_DIGITS = 4
TEN_THOUSAND = 10_000
ROUND_DIGITS = 3


def own_form(record: Any, name: str) -> str:
    """A figure or a fact as a sentence says it: in its own unit and rounded its own way, to three digits.

    What has four digits or fewer is left as it is, and so are whole numbers; a range has both its ends.
    """
    value, unit = getattr(record, name), _unit(name)
    if is_range(value):
        suffix = next(each.name for each in fields(value) if each.name.startswith("low_")).removeprefix("low_")
        return span(value, UNIT_OF[suffix])
    if unit == "B":
        return binary(value) if value % KIBI == 0 and value else f"{number(value)}{NARROW}bytes"
    exact = Decimal(value)
    if exact != exact.to_integral_value() and len(exact.normalize().as_tuple().digits) > MOST_DIGITS:
        step = Decimal(1).scaleb(exact.adjusted() + 1 - ROUND_DIGITS)
        exact = exact.quantize(step, ROUNDINGS[_rounds(cast(Hashable, type(record)), name)], LONG)
    if unit:
        return printed(exact, unit)
    body = number(exact, max(0, -int(exact.normalize().as_tuple().exponent)))
    return body if exact.copy_abs() >= TEN_THOUSAND else body.replace(",", "")  # a year has no comma


@cache
def _unit(name: str) -> str | None:
    endings = [suffix for suffix in UNIT_OF if name == suffix or name.endswith(f"_{suffix}")]
    return UNIT_OF[max(endings, key=len)] if endings else None


def _symbol(name: str) -> str:
    unit = _unit(name)
    return SYMBOLS.get(unit, unit) if unit else ""


def binary(value: int) -> str:
    """A size of memory in KiB or MiB: in full where that is short, else to two places."""
    full = printed_binary(value)
    return (
        full if len(full.partition(".")[2]) <= len("50") + len(" KiB") else f"about {printed_binary(value, places=2)}"
    )


def rail_name(name: str) -> str:
    """A rail's name with a true minus."""
    return name.replace("-", "\u2212").replace(" ", NARROW)


def rail_anchor(name: str) -> str:
    """The place of a rail on its sheet: `rail-minus-12` for −12 V; a rail of another form keeps all its signs."""
    usual = re.fullmatch(r"([+-])([0-9.]+) V", name)
    sign = {"+": "plus", "-": "minus"}
    return f"rail-{sign[usual[1]]}-{usual[2]}" if usual else f"rail-named-{anchor(name)}"


def anchor(name: str) -> str:
    """A free name as the place on a page: letters, digits, points and hyphens as they are, others as their numbers."""
    return re.sub(r"[^A-Za-z0-9.-]", lambda sign: f"_{ord(sign[0]):x}_", name)


def words(name: str) -> str:
    """A word of the data language as people read it: `before-mains` becomes `before mains`."""
    return name.replace("-", " ")


def paragraphs(text: str) -> Markup:
    """Plain text: blank lines make paragraphs."""
    blocks = [block for block in text.split("\n\n") if block.strip()]
    return Markup("").join(Markup("<p>{}</p>").format(block.strip()) for block in blocks)


def ticked(text: str) -> Markup:
    """A sentence in which what stands between backticks is written as in a data file."""
    pieces = text.split("`")
    return Markup("").join(
        Markup("<code>{}</code>").format(piece) if place % 2 and place < len(pieces) - 1 else piece
        for place, piece in enumerate(pieces)
    )


def picture(both: Both) -> Markup:
    """The two drawings of a picture; the style sheet shows one of them."""
    return drawn(both.wide) + drawn(both.phone)


@cache
def stamp(name: str) -> Markup:
    """A sign or a mark as its file has it: `signs/hot`, `marks/weak`."""
    return Markup((TEMPLATES / f"{name}.svg").read_text(encoding="utf-8").rstrip("\n"))


def swatch(colour: str) -> Markup:
    """The colour of a wire or a ring as a field with an outline; the word always stands beside it."""
    return Markup(
        '<svg class="swatch" viewBox="0 0 14 10" aria-hidden="true">'
        '<rect x="1" y="1" width="12" height="8" fill="{}"/></svg>'
    ).format(RING_FILLS[colour])


FILTERS: Mapping[str, Callable[..., Any]] = {
    "quantity": quantity,
    "waiting": waiting,
    "span": span,
    "figure": figure,
    "plain": plain,
    "number": number,
    "binary": binary,
    "rail": rail_name,
    "anchor": anchor,
    "words": words,
    "paragraphs": paragraphs,
    "ticked": ticked,
    "picture": picture,
    "drawn": drawn,
    "stamp": stamp,
    "swatch": swatch,
}
