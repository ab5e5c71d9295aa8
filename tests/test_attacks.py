"""What a careless or a wilful hand may write: it is told, or it builds; it never breaks the program or a page."""

import re
from collections import Counter
from collections.abc import Mapping
from pathlib import Path
from typing import Any

import html5lib
import pytest

from benchsheaf.site import edition, judgement
from benchsheaf.wording import as_text
from expected import written
from test_mistakes import broken_copy, wanted_line

CASES = written("cases/attacks.yml")
MACHINE = "machines/ostervane-bureau-8"
ANCHOR = re.compile(r'\sid="([^"]*)"')


def named(several: list[Mapping[str, Any]]) -> pytest.MarkDecorator:
    """Parameters for a test: cases under the words of their `why`."""
    return pytest.mark.parametrize("case", several, ids=[case["why"] for case in several])


def lines_that_name(folder: Path, pattern: str, with_holders: bool) -> int:
    """How many lines of the machine match, by plain search, so that the data may grow.

    With holders each shared file that matches counts as well, at the first line of the machine that holds it.
    """
    machine = {path: path.read_text(encoding="utf-8").split("\n") for path in sorted(folder.glob(f"{MACHINE}/*.yml"))}
    found = {(path.name, number) for path, lines in machine.items() for number in matching(lines, pattern)}
    for part in folder.glob("machines/_parts/*/*.yml") if with_holders else ():
        if matching(part.read_text(encoding="utf-8").split("\n"), pattern):
            holds = rf"\b(?:holds|supply|keyboard|display|bus): {part.stem}\b"
            found |= {(path.name, next(iter(at))) for path, lines in machine.items() if (at := matching(lines, holds))}
    return len(found)


def matching(lines: list[str], pattern: str) -> list[int]:
    """The numbers of the lines in which a pattern is found."""
    return [number for number, line in enumerate(lines) if re.search(pattern, line)]


@named(CASES["told"])
def test_it_is_told_and_nothing_else_is(case: Mapping[str, Any], repository: Path, tmp_path: Path) -> None:
    """Bad data is told at its own line under its code, as often as the case says, and brings nothing down."""
    told = judgement(broken_copy(repository, tmp_path, case["edits"])).mistakes
    wanted = [
        (edit.get("file_of", edit["file"]), wanted_line(tmp_path, edit), edit["code"])
        for edit in case["edits"]
        if "code" in edit
    ]
    assert sorted((each.place.file, each.place.line, each.code.id) for each in told) == sorted(wanted)
    for edit in case["edits"]:
        if "nearest" in edit:
            assert [each.nearest for each in told if each.code.id == edit["code"]] == [edit["nearest"]]
        if "says" in edit:
            assert [each.sentence.replace("\u00a0", " ") for each in told if each.code.id == edit["code"]] == [
                edit["says"]
            ]
        if "shared" in edit:
            (only,) = [each for each in told if each.code.id == edit["code"]]
            assert len(only.others) >= int(edit["shared"])
            if "named_by" in edit:
                others = lines_that_name(tmp_path, edit["named_by"], edit.get("holders", False)) - 1
                assert len(only.others) == others
                counted = f"One more line {only.code.shares[0]}:" if others == 1 else f"{others} more lines"
                assert counted in " ".join(as_text([only]).split())


@named(CASES["legal"])
def test_it_is_legal_and_builds(case: Mapping[str, Any], repository: Path, tmp_path: Path) -> None:
    """Odd but true data makes sound pages: links land, no id twice or with a blank, no error of markup, texts there."""
    judged = judgement(broken_copy(repository, tmp_path, case["edits"]))
    assert judged.mistakes == ()
    whole = edition(judged)
    texts = {}
    for page in whole.pages:
        text = whole.html(page)
        texts[page.address] = text
        ids = Counter(ANCHOR.findall(text))
        assert [each for each, times in ids.items() if times > 1 or re.search(r"\s", each) or not each] == []
        parser = html5lib.HTMLParser(strict=False)
        parser.parseFragment(text)
        assert parser.errors == [], page.address
    assert list(whole.astray()) == []
    for address, wanted in case.get("shows", {}).items():
        plain = " ".join(re.sub(r"<[^>]*>", " ", texts[address]).split())
        assert [words for words in wanted if words not in plain] == [], plain


def test_a_folder_of_another_name_is_called_by_it(repository: Path, tmp_path: Path) -> None:
    """Where something would stand is said with the name of the folder that is judged, not with the usual one."""
    edits: list[Mapping[str, Any]] = [
        {"file": "machines/ostervane-bureau-8/outfits.yml", "find": "holds: ov-hd14", "put": "holds: ov-hd41"},
        {"file": "machines/_parts/supplies/sp-96.yml", "find": "caution: mains", "put": "caution: manes"},
    ]
    broken_copy(repository, tmp_path, edits).rename(tmp_path / "sheaf")
    told = judgement(tmp_path / "sheaf").mistakes
    assert [each.sentence for each in told] == [
        "There is no caution of that name in sheaf/_shared/cautions.yml.",
        "There is no drive of that name. It would stand in sheaf/_parts/drives/ov-hd41.yml.",
    ]
