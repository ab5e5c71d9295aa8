"""A build that is killed at any moment leaves what visitors see whole: the real command, really killed."""

import os
import signal
import subprocess
import sys
import time
from pathlib import Path

import pytest

from building import COMMAND, build, checkout, contents, environment

WAITS = (0.002, 0.005, 0.01, 0.02, 0.04, 0.08)  # seconds
# When a build is killed: as soon as this share of the new site's files is written, and so many seconds after that.
# The first kill comes before anything is written, the last ones around the exchange of the folders.
MOMENTS = [(0.0, 0.0), *((place / 13, 0.0) for place in range(1, 14)), *((1.0, wait) for wait in WAITS)]
IDENTITY = "machines/ostervane-bureau-8/identity.yml"


def edit(house: Path, year: str) -> None:
    """Change the data so that many pages and the exported figures change, and one page has another length."""
    path = house / IDENTITY
    before = path.read_text(encoding="utf-8")
    line = next(line for line in before.splitlines() if line.startswith("built: "))
    path.write_text(before.replace(line, f"built: {year}"), encoding="utf-8")


def build_killed_at(house: Path, files: int, wait: float) -> bool:
    """Begin a build and kill it a time after so many files of the new site are there; False if it was already done."""
    half = house / ".site.next"
    with subprocess.Popen(
        COMMAND, cwd=house, env=environment(house), stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL
    ) as process:
        while process.poll() is None and sum(len(inside) for _, _, inside in os.walk(half)) < files:
            time.sleep(0.001)
        time.sleep(wait)
        process.send_signal(signal.SIGKILL)
        ended = process.wait()
        assert ended in (0, -signal.SIGKILL), "the build failed by itself"
        return ended != 0


@pytest.mark.skipif(sys.platform == "win32", reason="a process is killed by a signal")
def test_twenty_kills_leave_a_whole_site(tmp_path: Path) -> None:
    """After each of twenty kills the site is the old edition or the complete new one, and at last builds succeed."""
    house = checkout(tmp_path / "house")
    site, half = house / "site", house / ".site.next"
    years = ("1985", "1986")
    whole = {}
    for year in years:
        edit(house, year)
        build(house)
        whole[year] = contents(site)
    assert whole[years[0]] != whole[years[1]]
    assert len(MOMENTS) == 20
    kills = while_writing = 0
    for share, wait in MOMENTS:
        # A build that is done before it is killed shows nothing; then the kill comes a little earlier.
        for earlier in range(12):
            published = contents(site)
            # The data always differs from what is published, so that old and new can be told apart.
            edit(house, next(year for year in years if whole[year] != published))
            files = int(share * len(published)) - 2 * earlier
            killed = build_killed_at(house, files, wait / 2**earlier)
            assert contents(site) in (published, *whole.values()), f"killed at {files} files and {wait} s"
            if killed:
                break
        kills += killed
        while_writing += bool(half.exists() and any(half.iterdir()))
    assert kills == 20
    assert while_writing >= 10
    for year in years:
        edit(house, year)
        build(house)
        assert contents(site) == whole[year]
    assert [path.name for path in house.iterdir() if path.name.startswith(".site")] == []
