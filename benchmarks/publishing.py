"""The whole build, cold, against MkDocs with the same theme and the Markdown form of the same pages."""

import shutil
import sys
from pathlib import Path

from collection import HOUSE, write_collection
from markdown_form import write_markdown_form
from measuring import Cost, Row, cost, cpu_row, in_turn

BUILDING_MOST = 0.35
COMMAND = [sys.executable, "-m", "mkdocs", "build", "--strict"]


def delivery(folder: Path, machines: int) -> Path:
    """A folder that builds as a checkout does, with a collection of so many machines."""
    folder.mkdir(parents=True)
    shutil.copy(HOUSE / "mkdocs.yml", folder)
    write_collection(folder / "machines", machines)
    return folder


def build(folder: Path) -> Cost:
    """What a build costs from nothing: no site stands there, and no process is warm."""
    shutil.rmtree(folder / "site", ignore_errors=True)
    return cost(COMMAND, folder)


def building_row(ours: Path, work: Path, pairs: int) -> Row:
    """The figure for a delivery; it is built once before, as its pages are what the peer publishes."""
    build(ours)
    pages = write_markdown_form(ours / "site", work / "markdown")
    costs = in_turn(lambda: build(ours), lambda: build(work / "markdown"), pairs)
    return cpu_row(f"building {pages} pages, cold", costs, BUILDING_MOST)
