"""The manual's page about mistakes: every code, in its own words."""

import importlib
import pkgutil
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import cache
from types import ModuleType

from benchsheaf.mistakes import Code, Place
from benchsheaf.wording import as_text

ROOMS = ("quantities", "documents", "fields", "conformity", "links", "rules")
"""The rooms in which descriptions are judged."""

FAMILIES: Mapping[str, tuple[str, str]] = {
    "FILE": ("Files and folders", "Rename, move or take away what is named; the data itself may be right."),
    "YAML": ("How a file is written", "Mend the line that is named first: what comes after it may then be right."),
    "FIELD": ("Fields", "Look the section up in this manual: it has the fields, and which of them must be there."),
    "KIND": ("Sorts of value", "Write what the field is for: a whole number, yes or no, a list, a group."),
    "UNIT": ("Quantities", "Write number and unit as the page about units has them."),
    "RANGE": ("Bounds", "Look at the figure again: a digit or a prefix too many is the commonest reason."),
    "ID": ("Names", "Give each thing one name, and each name to one thing."),
    "LINK": ("Pointers", "Take over the name exactly as it is given where the thing is described."),
    "SENSE": ("Facts against facts", "Two facts cannot both be right: find out which, and mend that one."),
}

_FILE = "machines/sketch-1/machine.yml"


@dataclass(frozen=True, kw_only=True, slots=True)
class CodeEntry:
    """A code: what it stands for, its words as an example fills them, and how that looks in a terminal."""

    id: str
    meaning: str
    words: str
    terminal: str


@dataclass(frozen=True, kw_only=True, slots=True)
class CodeFamily:
    """Codes of one family, and what to do about them."""

    name: str
    title: str
    remedy: str
    codes: Sequence[CodeEntry]


@dataclass(frozen=True, kw_only=True, slots=True)
class MistakesPage:
    """All families of mistakes."""

    families: Sequence[CodeFamily]
    count: int


@cache
def all_codes() -> tuple[Code, ...]:
    """Every code of every room, each once, by family and number."""
    found = {code.id: code for module in _modules() for code in vars(module).values() if isinstance(code, Code)}
    order = list(FAMILIES)
    return tuple(sorted(found.values(), key=lambda code: (order.index(_family(code)), code.id)))


def _modules() -> Iterator[ModuleType]:
    for room in ROOMS:
        module = importlib.import_module(f"benchsheaf.{room}")
        yield module
        for found in pkgutil.walk_packages(getattr(module, "__path__", ()), f"{module.__name__}."):
            yield importlib.import_module(found.name)


def _family(code: Code) -> str:
    return code.id.rpartition("-")[0]


def mistakes_page() -> MistakesPage:
    """What the page says."""
    families = []
    for name, (title, remedy) in FAMILIES.items():
        codes = [_entry(code) for code in all_codes() if _family(code) == name]
        families.append(CodeFamily(name=name, title=title, remedy=remedy, codes=codes))
    return MistakesPage(families=families, count=len(all_codes()))


def _entry(code: Code) -> CodeEntry:
    whole = _family(code) == "FILE"
    place = Place(file=_FILE) if whole else Place(file=_FILE, line=12, column=9)
    told = as_text([code.at(place, **code.example)])
    return CodeEntry(
        id=code.id,
        meaning=code.meaning,
        words=code.words.format_map(code.example),
        terminal=told.rstrip("\n").rpartition("\n")[0],
    )
