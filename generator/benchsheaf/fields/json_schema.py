"""The schemas as JSON Schema, for editors that check and complete while somebody writes.

Every value of a data file is text, so this speaks of texts: a quantity is a text that a pattern describes. Where an
editor reads bare digits as a number, that is let pass too. What the dialect cannot say of texts is left to `check`:
bounds, which stand in the descriptions; pointers; one field above another; whole bytes; all that needs figures.
"""

from collections.abc import Callable, Iterator, Mapping
from typing import Any

from benchsheaf.fields.meaning import FORMS, LONGEST_WHOLE_NUMBER
from benchsheaf.fields.records import Field, Schemas
from benchsheaf.fields.schemas import KINDS
from benchsheaf.fields.sentences import pointer_in_words, rules_in_words
from benchsheaf.quantities import SUFFIX, quantity_pattern

DIALECT = "https://json-schema.org/draft/2020-12/schema"
SPREAD = ("machine",)
"""Kinds whose fields may be spread over several files, so that none of them need be in any one file."""
EXPORTED = (*KINDS, *(f"{kind}-file" for kind in SPREAD))
"""The names of all that is exported."""

Made = dict[str, Any]


def json_schemas(schemas: Schemas) -> dict[str, Made]:
    """A JSON Schema for every kind by its name, and `machine-file` for one of the several files of a machine."""
    made = {kind: json_schema(schemas, kind) for kind in schemas.kinds}
    return made | {f"{kind}-file": json_schema(schemas, kind, whole=False) for kind in SPREAD}


def json_schema(schemas: Schemas, kind: str, *, whole: bool = True) -> Made:
    """The JSON Schema of one kind; not `whole` for a file that holds some of its fields only.

    Source: JSON Schema 2020-12, core and validation.
    """
    described = schemas.kinds[kind]
    shared: dict[str, Made] = {}
    made = _record(described.fields, shared)
    if not whole:  # what is missing here may stand in another file
        made = {name: value for name, value in made.items() if name not in ("required", "dependentRequired")}
    of = f"One file of a {kind}." if not whole else f"A whole description: {kind}."
    says = f"{of} Values are text, as they stand in a data file."
    return {"$schema": DIALECT, "title": kind.capitalize(), "description": says, **made, "$defs": _sorted(shared)}


def _record(fields: Mapping[str, Field], shared: dict[str, Made]) -> Made:
    made: Made = {
        "type": "object",
        "properties": {name: _described(inner, shared) for name, inner in fields.items()},
        "required": [name for name, inner in fields.items() if inner.required],
        "dependentRequired": {name: list(inner.needs) for name, inner in fields.items() if inner.needs},
        "additionalProperties": False,
    }
    return {name: value for name, value in made.items() if value not in ([], {})}


def _described(described: Field, shared: dict[str, Made]) -> Made:
    """A field's own schema with what people call it, what it says, and an example."""
    made: Made = {}
    if described.label:
        made["title"] = described.label
    says = " ".join(_says(described))
    if says:
        made["description"] = says
    made |= _SHAPES[described.shape](described, shared)
    if described.example is not None:
        made["examples"] = [described.example]
    return made


def _says(described: Field) -> Iterator[str]:
    if described.help:
        yield described.help
    yield from rules_in_words(described)
    pointing = pointer_in_words(described)
    if pointing:
        yield f"The name of {pointing}."


def _text(described: Field, shared: dict[str, Made]) -> Made:
    if described.allowed:
        return {"enum": list(described.allowed)}
    # A name or an address of digits only is a number to some editors.
    kinds = ["string", "number"]
    if not described.form:
        return {"type": kinds, "pattern": r"\S"}
    pattern = FORMS[described.form][0].pattern
    named = bool(described.names_item or described.points_at)
    name = f"form-{described.form}{'-named' if named else ''}"
    shared[name] = {"type": kinds, "pattern": f"^(?:{_either_minus(pattern) if named else pattern})$"}
    return {"$ref": f"#/$defs/{name}"}


def _either_minus(pattern: str) -> str:
    """A pattern in which the true minus of a page may stand for each hyphen of a name."""
    made, inside = "", False
    for sign in pattern:
        inside = sign == "[" or (inside and sign != "]")
        made += "[-\u2212]" if sign == "-" and not inside else sign
    return made


def _integer(described: Field, shared: dict[str, Made]) -> Made:
    digits = f"[0-9]{{1,{LONGEST_WHOLE_NUMBER}}}|-[0-9]{{1,{LONGEST_WHOLE_NUMBER - 1}}}"
    shared["whole-number"] = {"type": ["string", "integer"], "pattern": f"^(?:{digits})$"}
    made: Made = {"$ref": "#/$defs/whole-number"}
    # These hold for numbers only, as some editors read them; of texts they say nothing.
    if described.least is not None:
        made["minimum"] = int(described.least)
    if described.most is not None:
        made["maximum"] = int(described.most)
    return made


def _boolean(described: Field, shared: dict[str, Made]) -> Made:
    return {"enum": ["yes", "no"]}


def _quantity(described: Field, shared: dict[str, Made]) -> Made:
    assert described.unit is not None
    name = f"unit-{SUFFIX[described.unit]}"
    shared[name] = {"type": "string", "pattern": quantity_pattern(described.unit)}
    return {"$ref": f"#/$defs/{name}"}


def _list(described: Field, shared: dict[str, Made]) -> Made:
    assert described.item is not None
    items = _SHAPES[described.item.shape](described.item, shared)
    return {"type": "array", "minItems": max(1, described.shortest), "items": items}


def _group(described: Field, shared: dict[str, Made]) -> Made:
    if described.group:
        if described.group not in shared:
            shared[described.group] = {}  # its place is taken before what stands in it is made
            shared[described.group] = _record(described.fields, shared)
        made: Made = {"$ref": f"#/$defs/{described.group}"}
    else:
        made = _record(described.fields, shared)
    if described.at_least:
        made["anyOf"] = [{"required": [name]} for name in described.at_least]
    return made


def _sorted(shared: Mapping[str, Made]) -> dict[str, Made]:
    return {name: shared[name] for name in sorted(shared)}


_SHAPES: Mapping[str, Callable[[Field, dict[str, Made]], Made]] = {
    "text": _text,
    "integer": _integer,
    "boolean": _boolean,
    "quantity": _quantity,
    "record": _group,
    "list": _list,
}
