"""A collection to measure with: one machine and all that it holds varied into many, the same ones at every run.

Nothing here knows a section of the data: what a value is comes from its schema. Texts get other words, parts move a
little, draws and shares become others, and every machine and shared thing has a name of its own. Designators stay, as
boards everywhere count their parts from one.
"""

import argparse
import re
import shutil
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from random import Random

import yaml

from benchsheaf.documents import PART_FOLDERS
from benchsheaf.fields import Field, built_in_schemas
from written import Written, written_values

HOUSE = Path(__file__).resolve().parent.parent
DATA = HOUSE / "machines"
MODEL = "ostervane-bureau-8"

MACHINES = 60
MACHINES_A_FAMILY = 6
"""How many machines hold the same supply, drives, cards and keyboard.

With six, one page in fifteen is of something shared.
"""

PARTS_MOVE_BY_MM = 1.5
DRAWS_SHRINK_TO = 0.9
"""Draws only become less, so that no supply is overloaded; those of one file by the same share, so that a start stays
above a run."""
WORDS_CHANGED = 0.3
"""Of the longer words of a text so many become others, and one at least."""
SHORTEST_WORD, LONGEST_WORD = 5, 11
COMMON_WORDS, OWN_WORDS = 3500, 70
"""From how many words the others are taken: those that all share, and those of one machine or family alone."""

_WORD = re.compile(r"\[\[.*?\]\]|[\w/-]+")
_CHANGEABLE = re.compile(rf"[a-z]{{{SHORTEST_WORD},}}")
_NUMBER = re.compile(r"-?[0-9.]+")


def write_collection(folder: Path, machines: int = MACHINES, machines_a_family: int = MACHINES_A_FAMILY) -> None:
    """Write a folder of descriptions; a collection that was in it is lost.

    Errors: FileExistsError if the folder holds something that is no collection.
    """
    if folder.exists():
        if not (folder / "_shared").is_dir() and any(folder.iterdir()):
            raise FileExistsError(f"{folder} holds something else")
        shutil.rmtree(folder)
    shutil.copytree(DATA / "_shared", folder / "_shared")
    parts, own = _files(DATA / "_parts"), _files(DATA / MODEL)
    for number in range(1, machines + 1):
        family, place = divmod(number - 1, machines_a_family)
        names = _names(f"{family + 1:03}", f"{number:03}", parts)
        if place == 0:
            for path in parts:
                inside = path.relative_to(DATA).with_stem(names.slugs.get(path.stem, path.stem))
                _write(folder / inside, path, names, f"family {family + 1:03}")
        for path in own:
            _write(folder / names.slugs[MODEL] / path.relative_to(DATA / MODEL), path, names, f"sample {number:03}")


def _files(folder: Path) -> list[Path]:
    return [path for path in sorted(folder.rglob("*")) if path.is_file()]


@dataclass(frozen=True, kw_only=True)
class _Names:
    """New names, old → new: `slugs` of files and folders, `plates` as people read them."""

    slugs: Mapping[str, str]
    plates: Mapping[str, str]


def _names(family: str, machine: str, parts: list[Path]) -> _Names:
    """The names of one machine and of what its family holds; all are equally long."""
    descriptions = [path for path in parts if path.suffix == ".yml"]
    return _Names(
        slugs={path.stem: f"{path.stem}-{family}" for path in descriptions} | {MODEL: f"sample-{machine}"},
        plates={plate: f"{plate}-{family}" for plate in map(_plate, descriptions)}
        | {_plate(DATA / MODEL / "identity.yml"): f"Sample {machine}"},
    )


def _plate(path: Path) -> str:
    return str(yaml.load(path.read_bytes(), yaml.CBaseLoader)["name"])


def _write(target: Path, path: Path, names: _Names, holder: str) -> None:
    target.parent.mkdir(parents=True, exist_ok=True)
    if path.suffix == ".yml":
        target.write_text(_varied(path, names, holder), "utf-8")
    else:
        shutil.copy(path, target)


def _varied(path: Path, names: _Names, holder: str) -> str:
    """The text of a file with other values; comments, order and layout stay as somebody wrote them."""
    text = path.read_text("utf-8")
    variety = _Variety(names=names, holder=holder, chance=Random(f"{holder} {path.name}"))
    pieces: list[str] = []
    done = 0
    for value in written_values(text, _kind(path)):
        pieces += [text[done : value.start], variety.other(value, text[value.start : value.end])]
        done = value.end
    return "".join([*pieces, text[done:]])


