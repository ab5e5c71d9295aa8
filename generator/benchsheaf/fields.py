"""What a description may say: the schemas as records, and what a written value means under them."""

import re
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, field
from decimal import Decimal
from functools import cache
from importlib.resources import files
from pathlib import Path

from benchsheaf.documents import Document, read_document
from benchsheaf.mistakes import Code
from benchsheaf.quantities import SUFFIX, Misread, read_quantity

KINDS = ("machine", "supply", "drive", "card", "keyboard", "bus", "cautions")

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
    example={"wanted": "A hexadecimal address is wanted: digits 0 to 9 and letters A to F", "example": "040000"},
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
    "hex": (
        re.compile(r"[0-9A-F]{1,16}"),
        "A hexadecimal address is wanted: digits 0 to 9 and letters A to F",
    ),
}
LONGEST_WHOLE_NUMBER = 12  # digits; nothing a bench counts is longer

Converted = str | int | bool | Decimal


@dataclass(frozen=True, kw_only=True, slots=True)
class Misfit:
    """A written value that does not mean anything under its field: the code of the mistake and its words."""

    code: Code
    fills: Mapping[str, str]


@dataclass(frozen=True, kw_only=True, slots=True)
class Field:
    """One field of a description. `shape` is text, integer, boolean, quantity, record or list."""

    name: str
    shape: str
    label: str = ""
    help: str = ""
    example: object = None
    required: bool = False
    allowed: tuple[str, ...] = ()
    least: Decimal | None = None
    most: Decimal | None = None
    shortest: int = 0
    unit: str | None = None
    form: str | None = None
    above: str | None = None
    order: tuple[str, ...] = ()
    needs: tuple[str, ...] = ()
    at_least: tuple[str, ...] = ()
    points_at: str | None = None
    names_item: str | None = None
    fields: Mapping[str, "Field"] = field(default_factory=dict)
    item: "Field | None" = None

    @property
    def key(self) -> str:
        """The field's name in records and in the export: its own name, with the suffix of its unit."""
        return f"{self.name}_{SUFFIX[self.unit]}" if self.unit else self.name


@dataclass(frozen=True, kw_only=True, slots=True)
class Schemas:
    """All kinds of description, each as one record field that holds the fields of its documents."""

    kinds: Mapping[str, Field]


def converted(described: Field, text: str) -> Converted | Misfit:
    """What a written scalar means under its field.

    Units: a quantity comes back in its field's own unit, exactly, with the digits that were written.
    Errors: none raised; a text that means nothing here gives a Misfit.
    """
    return _CONVERSIONS[described.shape](described, text)


def _as_text(described: Field, text: str) -> Converted | Misfit:
    if described.form and not FORMS[described.form][0].fullmatch(text):
        return Misfit(code=KIND_03, fills={"wanted": FORMS[described.form][1], "example": example_text(described)})
    return text


def _as_integer(described: Field, text: str) -> Converted | Misfit:
    if not re.fullmatch(r"-?[0-9]+", text, re.ASCII) or len(text) > LONGEST_WHOLE_NUMBER:
        return Misfit(code=KIND_01, fills={"example": example_text(described)})
    return int(text)


def _as_boolean(described: Field, text: str) -> Converted | Misfit:
    return text == "yes" if text in ("yes", "no") else Misfit(code=KIND_02, fills={})


def _as_quantity(described: Field, text: str) -> Converted | Misfit:
    assert described.unit is not None
    value = read_quantity(text, described.unit)
    return Misfit(code=value.code, fills=value.fills) if isinstance(value, Misread) else value


_CONVERSIONS: Mapping[str, Callable[[Field, str], Converted | Misfit]] = {
    "text": _as_text,
    "integer": _as_integer,
    "boolean": _as_boolean,
    "quantity": _as_quantity,
}


def example_text(described: Field) -> str:
    """The field's example as a contributor would write it."""
    return str(described.example) if isinstance(described.example, str) else described.name


def schemas_folder() -> Path:
    """Where the schemas lie: inside the installed package, or beside `generator/` in a checkout."""
    inside = Path(str(files("benchsheaf"))) / "schemas"
    return inside if inside.is_dir() else Path(__file__).resolve().parents[2] / "schemas"


@cache
def built_in_schemas() -> Schemas:
    """The schemas that travel with the program."""
    return read_schemas(schemas_folder())


def read_schemas(folder: Path) -> Schemas:
    """The schemas of a folder as records.

    Errors: ValueError if a schema breaks the closed set of rules; that is a bug of ours, not of the data.
    """
    groups: dict[str, object] = {}
    for path in sorted(folder.glob("_*.yml")):
        groups.update(_plain(path).values)
    kinds = {}
    for kind in KINDS:
        inner = _record_fields(_plain(folder / f"{kind}.yml").values, groups)
        kinds[kind] = Field(name=kind, shape="record", required=True, fields=inner)
    return Schemas(kinds=kinds)


