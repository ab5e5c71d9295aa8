"""The folder of machines and shared parts becomes entries, one for each thing that is described."""

import os
import pathlib
import re
from collections.abc import Callable, Iterator
from dataclasses import dataclass, field

from benchsheaf.documents.files import LINK, NOT_A_FILE, NOT_OPENED, bytes_of, odd_thing, reason, text_and_mistakes
from benchsheaf.documents.growth import growth
from benchsheaf.documents.records import Document, Entry, Reading
from benchsheaf.mistakes import Code, Mistake, Place, nearest_name

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
SHARED_FILES = ("cautions", "practice", "terms")
KINDS = ("machine", "repair", *PART_FOLDERS.values(), *SHARED_FILES)
OTHER_FOLDERS = ("photos", "repairs")
LONGEST_NAME = 48

OTHER_ENDING = Code(
    id="FILE-11",
    meaning="The name of a file in a folder of data does not end in `.yml`.",
    words="Only data files stand here, and their names end in `.yml`. Rename this file, or take it away.",
)
OUT_OF_PLACE = Code(
    id="FILE-12",
    meaning="A file stands where only folders belong.",
    words="No file belongs here. A machine is described in `{root}/NAME/`, a part in `{root}/_parts/`.",
    example={"root": "machines"},
)
UNKNOWN_NAME = Code(
    id="FILE-13",
    meaning="A file or folder has a name that is none of those fixed at its place.",
    words="{what} of this name belongs here; there may be {names}.",
    example={"what": "No folder", "names": "`_parts`, `_shared`"},
)
BAD_NAME = Code(
    id="FILE-14",
    meaning="The name of a file or folder is longer than 48 signs, or not of small letters, digits and hyphens.",
    words="Choose a name of at most 48 signs: small letters a-z, digits and hyphens, a letter or a digit first.",
)
DEVICE_NAME = Code(
    id="FILE-15",
    meaning="The name of a file or folder is that of a device on some systems.",
    words="Some systems take `{name}` for a device and cannot hold it. Choose another name.",
    example={"name": "con"},
)
KEY_ELSEWHERE = Code(
    id="FILE-16",
    meaning="A top-level key of a machine stands in two of its files.",
    words="`{key}` already stands in {file}, line {line}. Keep one of the two.",
    example={"key": "rails", "file": "machines/sketch-1/power.yml", "line": "4"},
)
TWINS = Code(
    id="FILE-17",
    meaning="Two names in a folder differ in capitals only.",
    words="Some systems cannot hold this beside `{other}`, as the names differ in capitals only. Rename one.",
    example={"other": "sketch-1"},
)
NOTHING_DESCRIBED = Code(
    id="FILE-18",
    meaning="A machine's folder holds no data file.",
    words="This folder holds no data file. Describe the machine in files that end in `.yml`, or delete the folder.",
)

_NAME = re.compile(rf"[a-z0-9][a-z0-9-]{{0,{LONGEST_NAME - 1}}}")
# Source: names that old disk operating systems and their successors keep for devices, with any ending; from memory.
_DEVICES = re.compile(r"con|prn|aux|nul|com[0-9]|lpt[0-9]")


