"""Whether a description has the fields, kinds and bounds that its schema asks for."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from decimal import Decimal
from functools import cache
from typing import Any

from cerberus import TypeDefinition, Validator

from benchsheaf.documents import Entry
from benchsheaf.fields import Field, Misfit, converted, example_text, spoken_path
from benchsheaf.mistakes import Code, Mistake, nearest_name
from benchsheaf.quantities import printed

FIELD_01 = Code(
    id="FIELD-01",
    meaning="A field has a name that is not known there.",
    words="There is no field `{name}` here. The fields are {fields}.",
    example={"name": "raled", "fields": "`kind`, `rated` and `ref`"},
)
FIELD_02 = Code(
    id="FIELD-02",
    meaning="A field that must be there is missing.",
    words="`{name}` is missing: {help} Add a line such as `{name}: {example}`.",
    example={"name": "rated", "help": "The highest voltage that the maker allows.", "example": "16 V"},
)
FIELD_03 = Code(
    id="FIELD-03",
    meaning="A value is not one of the words that the field knows.",
    words="One of these is wanted: {allowed}.",
    example={"allowed": "`slow` or `quick`"},
)
FIELD_04 = Code(
    id="FIELD-04",
    meaning="A field stands without another one that it needs.",
    words="`{name}` says nothing without `{needed}`. Add `{needed}`, or take `{name}` out.",
    example={"name": "peak", "needed": "peak_for"},
)
FIELD_05 = Code(
    id="FIELD-05",
    meaning="None of several fields is there, and one is needed.",
    words="One of {names} is wanted here.",
    example={"names": "`rail`, `signal` or `key`"},
)
KIND_04 = Code(
    id="KIND-04",
    meaning="A list, a group of fields or a single value stands where another of them was wanted.",
    words="{wanted} is wanted here, not {got}.",
    example={"wanted": "A list (each item on a line that begins with `- `)", "got": "a single value"},
)
RANGE_01 = Code(
    id="RANGE-01",
    meaning="A number is too small.",
    words="At least {bound} is wanted.",
    example={"bound": "1 rpm"},
)
RANGE_02 = Code(
    id="RANGE-02",
    meaning="A number is too large.",
    words="At most {bound} is possible.",
    example={"bound": "100 %"},
)
RANGE_03 = Code(
    id="RANGE-03",
    meaning="A number must be above another one and is not.",
    words="`{name}` must be above `{other}`, which is `{bound}`.{hint}",
    example={"name": "high", "other": "low", "bound": "12.60 V", "hint": ""},
)
RANGE_04 = Code(
    id="RANGE-04",
    meaning="A list has too few items.",
    words="At least {bound} items are wanted.",
    example={"bound": "2"},
)

_SINGLE = {
    "text": "A single value",
    "integer": "A single number",
    "boolean": "A single `yes` or `no`",
    "quantity": "A single value with its unit",
}
_WANTED = _SINGLE | {
    "list": "A list (each item on a line that begins with `- `)",
    "record": "A group of fields (`name: value`, one on a line)",
}
_MINUS_HINT = " With a minus sign -13.20 V is the low end."


@dataclass(frozen=True, kw_only=True, slots=True)
class Conformed:
    """A description whose scalars have become what its schema says they are."""

    entry: Entry
    kind: Field
    values: dict[str, Any]
    mistakes: list[Mistake]

    def spoken(self, path: tuple[str | int, ...]) -> str:
        """A path in this description as a contributor says it."""
        return spoken_path(self.kind, self.entry.values, path)


Path = tuple[str | int, ...]


def conformed(entry: Entry, kind: Field, *, whole: bool) -> Conformed:
    """A description measured against its schema.

    `whole` says that every file of it could be read; if not, what is missing at the top is not told.
    """
    mistakes: list[Mistake] = []
    misfits: set[Path] = set()

    def tell(code: Code, path: Path, fills: Mapping[str, str], nearest: str | None = None, key: bool = False) -> None:
        place = entry.key_place(path) if key else entry.place(path)
        found = _found(entry.values, path)
        spoken = spoken_path(kind, entry.values, path)
        mistakes.append(code.at(place, spoken, found, nearest, **fills))

    def convert(described: Field, written: object, path: Path) -> object:
        if described.shape == "record" and isinstance(written, dict):
            known = described.fields
            return {
                name: convert(known[name], inner, (*path, name)) if name in known else inner
                for name, inner in written.items()
            }
        if described.shape == "list" and isinstance(written, list) and described.item:
            item = described.item
            return [convert(item, inner, (*path, index)) for index, inner in enumerate(written)]
        if described.shape not in ("record", "list") and isinstance(written, str):
            value = converted(described, written)
            if not isinstance(value, Misfit):
                return value
            misfits.add(path)
            tell(value.code, path, value.fills)
        return written

    values = convert(kind, entry.values, ())
    assert isinstance(values, dict)
    validator = _validator(kind.name, _Shell(kind))
    validator.validate(values, normalize=False)
    for error in _leaves(validator._errors):
        path = tuple(error.document_path)
        if path in misfits or (error.code == _MISSING and path[:-1] == () and not whole):
            continue
        _tell_error(error, kind, path, tell, values)
    return Conformed(entry=entry, kind=kind, values=values, mistakes=mistakes)


def _tell_error(error: Any, kind: Field, path: Path, tell: Any, values: object) -> None:
    """One of Cerberus' errors in our words."""
    described = _described(kind, path)
    rule = "unknown" if error.code == _UNKNOWN else error.rule
    if rule == "unknown":
        known = sorted(_described(kind, path[:-1]).fields)
        name = str(path[-1])
        fills = {"name": name, "fields": _spoken_list(known, "and")}
        tell(FIELD_01, path, fills, nearest_name(name, known), key=True)
    elif rule == "required":
        name = str(path[-1])
        sample = example_text(described) if described.shape not in ("record", "list") else "…"
        tell(FIELD_02, path, {"name": name, "help": described.help, "example": sample})
    elif rule == "allowed":
        words = list(described.allowed)
        tell(FIELD_03, path, {"allowed": _spoken_list(words, "or")}, nearest_name(str(error.value), words))
    elif rule == "needs":
        tell(FIELD_04, path, {"name": str(path[-1]), "needed": error.info[0]}, key=True)
    elif rule == "at_least":
        tell(FIELD_05, path, {"names": _spoken_list(list(described.at_least), "or")})
    elif rule == "type":
        tell(KIND_04, path, {"wanted": _WANTED[described.shape], "got": _shape_of(error.value)})
    elif rule in ("min", "max"):
        tell(RANGE_01 if rule == "min" else RANGE_02, path, {"bound": _number(described, error.constraint)})
    elif rule == "above":
        other, bound = error.info
        hint = _MINUS_HINT if bound < 0 else ""
        fills = {"name": str(path[-1]), "other": other, "bound": _number(described, bound), "hint": hint}
        tell(RANGE_03, path, fills)
    elif rule == "minlength":
        tell(RANGE_04, path, {"bound": str(error.constraint)})
    else:  # pragma: no cover
        raise NotImplementedError(f"no words for the rule {rule}")


