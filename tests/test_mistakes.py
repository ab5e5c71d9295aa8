"""Deliberate mistakes: each is told once, at its own line, with the nearest right name, and none is invented."""

import re
import shutil
from collections.abc import Mapping
from importlib import import_module
from pathlib import Path
from pkgutil import iter_modules
from typing import Any

import pytest
import yaml

from benchsheaf import rules
from benchsheaf.conformity import codes as conformity_codes
from benchsheaf.fields import meaning
from benchsheaf.links import codes as link_codes
from benchsheaf.mistakes import Code, Mistake
from benchsheaf.site import judgement
from benchsheaf.wording import as_text

HERE = Path(__file__).parent
COPIES = yaml.safe_load((HERE / "cases" / "mistakes.yml").read_text(encoding="utf-8"))["copies"]
WORDS = yaml.safe_load((HERE / "cases" / "words.yml").read_text(encoding="utf-8"))
READING = yaml.safe_load((HERE / "cases" / "documents" / "words.yml").read_text(encoding="utf-8"))
JARGON = re.compile(
    r"\b(dict(ionary)?|list of str|str(ing)?s?|int(eger)?s?|bool(ean)?s?|float|null|nil|(key|value|type) ?error"
    r"|exception|traceback|regex|regular expression|pattern|schemas?|nodes?|pars(e|er|ing|ed)|tokens?|tuple|array"
    r"|mapping|scalars?|sequence|attribute|argument|parameter|object|instance|index|pointer|identifier|slug|enum|constraint"
    r"|validat\w*|seriali[sz]\w*|escape|literal|python)\b"
)
RULES = [import_module(f"benchsheaf.rules.{each.name}") for each in iter_modules(rules.__path__)]
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
        mistake = _told(told, edit, tmp_path)
        assert mistake.nearest == edit.get("nearest"), edit
        assert_plain(mistake)


def assert_plain(mistake: Mistake) -> None:
    """A mistake is told whole, in four lines at most, with where it stands, and in no programmer's words."""
    lines = as_text([mistake]).split("\n")[:-2]
    assert 2 <= len(lines) <= 4
    assert not lines[-1].endswith("…")
    assert lines[0].startswith(f"{mistake.place.file}:")
    assert_no_jargon(mistake.sentence)


def assert_no_jargon(sentence: str) -> None:
    """No word that only those who write programs know; what stands between backticks is what is to be written."""
    plain = re.sub(r"`[^`]*`", "", sentence).lower()
    assert not JARGON.search(plain), sentence
    assert not re.search(r"[{}<>=]|\\[a-z]|\w\(\)", plain), sentence


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


def section(edit: Mapping[str, Any]) -> str:
    """The file and the field at which a mistake was made, so that the same slip at another place is another one."""
    field = re.search(r"([a-z_0-9]+): *[^:]*$", str(edit.get("find", "")).strip().split("\n")[0])
    return f"{edit['file']} {field[1] if field else ''}"


def test_every_family_is_shown_at_least_twice() -> None:
    """The cases cover each family of codes with two mistakes or more: sixty and more in all, no two alike."""
    codes = [edit["code"] for copy in COPIES for edit in copy["edits"]]
    assert len(codes) >= 60
    assert len({(edit["code"], section(edit)) for copy in COPIES for edit in copy["edits"]}) >= 55
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
    assert_no_jargon(WORDS[name])


@pytest.mark.parametrize("name", sorted(READING))
def test_the_words_of_reading_are_plain(name: str) -> None:
    """What is said of a slip of writing is plain too; the words themselves are held where reading is."""
    assert_no_jargon(READING[name])