@dataclass(slots=True)
class _Walk:
    """One walk through a folder of data, and what was found on it."""

    root: pathlib.Path
    shown: str
    mistakes: list[Mistake] = field(default_factory=list)
    entries: dict[tuple[str, str], Entry] = field(default_factory=dict)
    broken: set[tuple[str, str]] = field(default_factory=set)
    owners: dict[str, tuple[str, str]] = field(default_factory=dict)
    take: Callable[[Entry], None] | None = None
    repairs: list[pathlib.Path] = field(default_factory=list)

    def machines(self) -> None:
        """Each folder with a name of its own is a machine."""
        for path, odd in self._inside(self.root):
            if path.name in ("_parts", "_shared"):
                if self._is_folder(path, odd):
                    self.parts(path) if path.name == "_parts" else self.shared(path)
            elif odd is None:
                self.tell(OUT_OF_PLACE, path, root=self.shown)
            elif path.name.startswith("_"):
                self._unknown(path, "No folder", ("_parts", "_shared"))
            elif self._is_folder(path, odd) and self._is_named(path, path.name):
                self._machine(path)

    def parts(self, folder: pathlib.Path) -> None:
        """Each kind of part has a folder, each part a file in it."""
        for path, odd in self._inside(folder):
            if path.name not in PART_FOLDERS:
                self._unknown(path, "No file" if odd is None else "No folder", tuple(PART_FOLDERS))
            elif self._is_folder(path, odd):
                kind = PART_FOLDERS[path.name]
                for file in self._data_files(path):
                    self._entry(kind, file.stem, [file])

    def shared(self, folder: pathlib.Path) -> None:
        """Two files with fixed names."""
        for file in self._data_files(folder):
            if file.stem in SHARED_FILES:
                self._entry(file.stem, file.stem, [file])
            else:
                self._unknown(file, "No file", tuple(f"{name}.yml" for name in SHARED_FILES))

    def tell(self, code: Code, path: pathlib.Path, nearest: str | None = None, **fills: str) -> None:
        """Keeps a mistake of a file or folder as a whole."""
        self.mistakes.append(code.at(Place(file=self.name_of(path)), nearest=nearest, **fills))

    def name_of(self, path: pathlib.Path) -> str:
        """The name by which a file is shown."""
        return "/".join((self.shown, *path.relative_to(self.root).parts))

    def _machine(self, folder: pathlib.Path) -> None:
        before = len(self.mistakes)
        files = list(self._data_files(folder, OTHER_FOLDERS))
        if not files and len(self.mistakes) == before:
            self.tell(NOTHING_DESCRIBED, folder)
        if len(self.mistakes) > before:
            self.broken.add(("machine", folder.name))
        self._entry("machine", folder.name, files)
        while self.repairs:
            for file in self._data_files(self.repairs.pop()):
                self._entry("repair", f"{folder.name}/{file.stem}", [file])

    def _entry(self, kind: str, slug: str, files: list[pathlib.Path]) -> None:
        documents: list[Document] = []
        for path in files:
            self.owners[self.name_of(path)] = kind, slug
            name = self.name_of(path)
            content = bytes_of(path, name)
            document, wrong = (None, content) if isinstance(content, list) else text_and_mistakes(content, name)
            self.mistakes += wrong
            if wrong:
                self.broken.add((kind, slug))
            if document is not None:
                documents.append(document)
        if documents:
            self.entries[kind, slug] = self._merged(kind, slug, documents)
            if self.take and (kind, slug) not in self.broken:
                self.take(self.entries[kind, slug])

    def _merged(self, kind: str, slug: str, documents: list[Document]) -> Entry:
        holders: dict[str, Document] = {}
        for document in documents:
            for key in document.values:
                if key not in holders:
                    holders[key] = document
                    continue
                spot = document.spots[key]
                first = holders[key]
                place = Place(file=document.file, line=spot.key_line, column=spot.key_column)
                line = str(first.spots[key].key_line)
                self.mistakes.append(KEY_ELSEWHERE.at(place, key, key=key, file=first.file, line=line))
                self.broken.add((kind, slug))
        return Entry(kind, slug, tuple(documents), holders)

    def _inside(self, folder: pathlib.Path) -> Iterator[tuple[pathlib.Path, str | None]]:
        """What lies in a folder, sorted by name, and what it is if no file; what systems hide there is passed over."""
        try:
            with os.scandir(folder) as found:
                names = sorted(entry.name for entry in found if not _is_systems(entry.name))
            for name in names:
                path = folder / name
                yield path, odd_thing(path.lstat().st_mode)
        except OSError as error:
            self.tell(NOT_OPENED, folder, why=reason(error))

    def _data_files(self, folder: pathlib.Path, others: tuple[str, ...] = ()) -> Iterator[pathlib.Path]:
        """The data files in a folder; `others` are folders that may lie beside them."""
        for path, odd in self._inside(folder):
            if path.name in others:
                if self._is_folder(path, odd) and path.name == "repairs":
                    self.repairs.append(path)
            elif path.suffix != ".yml":
                self._refuse_ending(path, odd, others)
            elif self._is_named(path, path.stem):
                yield path

    def _refuse_ending(self, path: pathlib.Path, odd: str | None, others: tuple[str, ...]) -> None:
        if odd == "a link":
            self.tell(LINK, path, what="file")
        elif odd == "a folder" and others:
            self._unknown(path, "No folder", others)
        elif odd:
            self.tell(NOT_A_FILE, path, what=odd)
        else:
            meant = re.sub(r"(?i)\.(yaml|yml)(\.txt)?$", ".yml", path.name)
            self.tell(OTHER_ENDING, path, meant if meant != path.name else None)

    def _unknown(self, path: pathlib.Path, what: str, names: tuple[str, ...]) -> None:
        fills = {"what": what, "names": ", ".join(f"`{name}`" for name in names)}
        self.tell(UNKNOWN_NAME, path, nearest_name(path.name, names), **fills)

    def _is_folder(self, path: pathlib.Path, odd: str | None) -> bool:
        if odd == "a link":
            self.tell(LINK, path, what="folder")
        elif odd != "a folder":
            self.tell(NOT_A_FILE, path, what=odd or "a file")
        return odd == "a folder"

    def _is_named(self, path: pathlib.Path, name: str) -> bool:
        """Whether every file system can hold a name, and an address too."""
        twin = path.with_name(path.name.lower())
        if not _NAME.fullmatch(name):
            if twin != path and os.path.lexists(twin):
                self.tell(TWINS, path, other=twin.name)
            else:
                meant = re.sub(r"[\s_]+", "-", name.lower())
                self.tell(BAD_NAME, path, f"{meant}{path.suffix}" if _NAME.fullmatch(meant) else None)
        elif _DEVICES.fullmatch(name):
            self.tell(DEVICE_NAME, path, name=name)
        else:
            return True
        return False


def name_refusal(name: str) -> str | None:
    """Why a machine or a part cannot have a name in files and addresses, in a sentence; None if it can."""
    if not _NAME.fullmatch(name):
        return BAD_NAME.words
    return DEVICE_NAME.words.format(name=name) if _DEVICES.fullmatch(name) else None


def _is_systems(name: str) -> bool:
    """Whether a system or an editor put a file there for itself."""
    return name.startswith(".") and not name.endswith((".yml", ".yaml"))


@growth()
def read_folder(root: pathlib.Path, take: Callable[[Entry], None] | None = None) -> Reading:
    """All things that a folder of machines describes, and what was wrong in reading them, in file order.

    `take` is given each thing that could be read whole, as soon as it is: who lets go of it then needs little memory.
    """
    walk = _Walk(root, root.name if root.name.strip(".") else root.resolve().name, take=take)
    walk.machines()
    mistakes = sorted(walk.mistakes, key=lambda mistake: mistake.order)
    return Reading(walk.entries, mistakes, frozenset(walk.broken), walk.owners)
