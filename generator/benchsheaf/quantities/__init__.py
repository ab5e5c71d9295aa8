"""Quantities as people write them become exact numbers in one base unit, and are printed the way people read them."""

from benchsheaf.quantities.measures import MEASURES, SUFFIX, Measure
from benchsheaf.quantities.print_forms import LONG, ROUNDINGS, printed, printed_binary, printed_decimal, printed_range
from benchsheaf.quantities.spellings import quantity_pattern, spellings
from benchsheaf.quantities.written import Misread, read_quantity

__all__ = [
    "LONG",
    "MEASURES",
    "ROUNDINGS",
    "SUFFIX",
    "Measure",
    "Misread",
    "printed",
    "printed_binary",
    "printed_decimal",
    "printed_range",
    "quantity_pattern",
    "read_quantity",
    "spellings",
]
