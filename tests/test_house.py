"""The rules of this house that no tool holds: names, sizes, sentences, and what travels in locks and wheels."""

import ast
import re
import subprocess
import sys
import zipfile
from collections.abc import Iterator
from pathlib import Path

import pytest

from chromium import MISSING
from formatter import MISSING as NO_FORMATTER

HOUSE = Path(__file__).resolve().parent.parent
PACKAGE = HOUSE / "generator" / "benchsheaf"
MODULES = sorted(PACKAGE.rglob("*.py"))
TESTS = sorted((HOUSE / "tests").rglob("*.py"))
LOCKS = [HOUSE / "requirements.lock", HOUSE / "requirements-dev.lock"]

# Names that say nothing of what is inside.
EMPTY_NAMES = {"utils", "util", "helpers", "helper", "manager", "common", "core", "misc", "base", "tools"}
MOST_LINES = 260


def name_in_house(path: Path) -> str:
    """The path as a person at the checkout writes it."""
    return str(path.relative_to(HOUSE))


def functions(path: Path) -> Iterator[ast.FunctionDef | ast.AsyncFunctionDef]:
    """Every function of a module, methods and inner ones too."""
    tree = ast.parse(path.read_text(encoding="utf-8"))
    return (node for node in ast.walk(tree) if isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef))


def raised_names(function: ast.FunctionDef | ast.AsyncFunctionDef) -> set[str]:
    """The names of the errors that a function's own lines raise; inner functions answer for themselves."""
    names: set[str] = set()
    waiting: list[ast.AST] = list(function.body)
    while waiting:
        node = waiting.pop()
        if isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef | ast.ClassDef):
            continue
        if isinstance(node, ast.Raise) and isinstance(node.exc, ast.Call) and isinstance(node.exc.func, ast.Name):
            names.add(node.exc.func.id)
        waiting.extend(ast.iter_child_nodes(node))
    return names


def pinned(lock: Path) -> dict[str, str]:
    """Each line of requirement in a lock file, `name==version ; marker`, and the hashes below it."""
    text = lock.read_text(encoding="utf-8").replace("\\\n", " ")
    return {line.split(" --hash", 1)[0].strip(): line for line in text.splitlines() if line.strip()}


@pytest.mark.parametrize("lock", LOCKS, ids=name_in_house)
def test_a_lock_names_no_host_and_hashes_every_package(lock: Path) -> None:
    """A lock works with whatever registry a person has, and takes only the very files that were tried."""
    requirements = pinned(lock)
    assert len(requirements) > 20
    assert "://" not in lock.read_text(encoding="utf-8")
    for requirement, line in requirements.items():
        assert re.fullmatch(r"[a-z0-9-]+==[a-z0-9.]+( ; .+)?", requirement), f"{requirement} is not one exact version"
        assert re.search(r"--hash=sha256:[0-9a-f]{64}(\s|$)", line), f"{requirement} has no hash"


def test_the_two_locks_agree() -> None:
    """What is tested is what runs: the developing lock holds every line of the running one."""
    running, developing = (pinned(lock) for lock in LOCKS)
    assert {name: developing.get(name) for name in running} == running


@pytest.mark.parametrize("path", [*MODULES, *TESTS], ids=name_in_house)
def test_a_module_opens_with_one_sentence(path: Path) -> None:
    """The map in DEVELOPERS.md is made from these sentences, so there is exactly one before the first blank line."""
    words = ast.get_docstring(ast.parse(path.read_text(encoding="utf-8"))) or ""
    first = " ".join(words.split("\n\n", 1)[0].split())
    assert first.endswith("."), f"{name_in_house(path)} opens with no sentence"
    assert not re.search(r"[.!?] [A-Z]", first), f"{name_in_house(path)} opens with more than one sentence: {first}"


@pytest.mark.parametrize("path", MODULES, ids=name_in_house)
def test_a_module_can_be_read_at_one_sitting(path: Path) -> None:
    """A long module is two subjects; a name such as `utils` is no subject."""
    lines = len(path.read_text(encoding="utf-8").splitlines())
    assert lines <= MOST_LINES, f"{name_in_house(path)} has {lines} lines"
    assert not EMPTY_NAMES & set(path.relative_to(PACKAGE).with_suffix("").parts)


@pytest.mark.parametrize("path", MODULES, ids=name_in_house)
def test_a_public_function_says_what_it_raises(path: Path) -> None:
    """The line `Errors:` of a docstring names every error that the function's own lines raise."""
    for function in functions(path):
        if function.name.startswith("_"):
            continue
        told = (ast.get_docstring(function) or "").partition("Errors:")[2]
        missing = {name for name in raised_names(function) if name not in told}
        assert not missing, f"{name_in_house(path)}:{function.lineno} {function.name} raises {missing} untold"


@pytest.mark.parametrize("path", TESTS, ids=name_in_house)
def test_every_test_has_a_sentence(path: Path) -> None:
    """A test says in a sentence what it holds, so that whoever breaks it knows what they broke."""
    for function in functions(path):
        if function.name.startswith("test_"):
            assert (ast.get_docstring(function) or "").split("\n\n")[0].endswith("."), (
                f"{name_in_house(path)}:{function.lineno} {function.name} says nothing"
            )


def test_schemas_overrides_and_templates_travel_in_the_wheel(tmp_path: Path) -> None:
    """A community that keeps its data in a repository of its own installs the wheel and has all that a build needs."""
    command = [sys.executable, "-m", "hatchling", "build", "--target", "wheel", "--directory", str(tmp_path)]
    subprocess.run(command, cwd=HOUSE, check=True, capture_output=True)
    (wheel,) = tmp_path.glob("*.whl")
    packed = set(zipfile.ZipFile(wheel).namelist())
    for folder, place in [("generator/benchsheaf", ""), ("schemas", "schemas/"), ("site_overrides", "site_overrides/")]:
        files = [path for path in (HOUSE / folder).rglob("*") if path.is_file() and "__pycache__" not in path.parts]
        wanted = {f"benchsheaf/{place}{path.relative_to(HOUSE / folder).as_posix()}" for path in files}
        assert wanted, f"{folder} is empty"
        assert wanted <= packed, f"left behind: {sorted(wanted - packed)}"


@pytest.mark.parametrize("demanded,code", [("false", 0), ("true", 1)])
@pytest.mark.parametrize("name,words", [("chromium", MISSING), ("formatter", NO_FORMATTER)])
def test_what_is_missing_is_told_in_one_sentence(name: str, words: str, demanded: str, code: int) -> None:
    """Where no browser or formatter can be had its tests are left out; where one is demanded that is a failure."""
    command = [sys.executable, str(HOUSE / "tests" / f"{name}.py")]
    done = subprocess.run(command, env={"PATH": "", "CI": demanded}, capture_output=True, text=True, check=False)
    assert (done.returncode, done.stderr, done.stdout) == (code, words + "\n", "")
