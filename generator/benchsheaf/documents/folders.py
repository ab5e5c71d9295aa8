"""The folder of machines and shared parts becomes entries, one for each described thing."""

import os
import pathlib

from benchsheaf.documents.files import bytes_of, text_and_mistakes
from benchsheaf.documents.records import Document, Entry, Reading
from benchsheaf.mistakes import Code, Mistake

PART_FOLDERS = {
    "buses": "bus",
    "boards": "board",
    "cards": "card",
    "keyboards": "keyboard",
    "drives": "drive",
    "supplies": "supply",
    "displays": "display",
    "media": "medium",
}
SHARED_FILES = ("cautions", "terms")
KINDS = ("machine", *PART_FOLDERS.values(), *SHARED_FILES)
KEY_TWICE = Code(
    id="FILE-16",
    meaning="A top-level key of a machine stands in two of its files.",
    words="`{key}` already stands in {file}, line {line}.",
    example={"key": "rails", "file": "machines/sketch-1/power.yml", "line": "4"},
)


def read_folder(root: pathlib.Path) -> Reading:
    """All things described in a folder of machines, and what was wrong in reading them."""
    mistakes: list[Mistake] = []
    entries: dict[tuple[str, str], Entry] = {}
    broken: set[tuple[str, str]] = set()
    shown = os.path.basename(os.path.abspath(root))
    for kind, slug, files in _things(root):
        documents = []
        for path in files:
            file = shown + "/" + path.relative_to(root).as_posix()
            content = bytes_of(path, file)
            document, wrong = (None, content) if isinstance(content, list) else text_and_mistakes(content, file)
            mistakes += wrong
            if wrong:
                broken.add((kind, slug))
            if document is not None:
                documents.append(document)
        if documents:
            entries[kind, slug] = entry(kind, slug, documents, mistakes)
    return Reading(entries, sorted(mistakes, key=lambda mistake: mistake.order), frozenset(broken))


def entry(kind: str, slug: str, documents: list[Document], mistakes: list[Mistake]) -> Entry:
    """The thing that some documents describe together."""
    holders: dict[str, Document] = {}
    values = {}
    for document in documents:
        for key, value in document.values.items():
            if key not in holders:
                holders[key] = document
                values[key] = value
    return Entry(kind, slug, tuple(documents), values, holders)


def _things(root: pathlib.Path) -> list[tuple[str, str, list[pathlib.Path]]]:
    things = []
    for folder in sorted(root.iterdir()):
        if folder.is_dir() and not folder.name.startswith("_"):
            things.append(("machine", folder.name, sorted(folder.glob("*.yml"))))
    for name, kind in PART_FOLDERS.items():
        for path in sorted((root / "_parts" / name).glob("*.yml")):
            things.append((kind, path.stem, [path]))
    for name in SHARED_FILES:
        if (root / "_shared" / f"{name}.yml").exists():
            things.append((name, name, [root / "_shared" / f"{name}.yml"]))
    return things
