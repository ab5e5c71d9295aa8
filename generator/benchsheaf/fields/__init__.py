"""What a description may say: the schemas as records, and what a written value means under them."""

from benchsheaf.fields.absences import Absence, absences
from benchsheaf.fields.examples import least_example, least_fields, whole_example
from benchsheaf.fields.json_schema import EXPORTED, json_schema, json_schemas
from benchsheaf.fields.meaning import FORMS, Converted, Misfit, converted, example_text
from benchsheaf.fields.paths import all_fields, item_name, spoken_path, text_at
from benchsheaf.fields.records import SAFETY, Field, Schemas
from benchsheaf.fields.schemas import KINDS, built_in_schemas, read_schemas
from benchsheaf.fields.sentences import (
    family_in_words,
    kind_in_words,
    pointer_in_words,
    rules_in_words,
    spoken_list,
)
from benchsheaf.fields.specimen import specimen_slug, specimens
from benchsheaf.fields.starting import starting_text
from benchsheaf.fields.worked import worked_example
from benchsheaf.fields.written_form import data_lines, written

__all__ = [
    "EXPORTED",
    "FORMS",
    "KINDS",
    "SAFETY",
    "Absence",
    "Converted",
    "Field",
    "Misfit",
    "Schemas",
    "absences",
    "all_fields",
    "built_in_schemas",
    "converted",
    "data_lines",
    "example_text",
    "family_in_words",
    "item_name",
    "json_schema",
    "json_schemas",
    "kind_in_words",
    "least_example",
    "least_fields",
    "pointer_in_words",
    "read_schemas",
    "rules_in_words",
    "specimen_slug",
    "specimens",
    "spoken_list",
    "spoken_path",
    "starting_text",
    "text_at",
    "whole_example",
    "worked_example",
    "written",
]
