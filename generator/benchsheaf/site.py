"""From a folder of descriptions to its mistakes, or to the edition that is published."""

import re
import sys
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from functools import partial
from pathlib import Path
from typing import Any

from benchsheaf import urls
from benchsheaf.compute.workup import CollectionWorkup, collection_workup
from benchsheaf.conformity import Conformed, blanks_told, conformed
from benchsheaf.documents import Entry, growth, read_folder
from benchsheaf.export import FORMAT_VERSION, as_json
from benchsheaf.fields import Schemas, built_in_schemas
from benchsheaf.links import Finds, Links, Thing, links, owner_of
from benchsheaf.mistakes import Mistake
from benchsheaf.model.bench import Repair
from benchsheaf.model.collection import Collection, collection, record_of
from benchsheaf.model.machine import Machine
from benchsheaf.pages.across import across_pages
from benchsheaf.pages.finding import search_files
from benchsheaf.pages.handbook.book import handbook_pages
from benchsheaf.pages.machine import machine_pages
from benchsheaf.pages.manual import manual_pages
from benchsheaf.pages.missing import missing_pages
from benchsheaf.pages.mistaken import mistaken_page
from benchsheaf.pages.page import Page
from benchsheaf.pages.parts import part_pages
from benchsheaf.pages.shelf import Shelf
from benchsheaf.pages.shopping import shopping_files
from benchsheaf.pages.terms import terms_pages
from benchsheaf.rules import record_mistakes
from benchsheaf.sharing import told_once
from benchsheaf.urls import Link, Trail


@dataclass(frozen=True, kw_only=True, slots=True)
class Judgement:
    """What a folder holds, and everything that is wrong with it, in the order of its files."""

    mistakes: tuple[Mistake, ...]
    things: Mapping[Thing, Conformed]
    links: Links
    collection: Collection
    workup: CollectionWorkup

    def forget_texts(self) -> None:
        """Forget what stands in the files, once it is known that nothing in them is wrong: nobody is told of a line.

        Errors: ValueError if there are mistakes.
        """
        if self.mistakes:
            raise ValueError(f"{len(self.mistakes)} mistakes")
        for each in self.things.values():
            each.entry.forget()


@dataclass(frozen=True, kw_only=True, slots=True)
class Edition:
    """All that is published: pages that are written when asked, and files."""

    pages: tuple[Page, ...]
    files: Mapping[str, bytes]
    trail: Trail

    def html(self, page: Page) -> str:
        """A page written; its links and the places it has are noted."""
        written = page.written()
        self.trail.arrive(page.address, _ANCHOR.findall(written))
        return written

    def astray(self) -> Iterator[Link]:
        """Links of the pages written so far that lead nowhere."""
        known = frozenset(page.address for page in self.pages) | frozenset(self.files)
        return self.trail.astray(known)


_ANCHOR = re.compile(r' id="([^"]+)"')


def hindrance() -> str:
    """What keeps this Python from judging anything, in words; nothing if it can."""
    stripped = "Python runs without its docstrings (PYTHONOPTIMIZE=2 or -OO). So data cannot be judged: run it without."
    return stripped if sys.flags.optimize > 1 else ""


@growth()
def judgement(root: Path, schemas: Schemas | None = None) -> Judgement:
    """Everything read, measured against the schemas, linked, computed and judged.

    Errors: FileNotFoundError if there is no such folder; anything wrong inside it is a mistake, not an error.
    """
    schemas = schemas or built_in_schemas()
    if not root.is_dir():
        raise FileNotFoundError(str(root))
    intake = _Intake(schemas=schemas)
    reading = read_folder(root, intake.take)
    told, blanks = blanks_told(reading, schemas)
    for key in sorted(reading.entries.keys() & reading.broken):
        intake.take(reading.entries[key], whole=False, blanks=blanks.get(key, frozenset()))
    things = {key: intake.things[key] for key in reading.entries if key in intake.things}
    unfit = {key for key, each in things.items() if each.mistakes} | reading.broken
    for each in things.values():
        told += each.mistakes
    linked = links(things, intake.found, reading.broken)
    told += linked.mistakes
    files = {document.file: key for key, entry in reading.entries.items() for document in entry.documents}
    unfit |= {files[mistake.place.file] for mistake in linked.mistakes if mistake.place.file in files}
    sound = _sound(things, unfit, linked)
    records = collection({key: intake.records[key] for key in sound})
    workup = collection_workup(records)
    told += record_mistakes(sound, intake.found, records, workup)
    return Judgement(
        mistakes=told_once(told),
        things=sound,
        links=linked,
        collection=records,
        workup=workup,
    )


@dataclass(frozen=True, kw_only=True, slots=True)
class _Intake:
    """Things as they are read, one after the other: what is right becomes a record, and its values are let go."""

    schemas: Schemas
    things: dict[Thing, Conformed] = field(default_factory=dict)
    records: dict[Thing, object] = field(default_factory=dict)
    found: Finds = field(init=False)

    def __post_init__(self) -> None:
        """Find what things name and point at among these very things."""
        object.__setattr__(self, "found", Finds(self.things))

    def take(self, entry: Entry, *, whole: bool = True, blanks: frozenset[str] = frozenset()) -> None:
        """Measure one thing against its schema, and note what it names and points at."""
        if entry.kind not in self.schemas.kinds:
            return
        key = entry.kind, entry.slug
        each = conformed(entry, self.schemas.kinds[entry.kind], whole=whole, blanks=blanks)
        self.things[key] = each
        self.found.note(key)
        if whole and not each.mistakes:
            self.records[key] = record_of(each)
            each.let_go()


