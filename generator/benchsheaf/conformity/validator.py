"""The schemas in Cerberus' vocabulary, with the few rules that are ours."""

from decimal import Decimal
from functools import cache
from typing import Any

from cerberus import TypeDefinition, Validator
from cerberus.errors import ErrorDefinition

from benchsheaf.conformity.sound import Shell
from benchsheaf.fields import Field

_ABOVE = 0x1001
_NEEDS = 0x1002
_AT_LEAST = 0x1003


class _SheafValidator(Validator):  # type: ignore[misc]
    """Cerberus with the few rules that are ours."""

    types_mapping = Validator.types_mapping | {"quantity": TypeDefinition("quantity", (Decimal,), ())}

    def _validate_above(self, other: str, field: str, value: object) -> None:
        """The value stands above another field's.

        The rule's arguments are validated against this schema: {'type': 'string'}
        """
        bound = self.document.get(other)
        if isinstance(bound, Decimal | int) and isinstance(value, Decimal | int) and not value > bound:
            self._custom(field, _ABOVE, "above", other, bound)

    def _validate_needs(self, others: list[str], field: str, value: object) -> None:
        """The field says nothing without others.

        The rule's arguments are validated against this schema: {'type': 'list'}
        """
        for other in others:
            if other not in self.document:
                self._custom(field, _NEEDS, "needs", other)

    def _validate_at_least(self, names: list[str], field: str, value: object) -> None:
        """One of several fields is there.

        The rule's arguments are validated against this schema: {'type': 'list'}
        """
        if isinstance(value, dict) and not any(name in value for name in names):
            self._custom(field, _AT_LEAST, "at_least", *names)

    def _custom(self, field: str, code: int, rule: str, *info: object) -> None:
        self._error(field, ErrorDefinition(code, rule), *info)


@cache
def validator(shell: Shell) -> Any:
    """The validator of one kind, built once."""
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
