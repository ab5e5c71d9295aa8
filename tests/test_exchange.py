"""What visitors see is whole at every moment: built beside, exchanged in one step, and never by two builds at once."""

import os
import shutil
import signal
import subprocess
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

import pytest

from benchsheaf import exchange
from benchsheaf.exchange import Busy, Exchange, NotOurs
from killed_exchange import MARK, NEW, write

OLD = {"index.html": "old", MARK: "{}", "machines/a/index.html": "old a", "gone.html": "old only"}


def read(folder: Path) -> dict[str, str]:
    """All files of a folder with what is in them."""
    return {
        path.relative_to(folder).as_posix(): path.read_text(encoding="utf-8")
        for path in folder.rglob("*")
        if path.is_file()
    }


def beside(site: Path) -> list[str]:
    """What else stands where the site stands."""
    return sorted(path.name for path in site.parent.iterdir() if path != site)


@pytest.fixture
def site(tmp_path: Path) -> Path:
    """A published site."""
    folder = tmp_path / "here" / "site"
    write(folder, OLD)
    return folder


def test_it_is_built_beside_and_exchanged_whole(site: Path) -> None:
    """Until the step visitors see the old edition, after it the new one, and nothing is left lying about."""
    build = Exchange(site, MARK)
    folder = build.begin()
    assert (folder.parent, list(folder.iterdir())) == (site.parent, [])
    write(folder, NEW)
    assert read(site) == OLD
    build.publish()
    assert read(site) == NEW
    assert beside(site) == []


def test_the_first_build_needs_no_folder(tmp_path: Path) -> None:
    """Where nothing is published yet the folder is made, with those above it; an empty one is as good as none."""
    for name in ("far/away/site", "empty"):
        site = tmp_path / name
        if name == "empty":
            site.mkdir()
        with Exchange(site, MARK) as build:
            write(build.next, NEW)
        assert read(site) == NEW
        assert [each for each in beside(site) if each.startswith(".")] == []


def test_a_build_that_fails_keeps_the_old(site: Path) -> None:
    """Whatever goes wrong while building, the old edition stays, and the next build can begin at once."""

    def failing_build() -> None:
        with Exchange(site, MARK) as build:
            write(build.next, {"index.html": "half"})
            raise ZeroDivisionError

    with pytest.raises(ZeroDivisionError):
        failing_build()
    assert read(site) == OLD
    assert beside(site) == []
    with Exchange(site, MARK) as build:
        write(build.next, NEW)
    assert read(site) == NEW


@contextmanager
def another_build(site: Path) -> Iterator[subprocess.Popen[str]]:
    """A process that has begun a build of the site and does not go on."""
    program = (
        "import pathlib, sys; from benchsheaf.exchange import Exchange; "
        "folder = Exchange(pathlib.Path(sys.argv[1]), sys.argv[2]).begin(); "
        "(folder / 'index.html').write_text('half'); print('begun', flush=True); sys.stdin.read()"
    )
    command = [sys.executable, "-c", program, str(site), MARK]
    with subprocess.Popen(command, stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True) as process:
        assert process.stdout is not None
        assert process.stdout.readline() == "begun\n"
        yield process
        process.kill()


def test_two_builds_do_not_meet(site: Path) -> None:
    """The second is told that somebody builds, and takes nothing from under the first, not even when it gives up."""
    with another_build(site):
        build = Exchange(site, MARK)
        with pytest.raises(Busy):
            build.begin()
        build.abandon()
        assert read(site.parent / ".site.next") == {"index.html": "half"}
        assert read(site) == OLD
        with pytest.raises(Busy):
            Exchange(site, MARK).begin()


def test_a_killed_build_holds_no_lock(site: Path) -> None:
    """What a dead process has left is cleared away by the next."""
    with another_build(site) as process:
        process.kill()
        process.wait()
        with Exchange(site, MARK) as build:
            assert list(build.next.iterdir()) == []
            write(build.next, NEW)
    assert read(site) == NEW
    assert beside(site) == []


def test_builds_of_two_sites_do_not_wait_for_each_other(site: Path) -> None:
    """The lock belongs to one published folder."""
    other = site.with_name("other")
    with another_build(site), Exchange(other, MARK) as build:
        write(build.next, NEW)
    assert read(other) == NEW


