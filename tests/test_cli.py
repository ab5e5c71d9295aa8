"""The command as a contributor types it: what it says, and with which exit code."""

import json
import os
import shutil
import subprocess
import sys
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from benchsheaf.cli import main


@pytest.fixture
def data(repository: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A copy of the demonstration data in a folder of its own, from which the command is run."""
    shutil.copytree(repository / "machines", tmp_path / "machines")
    monkeypatch.chdir(tmp_path)
    return tmp_path / "machines"


def told(*words: str) -> Result:
    """What the command answers."""
    return CliRunner().invoke(main, list(words))


def break_in_two_places(data: Path) -> None:
    """One mistake at the machine, one at a drive."""
    for file, find, put in (
        ("ostervane-bureau-8/power.yml", "ripple: 60 mV", "ripple: 60"),
        ("_parts/drives/ov-hd14.yml", "turns: 3000 rpm", "turns: fast"),
    ):
        path = data / file
        path.write_text(path.read_text(encoding="utf-8").replace(find, put), encoding="utf-8")


@pytest.mark.usefixtures("data")
def test_sound_data_ends_with_nought() -> None:
    """Data without a mistake: a short word, exit code 0."""
    answer = told("check")
    assert answer.exit_code == 0
    assert answer.output == "No mistakes.\n"


def test_mistakes_end_with_one(data: Path) -> None:
    """Mistakes are told with file, line, column and code, and counted; exit code 1."""
    break_in_two_places(data)
    answer = told("check")
    assert answer.exit_code == 1
    assert "machines/ostervane-bureau-8/power.yml:8:13: [UNIT-01] rails.+5 V.ripple: found `60`" in answer.output
    assert "    A voltage needs its unit, for example `60 mV`." in answer.output
    assert answer.output.endswith("2 mistakes in 2 files.\n")


def test_a_path_narrows_what_is_told(data: Path) -> None:
    """With PATH only mistakes below it are told, though everything is read."""
    break_in_two_places(data)
    answer = told("check", "machines/ostervane-bureau-8")
    assert answer.exit_code == 1
    assert "power.yml" in answer.output
    assert "ov-hd14" not in answer.output
    assert told("check", "machines/_parts/cards").exit_code == 0
    assert told("check", "machines/_parts/drives/ov-hd14.yml").exit_code == 1


def test_what_is_shared_is_told_below_the_path_that_was_asked_for(data: Path) -> None:
    """A name that is gone is told once, and still where only one of the files that point at it is judged."""
    (data / "_parts/cards/ov-tx2.yml").rename(data / "_parts/cards/ov-tx3.yml")
    second = data / "sister"
    shutil.copytree(data / "ostervane-bureau-8", second)
    identity = second / "identity.yml"
    text = identity.read_text(encoding="utf-8")
    identity.write_text(text.replace("name: Ostervane Bureau-8", "name: Ostervane Bureau-9"), encoding="utf-8")
    answer = told("check")
    assert answer.output.count("[LINK-02]") == 1
    answer = told("check", "machines/sister")
    assert answer.exit_code == 1
    assert answer.output.startswith("machines/sister/outfits.yml:10:28: [LINK-02]")
    assert "more lines point at it" in " ".join(answer.output.split())
    assert answer.output.endswith("1 mistake in 1 file.\n")


@pytest.mark.parametrize("path", ["machines/ostervane-bureau-8/..", "machines/../machines", "."])
def test_a_path_is_what_it_leads_to(data: Path, path: str) -> None:
    """Points in a path, and the folder that holds the folder of descriptions, hide no mistake."""
    break_in_two_places(data)
    answer = told("check", path)
    assert answer.exit_code == 1
    assert answer.output.endswith("2 mistakes in 2 files.\n")


def test_a_path_upward_is_what_it_leads_to(data: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """From inside a machine the folder above is all descriptions, and a sister is that sister only."""
    break_in_two_places(data)
    monkeypatch.chdir(data / "ostervane-bureau-8")
    assert told("check", "..").output.endswith("2 mistakes in 2 files.\n")
    assert told("check", "../ostervane-bureau-8").output.endswith("1 mistake in 1 file.\n")
    assert told("check", "../_parts/cards").exit_code == 0


def run(folder: Path, *words: str, **surroundings: str) -> subprocess.CompletedProcess[bytes]:
    """The command in a process of its own, and what comes out of it byte for byte."""
    command = [sys.executable, "-m", "benchsheaf", *words]
    return subprocess.run(command, cwd=folder, env=os.environ | surroundings, capture_output=True, check=False)


@pytest.mark.parametrize("encoding", ["latin-1", "cp1252"])
def test_a_terminal_without_the_sign_gets_its_number(data: Path, encoding: str) -> None:
    """Where an ohm sign cannot be printed its number is; the mistake is told all the same."""
    path = data / "_parts/supplies/sp-96.yml"
    path.write_text(path.read_text(encoding="utf-8").replace("bleeder: 220 kΩ", "bleeder: 220 kΩΩ"), encoding="utf-8")
    answer = run(data.parent, "check", PYTHONIOENCODING=encoding)
    assert answer.returncode == 1
    assert rb"[UNIT-02] reservoir.bleeder: found `220 k\u03a9\u03a9`" in answer.stdout
    assert answer.stderr == b""


@pytest.mark.skipif(not Path("/dev/full").exists(), reason="no device here that is always full")
@pytest.mark.parametrize("words", [("check",), ("schema",), ("--help",)])
def test_an_answer_that_cannot_be_written_is_told(data: Path, words: tuple[str, ...]) -> None:
    """A full disk behind the answer is told in one line; exit code 2, since 1 would say that the data is wrong."""
    command = [sys.executable, "-m", "benchsheaf", *words]
    with Path("/dev/full").open("wb") as full:
        answer = subprocess.run(command, cwd=data.parent, stdout=full, stderr=subprocess.PIPE, text=True, check=False)
    assert answer.returncode == 2
    assert answer.stderr == "Error: The answer could not be written: No space left on device.\n"


def test_a_python_without_docstrings_is_told(data: Path) -> None:
    """The library that validates refuses to work so; that is said in words before anything is read."""
    answer = run(data.parent, "check", PYTHONOPTIMIZE="2")
    assert answer.returncode == 2
    assert b"PYTHONOPTIMIZE=2" in answer.stderr
    assert b"Traceback" not in answer.stderr


def test_programs_get_json(data: Path) -> None:
    """As JSON each mistake has file, line, column, code, path, found and a sentence."""
    break_in_two_places(data)
    answer = told("check", "--format", "json")
    assert answer.exit_code == 1
    first, second = json.loads(answer.output)["mistakes"]
    assert (first["file"], first["code"]) == ("machines/_parts/drives/ov-hd14.yml", "UNIT-05")
    assert (second["file"], second["line"], second["column"], second["code"], second["found"]) == (
        "machines/ostervane-bureau-8/power.yml",
        8,
        13,
        "UNIT-01",
        "60",
    )


@pytest.mark.usefixtures("data")
@pytest.mark.parametrize(
    "words", [("check", "no-such-folder"), ("check", "--format", "poem"), ("chekk",), ("check", "--loud")]
)
def test_wrong_use_ends_with_two(words: tuple[str, ...]) -> None:
    """A wrong word of the command is answered with how to use it; exit code 2, no traceback."""
    answer = told(*words)
    assert answer.exit_code == 2
    assert "Usage:" in answer.output
    assert "Traceback" not in answer.output


def test_a_folder_without_machines_is_wrong_use(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Where there is no folder machines, the command says so."""
    monkeypatch.chdir(tmp_path)
    answer = told("check")
    assert answer.exit_code == 2
    assert "machines" in answer.output


def test_editors_get_a_schema() -> None:
    """One kind's JSON Schema, or all of them by name; an unknown kind is wrong use."""
    one = json.loads(told("schema", "drive").output)
    assert one["properties"]["geometry"]
    assert "cylinders" in json.dumps(one)
    assert set(json.loads(told("schema").output)) >= {"machine", "machine-file", "supply", "drive", "card"}
    assert told("schema", "toaster").exit_code == 2
