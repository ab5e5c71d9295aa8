"""Data files become text values, each with the line and column where it stands; nothing else of YAML comes through."""

from benchsheaf.documents.files import read_document, read_text, text_and_mistakes
from benchsheaf.documents.folders import KINDS, read_folder
from benchsheaf.documents.growth import growth
from benchsheaf.documents.records import Document, Entry, Path_, Reading, Spot, Value

__all__ = [
    "KINDS",
    "Document",
    "Entry",
    "Path_",
    "Reading",
    "Spot",
    "Value",
    "growth",
    "read_document",
    "read_folder",
    "read_text",
    "text_and_mistakes",
]