def test_a_folder_of_somebody_else_is_never_replaced(site: Path) -> None:
    """A folder that holds files but no mark of a built site stays as it is, and no lock stays on it."""
    (site / MARK).unlink()
    before = read(site)
    for _ in range(2):
        with pytest.raises(NotOurs):
            Exchange(site, MARK).begin()
        assert read(site) == before
        assert beside(site) == []


def test_leftovers_are_cleared(site: Path) -> None:
    """Halves that a killed build has left never reach a site."""
    for name in (".site.next", ".site.old"):
        write(site.parent / name, {"index.html": "half", "stray.html": "half"})
    with Exchange(site, MARK) as build:
        assert list(build.next.iterdir()) == []
        assert beside(site) == [".site.lock", ".site.next"]
        write(build.next, NEW)
    assert read(site) == NEW


def test_every_mask_gives_the_same_rights(site: Path) -> None:
    """A builder who keeps everything to himself still publishes what a server may read."""
    before = os.umask(0o077)
    try:
        with Exchange(site, MARK) as build:
            write(build.next, NEW)
    finally:
        os.umask(before)
    modes = {path.stat().st_mode & 0o777 for path in (site, *site.rglob("*")) if path.is_dir()}
    assert modes == {0o755}
    assert {path.stat().st_mode & 0o777 for path in site.rglob("*") if path.is_file()} == {0o644}


def test_without_the_one_step_it_takes_two(site: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """A file system that cannot exchange two folders gets the new edition all the same."""
    monkeypatch.setattr(exchange, "_exchanged", lambda one, other: False)
    with Exchange(site, MARK) as build:
        write(build.next, NEW)
    assert read(site) == NEW
    assert beside(site) == []


def test_the_old_comes_back_if_the_second_step_fails(site: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Between the two steps the disk may fail: then the old edition is put back in its place."""

    def lost(one: Path, other: Path) -> bool:
        shutil.rmtree(one)
        return False

    monkeypatch.setattr(exchange, "_exchanged", lost)
    build = Exchange(site, MARK)
    write(build.begin(), NEW)
    with pytest.raises(OSError, match="next"):
        build.publish()
    assert read(site) == OLD
    build.abandon()
    assert read(site) == OLD
    assert beside(site) == []


def can_exchange(folder: Path) -> bool:
    """Whether the file system of a folder exchanges two folders in one step."""
    one, other = folder / "one", folder / "other"
    one.mkdir()
    other.mkdir()
    return exchange._exchanged(one, other)


@pytest.mark.skipif(sys.platform == "win32", reason="a process is killed by a signal")
@pytest.mark.parametrize("steps", ["one", "two"])
def test_a_kill_at_any_step_leaves_a_whole_edition(site: Path, steps: str, tmp_path: Path) -> None:
    """Killed before each single touch of the disk: the old edition or the new, whole; and the next build works.

    Where the system cannot exchange in one step the folder may be away for a moment: the next build brings it back.
    """
    if steps == "one" and not can_exchange(tmp_path):
        pytest.skip("This file system cannot exchange two folders in one step.")
    seen: list[str] = []
    while not seen or seen[-1] != "ended":
        shutil.rmtree(site.parent)
        write(site, OLD)
        command = [
            sys.executable,
            str(Path(__file__).with_name("killed_exchange.py")),
            str(site),
            steps,
            str(len(seen)),
        ]
        done = subprocess.run(command, capture_output=True, text=True, check=False)
        assert done.returncode in (0, -signal.SIGKILL), done.stderr
        if done.returncode == 0:
            seen.append("ended")
            assert read(site) == NEW
        elif steps == "two" and not site.exists():
            seen.append("away")
            assert read(site.with_name(".site.old")) == OLD
        else:
            seen.append("old" if read(site) == OLD else "new")
            assert read(site) in (OLD, NEW)
        build = Exchange(site, MARK)
        build.begin()
        assert read(site) in (OLD, NEW)
        build.abandon()
        assert beside(site) == []
    # Before, between where there is a between, after, and the end: in this order and no other.
    assert list(dict.fromkeys(seen)) == (["old", "new", "ended"] if steps == "one" else ["old", "away", "new", "ended"])
    assert seen == sorted(seen, key=["old", "away", "new", "ended"].index)
