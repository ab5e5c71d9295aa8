"""Quantities as people write them become exact numbers in one base unit, and are printed the way people read them."""

from benchsheaf.quantities.measures import SUFFIX
from benchsheaf.quantities.print_forms import ROUNDINGS, printed, printed_binary, printed_decimal, printed_range
from benchsheaf.quantities.written import Misread, read_quantity

__all__ = [
    "ROUNDINGS",
    "SUFFIX",
    "Misread",
    "printed",
    "printed_binary",
    "printed_decimal",
    "printed_range",
    "read_quantity",
]
