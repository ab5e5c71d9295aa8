"""A checkout of its own for a test that builds more than once, and what such a build has made."""

import hashlib
import os
import shutil
import subprocess
import sys
from collections.abc import Mapping
from pathlib import Path

HOUSE = Path(__file__).resolve().parent.parent
COMMAND = [sys.executable, "-m", "mkdocs", "build", "--strict"]

# What a site is made from: the program, its schemas and overrides, the data, and the delivery.
SOURCES = ("generator", "schemas", "site_overrides", "machines", "mkdocs.yml")


def checkout(folder: Path) -> Path:
    """A copy of all that a site is made from; a build in it uses the copy of the program too."""
    folder.mkdir(parents=True)
    for name in SOURCES:
        if (HOUSE / name).is_dir():
            shutil.copytree(HOUSE / name, folder / name, ignore=shutil.ignore_patterns("__pycache__"))
        else:
            shutil.copy(HOUSE / name, folder / name)
    return folder


def environment(folder: Path, more: Mapping[str, str] | None = None) -> dict[str, str]:
    """The surroundings of a build in a copied checkout."""
    return os.environ | {"PYTHONPATH": str(folder / "generator"), "NO_MKDOCS_2_WARNING": "1"} | dict(more or {})


def build(folder: Path, more: Mapping[str, str] | None = None, umask: int = -1) -> None:
    """Build the site of a copied checkout as `make site` does, and fail with its words if it cannot be built."""
    done = subprocess.run(
        COMMAND,
        cwd=folder,
        env=environment(folder, more),
        umask=umask,
        capture_output=True,
        text=True,
        check=False,
    )
    assert done.returncode == 0, done.stdout + done.stderr


def contents(folder: Path) -> dict[str, str]:
    """Every file below a folder with the sum of its bytes."""
    return {
        path.relative_to(folder).as_posix(): hashlib.sha256(path.read_bytes()).hexdigest()
        for path in sorted(folder.rglob("*"))
        if path.is_file()
    }
