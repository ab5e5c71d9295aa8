"""Deliberate mistakes: each is told once, at its own line, with the nearest right name, and none is invented."""

import shutil
from collections.abc import Mapping
from pathlib import Path
from typing import Any

import pytest
import yaml

from benchsheaf.conformity import codes as conformity_codes
from benchsheaf.fields import meaning
from benchsheaf.links import codes as link_codes
from benchsheaf.mistakes import Code, Mistake
from benchsheaf.rules import (
    boards,
    cards,
    complaints,
    drives,
    entries,
    faults,
    firmware,
    gates,
    kinds,
    memory,
    mentions,
    outfits,
    rails,
    signals,
    sounds,
    switches,
)
from benchsheaf.site import judgement

HERE = Path(__file__).parent
COPIES = yaml.safe_load((HERE / "cases" / "mistakes.yml").read_text(encoding="utf-8"))["copies"]
WORDS = yaml.safe_load((HERE / "cases" / "words.yml").read_text(encoding="utf-8"))
RULES = (
    boards,
    cards,
    complaints,
    drives,
    entries,
    faults,
    firmware,
    gates,
    kinds,
    memory,
    mentions,
    outfits,
    rails,
    signals,
    sounds,
    switches,
)
ROOMS = (meaning, conformity_codes, link_codes, *RULES)
CODES = {each.id: each for room in ROOMS for each in vars(room).values() if isinstance(each, Code)}
FAMILIES = ("FILE", "YAML", "FIELD", "KIND", "UNIT", "RANGE", "ID", "LINK", "SENSE")


def broken_copy(repository: Path, folder: Path, edits: list[Mapping[str, Any]]) -> Path:
    """A copy of the demonstration data with the edits of one group made."""
    shutil.copytree(repository / "machines", folder / "machines")
    for edit in edits:
        path = folder / edit["file"]
        if "rename" in edit:
            path.rename(folder / edit["rename"])
            continue
        if "write" in edit:
            path.parent.mkdir(exist_ok=True)
            path.write_text(edit["write"], encoding="utf-8")
            continue
        text = path.read_text(encoding="utf-8")
        if "all" in edit:
            assert edit["all"] in text
            path.write_text(text.replace(edit["all"], edit["put"]), encoding="utf-8")
            continue
        assert edit["find"] in text, f"{edit['file']} no longer holds {edit['find']!r}"
        path.write_text(text.replace(edit["find"], edit["put"], 1), encoding="utf-8")
    return folder / "machines"


def wanted_line(folder: Path, edit: Mapping[str, Any]) -> int:
    """The line on which a mistake must be told, found by plain search in the broken text; 0 for a file as a whole."""
    if edit.get("whole"):
        return 0
    text: str = (folder / edit.get("file_of", edit["file"])).read_text(encoding="utf-8")
    mark = str(edit["at"] if "at" in edit else edit["put"].splitlines()[0])
    return text.count("\n", 0, text.index(mark)) + 1


@pytest.mark.parametrize("copy", COPIES, ids=[copy["why"] for copy in COPIES])
def test_each_mistake_is_told_once(copy: Mapping[str, Any], repository: Path, tmp_path: Path) -> None:
    """Every mistake of a copy is told, at its own line, once, with its nearest name, and nothing else is."""
    root = broken_copy(repository, tmp_path, copy["edits"])
    told = judgement(root).mistakes
    wanted = sorted(
        (edit.get("file_of", edit["file"]), wanted_line(tmp_path, edit), edit["code"]) for edit in copy["edits"]
    )
    assert sorted((each.place.file, each.place.line, each.code.id) for each in told) == wanted
    for edit in copy["edits"]:
        assert _told(told, edit, tmp_path).nearest == edit.get("nearest"), edit


def test_a_card_of_another_bus_is_told_once(repository: Path, tmp_path: Path) -> None:
    """Not in each outfit that has it; a machine that names no bus says so once, whatever cards it has."""
    root = tmp_path / "machines"
    shutil.copytree(repository / "machines", root)
    (root / "_parts/buses/k-bus.yml").write_text("name: K-bus\nsummary: Invented.\n", encoding="utf-8")
    card = root / "_parts/cards/ov-tx2.yml"
    card.write_text(card.read_text(encoding="utf-8").replace("bus: l-bus", "bus: k-bus"), encoding="utf-8")
    assert [(each.code.id, each.found) for each in judgement(root).mistakes] == [("SENSE-14", "ov-tx2")]
    (root / "ostervane-bureau-8/decoding.yml").unlink()
    identity = root / "ostervane-bureau-8/identity.yml"
    identity.write_text(identity.read_text(encoding="utf-8").replace("bus: l-bus\n", ""), encoding="utf-8")
    assert [each.code.id for each in judgement(root).mistakes] == ["SENSE-14"]


def _told(told: tuple[Mistake, ...], edit: Mapping[str, Any], folder: Path) -> Mistake:
    place = edit.get("file_of", edit["file"]), wanted_line(folder, edit), edit["code"]
    return next(each for each in told if (each.place.file, each.place.line, each.code.id) == place)


def test_every_family_is_shown_at_least_twice() -> None:
    """The cases cover each family of codes with two mistakes or more, and twenty-five in all."""
    codes = [edit["code"] for copy in COPIES for edit in copy["edits"]]
    assert len(codes) >= 25
    assert {family: sum(code.startswith(family) for code in codes) >= 2 for family in FAMILIES} == dict.fromkeys(
        FAMILIES, True
    )


def test_the_demonstration_has_no_mistake(repository: Path) -> None:
    """The data as it stands is without a mistake."""
    assert judgement(repository / "machines").mistakes == ()


@pytest.mark.parametrize("name", sorted(CODES | WORDS))
def test_the_words_of_each_code(name: str) -> None:
    """A code's sentence, its gaps filled as its example says, is the one that was written for it by hand."""
    code = CODES[name]
    assert code.words.format_map(code.example) == WORDS[name]
    assert code.meaning.endswith(".")
