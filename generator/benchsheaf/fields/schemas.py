"""Schemas read from their files: the data language, as the program knows it."""

from collections.abc import Mapping
from decimal import Decimal
from functools import cache
from importlib.resources import files
from pathlib import Path

from benchsheaf.documents import Document, read_document
from benchsheaf.fields.records import Field, Schemas
from benchsheaf.quantities import Misread, read_quantity

KINDS = (
    "machine",
    "repair",
    "supply",
    "drive",
    "card",
    "keyboard",
    "bus",
    "display",
    "medium",
    "cautions",
    "terms",
    "practice",
)


def schemas_folder() -> Path:
    """Where the schemas lie: inside the installed package, or beside `generator/` in a checkout."""
    inside = Path(str(files("benchsheaf"))) / "schemas"
    return inside if inside.is_dir() else Path(__file__).resolve().parents[3] / "schemas"


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
    {"type", "required", "allowed", "min", "max", "minlength", "schema", "meta"}
    | {"unit", "form", "above", "order", "needs", "at_least", "points_at", "of_kind", "names_item"}
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
    group = rules.get("schema") if shape == "record" else None
    if shape == "record":
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
        of_kind=_texts(rules.get("of_kind", [])),
        names_item=_text(rules.get("names_item")),
        fields=inner,
        item=item,
        group=group if isinstance(group, str) else "",
        wanted=str(meta.get("wanted", "")),
        wanted_where={name: _texts(words) for name, words in _mapping(meta.get("wanted_where", {})).items()},
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