def _spoken_list(words: list[str], last: str) -> str:
    quoted = [f"`{word}`" for word in words]
    return quoted[0] if len(quoted) == 1 else f"{', '.join(quoted[:-1])} {last} {quoted[-1]}"


def _number(described: Field, value: Decimal | int) -> str:
    return printed(value, described.unit) if described.unit else str(value)


def _shape_of(value: object) -> str:
    return {"dict": "a group of fields", "list": "a list"}.get(type(value).__name__, "a single value")


def _found(values: object, path: Path) -> str | None:
    """The contributor's own characters at a path; None where that is no single value."""
    for step in path:
        if isinstance(values, dict) and isinstance(step, str) and step in values:
            values = values[step]
        elif isinstance(values, list) and isinstance(step, int) and step < len(values):
            values = values[step]
        else:
            return None
    return values if isinstance(values, str) else None


def _described(kind: Field, path: Path) -> Field:
    here = kind
    for step in path:
        if isinstance(step, int):
            assert here.item is not None
            here = here.item
        else:
            here = here.fields.get(step, here)
    return here


def _leaves(errors: Any) -> Iterator[Any]:
    for error in errors:
        if error.child_errors:
            yield from _leaves(error.child_errors)
        else:
            yield error


_MISSING = 0x02
_UNKNOWN = 0x03
_ABOVE = 0x1001
_NEEDS = 0x1002
_AT_LEAST = 0x1003


class _SheafValidator(Validator):  # type: ignore[misc]
    """Cerberus with the few rules that are ours."""

    types_mapping = Validator.types_mapping | {"quantity": TypeDefinition("quantity", (Decimal,), ())}

    def _validate_above(self, other: str, field: str, value: object) -> None:
        """The rule's arguments are validated against this schema: {'type': 'string'}"""
        bound = self.document.get(other)
        if isinstance(bound, Decimal | int) and isinstance(value, Decimal | int) and not value > bound:
            self._custom(field, _ABOVE, "above", other, bound)

    def _validate_needs(self, others: list[str], field: str, value: object) -> None:
        """The rule's arguments are validated against this schema: {'type': 'list'}"""
        for other in others:
            if other not in self.document:
                self._custom(field, _NEEDS, "needs", other)

    def _validate_at_least(self, names: list[str], field: str, value: object) -> None:
        """The rule's arguments are validated against this schema: {'type': 'list'}"""
        if isinstance(value, dict) and not any(name in value for name in names):
            self._custom(field, _AT_LEAST, "at_least", *names)

    def _custom(self, field: str, code: int, rule: str, *info: object) -> None:
        self._error(field, _definition(code, rule), *info)


def _definition(code: int, rule: str) -> Any:
    from cerberus.errors import ErrorDefinition

    return ErrorDefinition(code, rule)


@dataclass(frozen=True, slots=True)
class _Shell:
    """A schema by its identity, so that a validator is built once for it."""

    kind: Field

    def __hash__(self) -> int:
        return id(self.kind)

    def __eq__(self, other: object) -> bool:
        return isinstance(other, _Shell) and self.kind is other.kind


@cache
def _validator(_name: str, shell: _Shell) -> Any:
    return _SheafValidator({name: _rules(inner) for name, inner in shell.kind.fields.items()})


_TYPES = {"text": "string", "integer": "integer", "boolean": "boolean", "quantity": "quantity", "list": "list"}


def _rules(described: Field) -> dict[str, Any]:
    """A field in Cerberus' own vocabulary."""
    rules: dict[str, Any] = {"type": _TYPES.get(described.shape, "dict")}
    if described.required:
        rules["required"] = True
    if described.allowed:
        rules["allowed"] = list(described.allowed)
    if described.least is not None:
        rules["min"] = described.least
    if described.most is not None:
        rules["max"] = described.most
    if described.shortest:
        rules["minlength"] = described.shortest
    if described.above:
        rules["above"] = described.above
    if described.needs:
        rules["needs"] = list(described.needs)
    if described.at_least:
        rules["at_least"] = list(described.at_least)
    if described.shape == "record":
        rules["schema"] = {name: _rules(inner) for name, inner in described.fields.items()}
    if described.item:
        rules["schema"] = _rules(described.item)
    return rules
