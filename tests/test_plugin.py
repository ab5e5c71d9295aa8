"""The delivery by MkDocs: nothing is published that is wrong, and the published site stays as it was."""

import os
import shutil
import socket
import subprocess
import sys
import time
import urllib.error
import urllib.request
from pathlib import Path

import pytest


@pytest.fixture
def project(repository: Path, tmp_path: Path) -> Path:
    """A community's own folder: the configuration and the data, without the program."""
    shutil.copytree(repository / "machines", tmp_path / "machines")
    shutil.copy(repository / "mkdocs.yml", tmp_path)
    return tmp_path


def built(project: Path, *words: str, **surroundings: str) -> subprocess.CompletedProcess[str]:
    """What `mkdocs build --strict` does in a folder."""
    return subprocess.run(
        [sys.executable, "-m", "mkdocs", "build", "--strict", *words],
        cwd=project,
        env=os.environ | {"NO_MKDOCS_2_WARNING": "1"} | surroundings,
        capture_output=True,
        text=True,
        check=False,
    )


def change(path: Path, find: str, put: str) -> None:
    """One edit of a file."""
    text = path.read_text(encoding="utf-8")
    assert find in text
    path.write_text(text.replace(find, put, 1), encoding="utf-8")


def test_a_folder_of_its_own_builds(project: Path) -> None:
    """Schemas, theme overrides and faces come with the program; the folder needs only data and configuration."""
    answer = built(project)
    assert answer.returncode == 0, answer.stderr
    assert (project / "site" / "assets" / "benchsheaf" / "sheet.css").is_file()
    assert not list(project.glob(".site*"))


def test_mistakes_publish_nothing(project: Path) -> None:
    """With a mistake in the data the build stops, tells it, and the site that was published stays byte for byte."""
    assert built(project).returncode == 0
    before = {path: path.read_bytes() for path in (project / "site").rglob("*") if path.is_file()}
    change(project / "machines/ostervane-bureau-8/power.yml", "ripple: 60 mV", "ripple: 60")
    answer = built(project)
    assert answer.returncode == 1
    assert "[UNIT-01]" in answer.stderr
    assert "Traceback" not in answer.stderr
    assert {path: path.read_bytes() for path in (project / "site").rglob("*") if path.is_file()} == before


def test_a_warning_publishes_nothing_when_strict(project: Path) -> None:
    """A warning of the delivery itself comes too late for its own verdict; ours comes before the exchange."""
    change(project / "mkdocs.yml", "site_name: Benchsheaf", "site_name: Benchsheaf\nno_such_setting: 1")
    answer = built(project)
    assert answer.returncode == 1
    assert not (project / "site").exists()


def test_a_foreign_folder_is_left_alone(project: Path) -> None:
    """A folder that no build has made is never replaced."""
    (project / "site").mkdir()
    (project / "site" / "letters.txt").write_text("mine", encoding="utf-8")
    answer = built(project)
    assert answer.returncode == 1
    assert "not a built site" in answer.stderr
    assert (project / "site" / "letters.txt").read_text(encoding="utf-8") == "mine"


def test_addresses_without_file_names_are_refused(project: Path) -> None:
    """With folders as addresses no page opens from a stick, so that setting is refused in words."""
    change(project / "mkdocs.yml", "use_directory_urls: false", "use_directory_urls: true")
    answer = built(project)
    assert answer.returncode == 1
    assert "use_directory_urls: false" in answer.stderr
    assert "Traceback" not in answer.stderr


def test_what_other_plugins_write_at_the_end_is_published(project: Path) -> None:
    """The exchange comes after all others: an index that another plugin writes last stands in the site."""
    change(project / "mkdocs.yml", "plugins: [benchsheaf]", "plugins: [benchsheaf, search]")
    answer = built(project)
    assert answer.returncode == 0, answer.stderr
    assert (project / "site" / "search" / "search_index.json").is_file()
    assert not list(project.glob(".site*"))


@pytest.mark.skipif(sys.platform == "win32", reason="limits of a process are another matter there")
def test_a_disk_that_takes_no_more_is_told(project: Path) -> None:
    """An error of the system while pages are written is told in words, and the published site stays as it was."""
    assert built(project).returncode == 0
    before = {path: path.read_bytes() for path in (project / "site").rglob("*") if path.is_file()}
    # Files beyond this size cannot be written, which fails in the middle of the build as a full disk does.
    limited = (
        "import resource; resource.setrlimit(resource.RLIMIT_FSIZE, (20_000, 20_000)); import mkdocs.__main__ as m"
    )
    answer = subprocess.run(
        [sys.executable, "-c", f"{limited}; m.cli(['build', '--strict'])"],
        cwd=project,
        env=os.environ | {"NO_MKDOCS_2_WARNING": "1"},
        capture_output=True,
        text=True,
        check=False,
    )
    assert answer.returncode == 1
    assert "Nothing was published." in answer.stderr
    assert "Traceback" not in answer.stderr
    assert {path: path.read_bytes() for path in (project / "site").rglob("*") if path.is_file()} == before
    assert not list(project.glob(".site*"))


def test_a_python_without_docstrings_builds_nothing(project: Path) -> None:
    """The library that validates refuses to work so; the build says it in words."""
    answer = built(project, PYTHONOPTIMIZE="2")
    assert answer.returncode == 1
    assert "PYTHONOPTIMIZE=2" in answer.stderr
    assert "Traceback" not in answer.stderr


def fetched(address: str, wanted: str, seconds: float = 20) -> str:
    """A page of a server on this machine, asked for until it holds what is wanted or the time is up."""
    end = time.monotonic() + seconds
    text = ""
    while time.monotonic() < end:
        try:
            with urllib.request.urlopen(address, timeout=5) as answer:
                text = answer.read().decode()
        except (urllib.error.URLError, ConnectionError, TimeoutError):
            text = ""
        if wanted in text:
            return text
        time.sleep(0.2)
    return text


def test_serving_wrong_data_shows_the_mistakes(project: Path) -> None:
    """While somebody writes, wrong data shows its mistakes as a page, and the site is back after the next good save."""
    with socket.socket() as free:
        free.bind(("127.0.0.1", 0))
        address = f"127.0.0.1:{free.getsockname()[1]}"
    file = project / "machines/ostervane-bureau-8/power.yml"
    change(file, "ripple: 60 mV", "ripple: 60")
    server = subprocess.Popen(
        [sys.executable, "-m", "mkdocs", "serve", "--dev-addr", address],
        cwd=project,
        env=os.environ | {"NO_MKDOCS_2_WARNING": "1"},
        stdout=subprocess.DEVNULL,
        stderr=subprocess.DEVNULL,
    )
    try:
        page = fetched(f"http://{address}/index.html", "Mistakes in the data")
        assert "A voltage needs its unit" in page
        change(file, "ripple: 60\n", "ripple: 60 mV\n")
        assert "What have you got?" in fetched(f"http://{address}/index.html", "What have you got?")
    finally:
        server.terminate()
        server.wait(timeout=10)
