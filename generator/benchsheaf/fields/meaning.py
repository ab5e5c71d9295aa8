"""What a written value means under its field."""

import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from decimal import Decimal
from sys import intern

from benchsheaf.fields.records import Field
from benchsheaf.mistakes import Code
from benchsheaf.quantities import MEASURES, Misread, read_quantity

KIND_01 = Code(
    id="KIND-01",
    meaning="A whole number was wanted.",
    words="A whole number is wanted here, for example `{example}`.",
    example={"example": "412"},
)
KIND_02 = Code(
    id="KIND-02",
    meaning="A yes or no was wanted.",
    words="Write `yes` or `no`.",
)
KIND_03 = Code(
    id="KIND-03",
    meaning="A text does not have the form that the field asks for.",
    words="{wanted}, for example `{example}`.",
    example={"wanted": "Hexadecimal digits are wanted: 0 to 9 and the capitals A to F", "example": "040000"},
)

# Form of a text: what it must look like, and the sentence that says so.
FORMS: Mapping[str, tuple[re.Pattern[str], str]] = {
    "slug": (
        re.compile(r"[a-z0-9]+(-[a-z0-9]+)*"),
        "A short name is wanted: lower-case letters, digits, single hyphens",
    ),
    "designator": (
        re.compile(r"[A-Z]{1,4}[0-9]{0,4}[A-Z]?"),
        "A designator as printed on the board is wanted: capitals, then a number",
    ),
    "port": (
        re.compile(r"P[0-9A-F]{1,8}"),
        "A port is wanted: P and a hexadecimal number",
    ),
    "date": (
        re.compile(r"(19|20)[0-9]{2}(-(0[1-9]|1[0-2])(-(0[1-9]|[12][0-9]|3[01]))?)?"),
        "A date is wanted, the year first and hyphens between (2019, 2019-03 or 2019-03-09)",
    ),
    "hex": (
        re.compile(r"[0-9A-F]{1,16}"),
        "Hexadecimal digits are wanted: 0 to 9 and the capitals A to F",
    ),
}
LONGEST_WHOLE_NUMBER = 12  # digits; nothing a bench counts is longer

Converted = str | int | bool | Decimal


@dataclass(frozen=True, kw_only=True, slots=True)
class Misfit:
    """A written value that does not mean anything under its field: the code of the mistake and its words."""

    code: Code
    fills: Mapping[str, str]
    nearest: str | None = None


def converted(described: Field, text: str) -> Converted | Misfit:
    """What a written scalar means under its field.

    Units: a quantity comes back in its field's own unit, exactly, with the digits that were written.
    Errors: none raised; a text that means nothing here gives a Misfit.
    """
    return _CONVERSIONS[described.shape](described, text)


def _as_text(described: Field, text: str) -> Converted | Misfit:
    if described.names_item or described.points_at:
        text = text.replace("\u2212", "-")  # a name copied from a page has the true minus
    if described.form and not FORMS[described.form][0].fullmatch(text):
        fills = {"wanted": FORMS[described.form][1], "example": example_text(described)}
        return Misfit(code=KIND_03, fills=fills, nearest=_in_form(described.form, text))
    return intern(text)  # texts recur in all descriptions; each is kept once


def _in_form(form: str, text: str) -> str | None:
    """What a text was most likely to be: small letters for capitals, a hyphen for a blank, no 0x before it."""
    guess = _guess(form, text.strip())
    return guess if FORMS[form][0].fullmatch(guess) else None


def _guess(form: str, text: str) -> str:
    if form == "slug":
        return re.sub(r"[\s_.]+", "-", text.lower())
    if form == "designator":
        return re.sub(r"[\s-]", "", text.upper())
    if form == "date":
        return re.sub(r"[-./](?=[0-9](?:[-./]|$))", "-0", text).replace("/", "-").replace(".", "-")
    digits = re.sub(r"^(?:0X|\$|P)|H$|\s", "", text.upper()).replace("O", "0")
    return f"P{digits}" if form == "port" else digits


def _as_integer(described: Field, text: str) -> Converted | Misfit:
    if not re.fullmatch(r"-?[0-9]+", text, re.ASCII) or len(text) > LONGEST_WHOLE_NUMBER:
        return Misfit(code=KIND_01, fills={"example": example_text(described)})
    return int(text)


def _as_boolean(described: Field, text: str) -> Converted | Misfit:
    return text == "yes" if text in ("yes", "no") else Misfit(code=KIND_02, fills={})


def _as_quantity(described: Field, text: str) -> Converted | Misfit:
    assert described.unit is not None
    value = read_quantity(text, described.unit)
    if not isinstance(value, Misread):
        return value
    fills, usual = value.fills, MEASURES[described.unit].wanted
    if described.example:  # an example of the field itself says more
        own = example_text(described)
        fills = {
            name: own if fill == usual else fill.replace(f"`{usual}`", f"`{own}`") if name == "like" else fill
            for name, fill in fills.items()
        }
    return Misfit(code=value.code, fills=fills, nearest=value.nearest)


_CONVERSIONS: Mapping[str, Callable[[Field, str], Converted | Misfit]] = {
    "text": _as_text,
    "integer": _as_integer,
    "boolean": _as_boolean,
    "quantity": _as_quantity,
}


def example_text(described: Field) -> str:
    """The field's example as a contributor would write it."""
    return str(described.example) if isinstance(described.example, str) else described.name
