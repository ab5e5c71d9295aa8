"""A build that is killed at any moment leaves what visitors see whole: the real command, really killed."""

import signal
import subprocess
import sys
import time
from pathlib import Path

import pytest

from building import COMMAND, build, checkout, contents, environment

# Moments as shares of a whole build: spread over all of it, and close together where the folders are exchanged.
MOMENTS = [*(place / 14 for place in range(1, 14)), 0.955, 0.965, 0.975, 0.98, 0.985, 0.99, 0.995]
IDENTITY = "machines/ostervane-bureau-8/identity.yml"


def edit(house: Path, year: str) -> None:
    """Change the data so that many pages and the exported figures change, and one page has another length."""
    path = house / IDENTITY
    before = path.read_text(encoding="utf-8")
    line = next(line for line in before.splitlines() if line.startswith("built: "))
    path.write_text(before.replace(line, f"built: {year}"), encoding="utf-8")


def build_killed_at(house: Path, seconds: float) -> bool:
    """Begin a build and kill it after a time; False if it was already done."""
    with subprocess.Popen(
        COMMAND, cwd=house, env=environment(house), stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL
    ) as process:
        try:
            process.wait(seconds)
        except subprocess.TimeoutExpired:
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
        began = time.monotonic()
        build(house)
        lasts = time.monotonic() - began
        whole[year] = contents(site)
    assert whole[years[0]] != whole[years[1]]
    assert len(MOMENTS) == 20
    while_writing = 0
    for moment in MOMENTS:
        published = contents(site)
        # The data always differs from what is published, so that old and new can be told apart.
        edit(house, next(year for year in years if whole[year] != published))
        while not build_killed_at(house, moment * lasts):
            # It was quicker than the one that was measured: it is published, and the measure was too long.
            lasts *= 0.95
            published = contents(site)
            edit(house, next(year for year in years if whole[year] != published))
        while_writing += bool(half.exists() and any(half.iterdir()))
        assert contents(site) in (published, *whole.values()), f"killed at {moment} of a build"
    assert while_writing >= 4
    for year in years:
        edit(house, year)
        build(house)
        assert contents(site) == whole[year]
    assert [path.name for path in house.iterdir() if path.name.startswith(".site")] == []
