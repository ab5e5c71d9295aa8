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
    of some words. `of_kind` says of what kind a part must be that the field points at.
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
    of_kind: tuple[str, ...] = ()
    names_item: str | None = None
    fields: Mapping[str, "Field"] = field(default_factory=dict)
    item: "Field | None" = None
    group: str = ""
    wanted: str = ""
    wanted_where: Mapping[str, tuple[str, ...]] = field(default_factory=dict)

    # Asked of every value, and so worked out once.
    key: str = field(init=False, repr=False, compare=False)
    """The field's name in records and in the export: its own name, with the suffix of its unit."""
    gives_names: bool = field(init=False, repr=False, compare=False)
    """Whether the field, or one below it, names an item."""
    has_pointers: bool = field(init=False, repr=False, compare=False)
    """Whether the field, or one below it, points at an item."""

    def __post_init__(self) -> None:
        """Fill what follows from the rest."""
        below = [*self.fields.values(), *([self.item] if self.item else [])]
        names = bool(self.names_item) or any(each.gives_names for each in below)
        points = bool(self.points_at) or any(each.has_pointers for each in below)
        object.__setattr__(self, "key", f"{self.name}_{SUFFIX[self.unit]}" if self.unit else self.name)
        object.__setattr__(self, "gives_names", names)
        object.__setattr__(self, "has_pointers", points)


@dataclass(frozen=True, kw_only=True, slots=True)
class Schemas:
    """All kinds of description, each as one record field that holds the fields of its documents."""

    kinds: Mapping[str, Field]
