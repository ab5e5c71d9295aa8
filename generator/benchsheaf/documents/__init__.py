"""Data files become text values, each with the line and column where it stands; nothing else of YAML comes through."""

from benchsheaf.documents.files import read_document, read_text, text_and_mistakes
from benchsheaf.documents.folders import KINDS, PART_FOLDERS, name_refusal, read_folder
from benchsheaf.documents.growth import growth
from benchsheaf.documents.records import Document, Entry, Path_, Reading, Spot, Value
from benchsheaf.documents.refusals import COMMA_CUT, LEFT_OUT, NO_VALUE

__all__ = [
    "COMMA_CUT",
    "KINDS",
    "LEFT_OUT",
    "NO_VALUE",
    "PART_FOLDERS",
    "Document",
    "Entry",
    "Path_",
    "Reading",
    "Spot",
    "Value",
    "growth",
    "name_refusal",
    "read_document",
    "read_folder",
    "read_text",
    "text_and_mistakes",
]