def _kind(path: Path) -> Field | None:
    """The schema of a file; nothing for a kind that has none."""
    place = path.relative_to(DATA).parts
    kind = PART_FOLDERS.get(place[1], "") if place[0] == "_parts" else "machine" if len(place) == 2 else "repair"
    return built_in_schemas().kinds.get(kind)


class _Variety:
    """Other values for those of one file."""

    def __init__(self, *, names: _Names, holder: str, chance: Random) -> None:
        self._names = names
        self._chance = chance
        self._share = chance.uniform(DRAWS_SHRINK_TO, 1)
        self._own = _invented_words(OWN_WORDS, holder)
        self._common = _invented_words(COMMON_WORDS, "all")
        plates = "|".join(re.escape(name) for name in sorted(names.plates, key=len, reverse=True))
        slugs = "|".join(re.escape(name) for name in sorted(names.slugs, key=len, reverse=True))
        self._plate = re.compile(rf"(?<![\w-])(?:{plates})(?![\w-])")
        self._slug = re.compile(rf"(?<![\w-])(?:{slugs})(?=/|$|[\"'])")
        self._slug_within = re.compile(rf"(?<![\w-])(?:{slugs})(?=/)")

    def other(self, value: Written, source: str) -> str:
        """What is to stand in the place of a value's source."""
        described = value.described
        source = self._plate.sub(lambda found: self._names.plates[found[0]], source)
        if described is None:
            return source
        if described.points_at:
            return self._slug.sub(lambda found: self._names.slugs[found[0]], source)
        if described.shape == "quantity":
            return _NUMBER.sub(lambda found: self._figure(value, found[0]), source, count=1)
        # `[[sp-96/fan.above_celsius]]` is a figure, and its slug a name.
        source = self._slug_within.sub(lambda found: self._names.slugs[found[0]], source)
        return self._prose(source) if _is_prose(described, source) else source

    def _figure(self, value: Written, number: str) -> str:
        """Only figures that no rule ties to others: where parts are, what things draw, how often parts are bad."""
        key = value.keys[-1]
        if value.keys[-2:-1] == ("at",):
            return f"{float(number) + self._chance.uniform(-PARTS_MOVE_BY_MM, PARTS_MOVE_BY_MM):.1f}"
        if "draws" in value.keys and key in ("run", "start", "rest"):
            return f"{float(number) * self._share:.4f}"
        if key == "prevalence":
            return str(min(100, max(1, round(float(number)) + self._chance.randint(-1, 1))))
        return number

    def _prose(self, source: str) -> str:
        words = [found for found in _WORD.finditer(source) if _CHANGEABLE.fullmatch(found[0])]
        changed = [found for found in words if self._chance.random() < WORDS_CHANGED] or words[:1]
        for found in reversed(changed):
            stock = self._own if self._chance.random() < 0.5 else self._common
            length = min(max(len(found[0]), SHORTEST_WORD), LONGEST_WORD)
            source = source[: found.start()] + self._chance.choice(stock[length]) + source[found.end() :]
        return source


def _is_prose(described: Field, source: str) -> bool:
    """Whether a value is a text in a person's words; in one with a backslash a letter may not be one."""
    free = described.shape == "text" and not (described.allowed or described.form or described.names_item)
    return free and "\\" not in source and len(source.split()) > 3


@cache
def _invented_words(count: int, holder: str) -> Mapping[int, list[str]]:
    """Words that nobody else has, mostly, by their length; the same ones for a holder at every run."""
    chance = Random(f"words of {holder}")
    lengths = range(SHORTEST_WORD, LONGEST_WORD + 1)
    return {length: [_invented_word(length, chance) for _ in range(count // len(lengths))] for length in lengths}


def _invented_word(length: int, chance: Random) -> str:
    return "".join(chance.choice("aeiou" if at % 2 else "bdfgklmnprstv") for at in range(length))


if __name__ == "__main__":
    asked = argparse.ArgumentParser(description=__doc__)
    asked.add_argument("folder", type=Path)
    asked.add_argument("--machines", type=int, default=MACHINES)
    asked.add_argument("--machines-a-family", type=int, default=MACHINES_A_FAMILY)
    given = asked.parse_args()
    write_collection(given.folder, given.machines, given.machines_a_family)