def _sound(things: Mapping[Thing, Conformed], unfit: set[Thing], linked: Links) -> dict[Thing, Conformed]:
    """Things that can be computed: without a mistake themselves, and holding nothing that has one."""
    unfit = set(unfit)
    if ("cautions", "cautions") in unfit:
        unfit |= {key for key in things if key[0] == "machine"}
    grown = True
    while grown:
        holders = {pointer.thing for key, held in linked.held_by.items() if key in unfit for pointer in held}
        holders |= {key for key in things if owner_of(key) in unfit}  # a repair speaks of its machine
        grown = not holders <= unfit
        unfit |= holders
    return {key: each for key, each in things.items() if key not in unfit}


@growth()
def edition(judged: Judgement, edit_base: str | None = None) -> Edition:
    """The pages and files of a folder without mistakes.

    `edit_base` is the address below which a forge lets the data files be edited.
    Errors: ValueError if there are mistakes; they are told, never published.
    """
    if judged.mistakes:
        raise ValueError(f"{len(judged.mistakes)} mistakes")
    shelf = _shelf(judged, edit_base)
    pages = [*across_pages(shelf), *terms_pages(shelf), *part_pages(shelf), *missing_pages(shelf), *manual_pages(shelf)]
    pages += handbook_pages(shelf)
    for machine in judged.collection.machines.values():
        pages += machine_pages(shelf, machine)
    files = Files(_data_files(judged) | shopping_files(shelf) | _later(search_files(shelf)))
    return Edition(pages=tuple(pages), files=files, trail=shelf.trail)


def mistaken_edition(judged: Judgement) -> Edition:
    """In the place of a site whose data is wrong: one page that tells every mistake, and the manual."""
    shelf = _shelf(judged, None)
    pages = (mistaken_page(judged.mistakes, shelf.trail), *manual_pages(shelf, alone=True))
    return Edition(pages=pages, files=search_files(shelf, alone=True), trail=shelf.trail)


def _shelf(judged: Judgement, edit_base: str | None) -> Shelf:
    return Shelf(
        collection=judged.collection,
        workup=judged.workup,
        links=judged.links,
        things=judged.things,
        edit_base=edit_base,
    )


class Files(Mapping[str, bytes]):
    """Files by their addresses, each made when it is asked for and not kept."""

    def __init__(self, made: Mapping[str, Callable[[], bytes]]) -> None:
        """Take the ways to make them."""
        self._made = made

    def __getitem__(self, address: str) -> bytes:
        """What stands in a file."""
        return self._made[address]()

    def __iter__(self) -> Iterator[str]:
        """All addresses."""
        return iter(self._made)

    def __len__(self) -> int:
        """How many there are."""
        return len(self._made)


def _later(files: Mapping[str, bytes]) -> dict[str, Callable[[], bytes]]:
    """How each file of a mapping is made, which does so only when it is asked for."""
    return {address: partial(files.__getitem__, address) for address in files}


def _data_files(judged: Judgement) -> dict[str, Callable[[], bytes]]:
    """How each data file is made, by its address."""
    records, workup = judged.collection, judged.workup
    made: dict[str, Callable[[], bytes]] = {}
    index: dict[str, Any] = {"format_version": FORMAT_VERSION, "machines": [], "parts": []}
    for slug, machine in records.machines.items():
        address = urls.machine_data(slug)
        index["machines"].append({"slug": slug, "name": machine.name, "data": address})
        repairs = records.repairs_of.get(slug, ())
        made[address] = partial(_machine_data, machine, workup, repairs)
    shelves: tuple[tuple[str, Mapping[str, Any], Mapping[str, Any]], ...] = (
        ("supply", records.supplies, workup.supplies),
        ("drive", records.drives, workup.drives),
        ("card", records.cards, workup.cards),
        ("keyboard", records.keyboards, {}),
        ("bus", records.buses, {}),
        ("display", records.displays, workup.displays),
        ("medium", records.media, {}),
    )
    for kind, shelf, figures in shelves:
        for slug, part in shelf.items():
            address = urls.part_data(kind, slug)
            index["parts"].append({"kind": kind, "slug": slug, "name": part.name, "data": address})
            made[address] = partial(_data, part, figures.get(slug))
    return made | {urls.INDEX_DATA: partial(as_json, index)}


def _machine_data(machine: Machine, workup: CollectionWorkup, repairs: Sequence[Repair]) -> bytes:
    """The data file of a machine, whose figures are asked for only now."""
    return _data(machine, workup.machines[machine.slug], repairs)


def _data(facts: object, figures: object, repairs: Sequence[Repair] = ()) -> bytes:
    """One data file: the facts as they were given, what was computed from them, and a machine's repair records."""
    told: dict[str, object] = {"format_version": FORMAT_VERSION, "facts": facts}
    told |= {"figures": figures} if figures is not None else {}
    return as_json(told | ({"repairs": repairs} if repairs else {}))
