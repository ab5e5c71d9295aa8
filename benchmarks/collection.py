"""A collection to measure with: one machine and all that it holds varied into many, the same ones at every run."""

import argparse
import re
import shutil
from collections.abc import Iterator, Mapping
from pathlib import Path
from random import Random
from typing import Any

import yaml

HOUSE = Path(__file__).resolve().parent.parent
DATA = HOUSE / "machines"
MODEL = "ostervane-bureau-8"

MACHINES = 60
MACHINES_A_FAMILY = 1
"""How many machines hold the same supply, drives, cards and keyboard.

With one, sixty machines make a little over a thousand pages. When machines get more sheets, let more share their parts.
"""

PARTS_MOVE_BY_MM = 1.5
DRAWS_SHRINK_TO = 0.9
"""Draws only become less, so that no supply is overloaded; those of one file by the same share, so that a start stays
above a run."""

_PLATE = re.compile(r"^name: *(.+)$", re.MULTILINE)
_DESIGNATOR = re.compile(r"([A-Z]+)([0-9]+)([A-Z]?)")
_AT = re.compile(r"(\bat: \{x: )([0-9.]+)( mm, y: )([0-9.]+)( mm\})")
_DRAW = re.compile(r"(\b(?:run|start|rest): )([0-9.]+)( A\b)")
# The first line of a text over several lines.
_TEXT = re.compile(r"(>-\n +)(\S)")
_PREVALENCE = re.compile(r"(\bprevalence: )([0-9]+)( %)")


def write_collection(folder: Path, machines: int = MACHINES, machines_a_family: int = MACHINES_A_FAMILY) -> None:
    """Write a folder of descriptions; a collection that was in it is lost.

    Errors: FileExistsError if the folder holds something that is no collection.
    """
    if folder.exists():
        if not (folder / "_shared").is_dir() and any(folder.iterdir()):
            raise FileExistsError(f"{folder} holds something else")
        shutil.rmtree(folder)
    shutil.copytree(DATA / "_shared", folder / "_shared")
    parts = sorted((DATA / "_parts").rglob("*.yml"))
    own = sorted((DATA / MODEL).rglob("*.yml"))
    for number in range(1, machines + 1):
        family, place = divmod(number - 1, machines_a_family)
        names = _names(family + 1, [*parts, *own]) | {MODEL: f"sample-{number:03}", _badge(): f"Sample {number:03}"}
        if place == 0:
            for path in parts:
                target = folder / "_parts" / path.parent.name / f"{names[path.stem]}.yml"
                _write(target, _varied(path, names, f"family {family + 1}"))
        for path in own:
            target = folder / names[MODEL] / path.relative_to(DATA / MODEL)
            _write(target, _varied(path, names, f"sample {number:03}"))


def _names(family: int, files: list[Path]) -> dict[str, str]:
    """New names of what a family of machines shares, and new numbers for all its designators: old → new."""
    names = {}
    for path in files:
        text = path.read_text("utf-8")
        plate = _PLATE.search(text)
        if plate and "_parts" in path.parts:
            names[path.stem] = f"{path.stem}-{family}"
            names[_bare(plate[1])] = f"{_bare(plate[1])}-{family}"
        for name in _designators(yaml.load(text, yaml.CBaseLoader)):
            if found := _DESIGNATOR.fullmatch(name):
                names[name] = f"{found[1]}{int(found[2]) + (family - 1) * 7 % 400}{found[3]}"
    return names


def _badge() -> str:
    """The name of the machine that is varied."""
    found = _PLATE.search((DATA / MODEL / "identity.yml").read_text("utf-8"))
    assert found is not None
    return _bare(found[1])


def _bare(written: str) -> str:
    return written.strip("\"' ")


def _designators(value: Any) -> Iterator[str]:
    """Every designator that a description gives to a part."""
    if isinstance(value, dict):
        for name, inner in value.items():
            if name == "ref" and isinstance(inner, str):
                yield inner
            elif name == "refs" and isinstance(inner, list):
                yield from inner
            else:
                yield from _designators(inner)
    elif isinstance(value, list):
        for inner in value:
            yield from _designators(inner)


def _varied(path: Path, names: Mapping[str, str], holder: str) -> str:
    """The text of a file under new names, its parts a little moved, its draws and prevalences a little changed.

    Long texts begin with their holder, as no two machines are described in the same words.
    """
    chance = Random(f"{holder} {path.stem}")
    every = "|".join(re.escape(name) for name in sorted(names, key=len, reverse=True))
    text = re.sub(rf"(?<![\w-])(?:{every})(?!\w)", lambda found: names[found[0]], path.read_text("utf-8"))
    share = chance.uniform(DRAWS_SHRINK_TO, 1)

    def at(found: re.Match[str]) -> str:
        return f"{found[1]}{_moved(found[2], chance)}{found[3]}{_moved(found[4], chance)}{found[5]}"

    text = _AT.sub(at, text)
    text = _TEXT.sub(lambda found: f"{found[1]}Of {holder}, noted on sheet {chance.randint(1, 99)}. {found[2]}", text)
    text = _DRAW.sub(lambda found: f"{found[1]}{float(found[2]) * share:.4f}{found[3]}", text)
    return _PREVALENCE.sub(lambda found: f"{found[1]}{max(1, int(found[2]) + chance.randint(-1, 1))}{found[3]}", text)


def _moved(written: str, chance: Random) -> str:
    return f"{float(written) + chance.uniform(-PARTS_MOVE_BY_MM, PARTS_MOVE_BY_MM):.1f}"


def _write(path: Path, text: str) -> None:
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_text(text, "utf-8")


if __name__ == "__main__":
    asked = argparse.ArgumentParser(description=__doc__)
    asked.add_argument("folder", type=Path)
    asked.add_argument("--machines", type=int, default=MACHINES)
    asked.add_argument("--machines-a-family", type=int, default=MACHINES_A_FAMILY)
    given = asked.parse_args()
    write_collection(given.folder, given.machines, given.machines_a_family)