def _plain(path: Path) -> Document:
    document = read_document(path, path.name)
    if isinstance(document, list):
        first = document[0]
        raise ValueError(f"{path.name}:{first.place.line}: {first.sentence}")
    return document


def _record_fields(written: object, groups: Mapping[str, object]) -> dict[str, Field]:
    """The fields of one mapping; every mapping may also say where it is from."""
    made = {name: _field(name, rules, groups) for name, rules in _mapping(written).items()}
    if "sources" not in made and "source" not in made:
        made["source"] = _SOURCE
    return made


_SOURCE = Field(
    name="source",
    shape="text",
    label="Source",
    help="Which of the sources of this file says so.",
    example="notes",
    points_at="source",
)
_RULES = frozenset(
    "type required allowed min max minlength schema meta unit form above order needs at_least points_at names_item"
    .split()
)
_SHAPES = {"string": "text", "integer": "integer", "boolean": "boolean", "dict": "record", "list": "list"}


def _field(name: str, written: object, groups: Mapping[str, object]) -> Field:
    rules = _mapping(written)
    strange = set(rules) - _RULES
    if strange:
        raise ValueError(f"{name}: no such rule: {', '.join(sorted(strange))}")
    unit = _text(rules.get("unit"))
    shape = "quantity" if unit else _SHAPES[str(rules["type"])]
    meta = _mapping(rules.get("meta", {}))
    inner: Mapping[str, Field] = {}
    item = None
    if shape == "record":
        group = rules["schema"]
        inner = _record_fields(groups[group] if isinstance(group, str) else group, groups)
    elif shape == "list":
        item = _field(name, rules["schema"], groups)
    return Field(
        name=name,
        shape=shape,
        label=str(meta.get("label", "")),
        help=str(meta.get("help", "")),
        example=meta.get("example"),
        required=rules.get("required") in ("true", "yes"),
        allowed=_texts(rules.get("allowed", [])),
        least=_bound(rules.get("min"), unit),
        most=_bound(rules.get("max"), unit),
        shortest=int(str(rules.get("minlength", "0"))),
        unit=unit,
        form=_text(rules.get("form")),
        above=_text(rules.get("above")),
        order=_texts(rules.get("order", [])),
        needs=_texts(rules.get("needs", [])),
        at_least=_texts(rules.get("at_least", [])),
        points_at=_text(rules.get("points_at")),
        names_item=_text(rules.get("names_item")),
        fields=inner,
        item=item,
    )


def _bound(written: object, unit: str | None) -> Decimal | None:
    if written is None:
        return None
    value = read_quantity(str(written), unit) if unit else Decimal(str(written))
    if isinstance(value, Misread):
        raise ValueError(f"not a bound in {unit}: {written}")
    return value


def _mapping(written: object) -> Mapping[str, object]:
    if not isinstance(written, dict):
        raise ValueError(f"a mapping is wanted, not {written!r}")
    return written


def _texts(written: object) -> tuple[str, ...]:
    if not isinstance(written, list):
        raise ValueError(f"a list is wanted, not {written!r}")
    return tuple(str(each) for each in written)


def _text(written: object) -> str | None:
    return None if written is None else str(written)


def all_fields(described: Field) -> Iterator[tuple[tuple[str, ...], Field]]:
    """Every field below one, with its path of names; the items of a list stand at the list's own path."""
    for name, inner in described.fields.items():
        yield (name,), inner
        for path, deeper in all_fields(inner):
            yield (name, *path), deeper
    if described.item:
        yield from all_fields(described.item)


def spoken_path(described: Field, values: object, path: tuple[str | int, ...]) -> str:
    """A path as a contributor says it: items by their own names (`boards.main.parts.C7.rated`), else by their number."""
    words: list[str] = []
    here: Field | None = described
    for step in path:
        values = _inside(values, step)
        if isinstance(step, str):
            here = here.fields.get(step) if here else None
            words.append(step)
            continue
        here = here.item if here else None
        name = item_name(here, values) if here else None
        if name is None:
            words[-1:] = [f"{words[-1] if words else ''}[{step + 1}]"]
        else:
            words.append(name)
    return ".".join(words)


def item_name(item: Field, values: object) -> str | None:
    """The name under which others may point at an item of a list, if it has one."""
    for name, inner in item.fields.items():
        if inner.names_item and isinstance(values, dict):
            written = values.get(name)
            if isinstance(written, str):
                return written
            if isinstance(written, list) and written and isinstance(written[0], str):
                return written[0]
    return None


def _inside(values: object, step: str | int) -> object:
    if isinstance(values, dict) and isinstance(step, str):
        return values.get(step)
    if isinstance(values, list) and isinstance(step, int) and step < len(values):
        return values[step]
    return None
