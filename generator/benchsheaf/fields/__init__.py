"""What a description may say: the schemas as records, and what a written value means under them."""

from benchsheaf.fields.meaning import FORMS, Converted, Misfit, converted, example_text
from benchsheaf.fields.paths import all_fields, item_name, spoken_path, text_at
from benchsheaf.fields.records import Field, Schemas
from benchsheaf.fields.schemas import KINDS, built_in_schemas, read_schemas
from benchsheaf.fields.specimen import specimens

__all__ = [
    "FORMS",
    "KINDS",
    "Converted",
    "Field",
    "Misfit",
    "Schemas",
    "all_fields",
    "built_in_schemas",
    "converted",
    "example_text",
    "item_name",
    "read_schemas",
    "specimens",
    "spoken_path",
    "text_at",
]
