"""A field of a description, and the fields of every kind, as records."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from decimal import Decimal

from benchsheaf.quantities import SUFFIX

SAFETY = "safety"
"""What `wanted` says of a field that is asked for before all else."""


@dataclass(frozen=True, kw_only=True, slots=True)
class Field:
    """One field of a description. `shape` is text, integer, boolean, quantity, record or list.

    `group` is the name under which kinds share the fields of a record. `wanted` says that the field is asked for where
    it is absent, `SAFETY` before all else, or `yes`; `wanted_where` limits that to records whose other fields have one
    of some words.
    """

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
    group: str = ""
    wanted: str = ""
    wanted_where: Mapping[str, tuple[str, ...]] = field(default_factory=dict)

    @property
    def key(self) -> str:
        """The field's name in records and in the export: its own name, with the suffix of its unit."""
        return f"{self.name}_{SUFFIX[self.unit]}" if self.unit else self.name


@dataclass(frozen=True, kw_only=True, slots=True)
class Schemas:
    """All kinds of description, each as one record field that holds the fields of its documents."""

    kinds: Mapping[str, Field]
