"""What a written repair takes by the tables: its checks and fixes, to be held against what it took."""

from collections.abc import Mapping
from dataclasses import dataclass
from decimal import Decimal

from benchsheaf.model.bench import Repair


@dataclass(frozen=True, kw_only=True, slots=True)
class RepairFigures:
    """Minutes by hand of a repair's checks and fixes, those in vain too; nothing for taking apart or switching."""

    slug: str
    checks_minutes: Decimal
    fixes_minutes: Decimal


def repair_figures(
    repair: Repair, check_minutes: Mapping[str, Decimal], fix_minutes: Mapping[str, Decimal]
) -> RepairFigures:
    """The minutes that the description gives for all that one record names, each check as often as it was done.

    `check_minutes` and `fix_minutes` are those of the machine's checks and faults, by name.
    Units: minutes in and out; waiting is no part of them.
    Errors: KeyError if the record names what is not described; links have seen to that.
    """
    return RepairFigures(
        slug=repair.slug,
        checks_minutes=sum((check_minutes[each.check] for each in repair.entries), Decimal(0)),
        fixes_minutes=sum((fix_minutes[name] for name in (*repair.found, *repair.tried)), Decimal(0)),
    )
