"""What several tests need: the checkout, the site built from it once, and a browser."""

import os
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest
from hypothesis import settings
from playwright.sync_api import Browser, sync_playwright

from chromium import FLAGS, MISSING, browser_path
from system_packages import is_demanded

# The same examples at every run, and no stopwatch: a loaded machine is no reason to fail.
settings.register_profile("house", deadline=None, derandomize=True)
settings.load_profile("house")


@pytest.fixture(scope="session")
def repository() -> Path:
    """The checkout."""
    return Path(__file__).resolve().parent.parent


@pytest.fixture(scope="session")
def built_site(repository: Path, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The site as `make site` builds it, in a folder of its own; built once, so tests only read it."""
    folder = tmp_path_factory.mktemp("built") / "site"
    command = [sys.executable, "-m", "mkdocs", "build", "--strict"]
    done = subprocess.run(
        [*command, "--config-file", "mkdocs.yml", "--site-dir", str(folder)],
        cwd=repository,
        env={"SOURCE_DATE_EPOCH": "946684800"} | os.environ | {"NO_MKDOCS_2_WARNING": "1"},
        capture_output=True,
        text=True,
        check=False,
    )
    if done.returncode:
        pytest.fail(f"The site cannot be built:\n{done.stdout}{done.stderr}", pytrace=False)
    return folder


@pytest.fixture(scope="session")
def chromium() -> Iterator[Browser]:
    """A running browser with an empty profile; without one the tests are left out, or fail where one is demanded."""
    path = browser_path()
    if path is None:
        if is_demanded():
            pytest.fail(MISSING, pytrace=False)
        pytest.skip(MISSING)
    with sync_playwright() as driver:
        browser = driver.chromium.launch(executable_path=path, args=FLAGS)
        yield browser
        browser.close()
