"""A site is built beside the published one and put in its place in one step, or not at all."""

import ctypes
import ctypes.util
import os
import shutil
import sys
from collections.abc import Mapping, Sequence
from contextlib import suppress
from pathlib import Path
from types import TracebackType

if sys.platform != "win32":
    import fcntl

_AT_FDCWD = -100
_EXCHANGE = 2  # RENAME_EXCHANGE of renameat2(2) on Linux, and RENAME_SWAP of renamex_np(2) elsewhere


class Busy(Exception):
    """Somebody else is building the same site."""


class NotOurs(Exception):
    """The folder to be published into holds something that no build has put there."""


class Exchange:
    """One build of one site: a lock, a folder beside the published one, and the step that exchanges the two.

    `mark` is a file that every built site has; a folder without it is never replaced.
    """

    def __init__(self, published: Path, mark: str) -> None:
        """Name the folder that visitors see, and the mark of a built site."""
        self.published = published.resolve()
        self.next = self.published.with_name(f".{self.published.name}.next")
        self._old = self.published.with_name(f".{self.published.name}.old")
        self._lock = self.published.with_name(f".{self.published.name}.lock")
        self._mark = mark
        self._descriptor: int | None = None

    def begin(self) -> Path:
        """Take the lock and make an empty folder to build into.

        Errors: Busy if another build holds the lock, NotOurs if the published folder is not a built site,
        OSError if the folder cannot be made.
        """
        self.published.parent.mkdir(parents=True, exist_ok=True)
        self._take_lock()
        if not self.published.exists() and self._old.exists():
            self._old.rename(self.published)  # a build was killed between the two steps of `_exchange_by_two`
        if self.published.exists() and any(self.published.iterdir()) and not (self.published / self._mark).exists():
            self.abandon()
            raise NotOurs(str(self.published))
        for left_over in (self.next, self._old):
            shutil.rmtree(left_over, ignore_errors=True)
        self.next.mkdir()
        return self.next

    def publish(self) -> None:
        """Put what was built in the place of what was published, and clear away the old.

        Errors: OSError if the folder cannot be put in its place; what was published then stays.
        """
        _plain_modes(self.next)
        if not self.published.exists():
            self.next.rename(self.published)
        elif not _exchanged(self.next, self.published):
            self._exchange_by_two()
        self.abandon()

    def abandon(self) -> None:
        """Clear away what is not published and give the lock back; without the lock nothing here is ours."""
        if self._descriptor is None:
            return
        for left_over in (self.next, self._old):
            shutil.rmtree(left_over, ignore_errors=True)
        with suppress(OSError):
            self._lock.unlink()
        os.close(self._descriptor)
        self._descriptor = None

    def _take_lock(self) -> None:
        descriptor = os.open(self._lock, os.O_RDWR | os.O_CREAT, 0o644)
        if sys.platform != "win32":
            try:
                fcntl.flock(descriptor, fcntl.LOCK_EX | fcntl.LOCK_NB)
            except OSError:
                os.close(descriptor)
                raise Busy(str(self.published)) from None
            # The file may have been taken away between opening and locking; then the lock holds nobody off.
            if not self._lock.exists() or os.fstat(descriptor).st_ino != self._lock.stat().st_ino:
                os.close(descriptor)
                self._take_lock()
                return
        self._descriptor = descriptor

    def _exchange_by_two(self) -> None:
        """For file systems that cannot exchange in one step; `begin` mends what a kill between the two leaves."""
        self.published.rename(self._old)
        try:
            self.next.rename(self.published)
        except OSError:
            self._old.rename(self.published)
            raise

    def __enter__(self) -> "Exchange":
        """Begin."""
        self.begin()
        return self

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> None:
        """Publish what was built, or abandon it if anything went wrong."""
        if kind is None:
            self.publish()
        else:
            self.abandon()


def _exchanged(one: Path, other: Path) -> bool:
    """Two folders of one file system exchanged in a single step; False where the system cannot."""
    library = ctypes.CDLL(ctypes.util.find_library("c"), use_errno=True)
    names = (os.fsencode(one), os.fsencode(other))
    for call, words in (
        ("renameat2", (_AT_FDCWD, names[0], _AT_FDCWD, names[1], _EXCHANGE)),
        ("renamex_np", (*names, _EXCHANGE)),
    ):
        step = getattr(library, call, None)
        if step is not None and step(*words) == 0:
            return True
    return False


def _plain_modes(folder: Path) -> None:
    """The same rights on every machine, whatever the builder's mask."""
    for name, _, files in os.walk(folder):
        Path(name).chmod(0o755)
        for file in files:
            Path(name, file).chmod(0o644)


def write_some(files: Mapping[str, bytes], addresses: Sequence[str], site: Path) -> None:
    """Write some files of a site one after the other, each made only now, so that they are never all in memory.

    Errors: OSError if the disk is full, or something else keeps them from being written.
    """
    for folder in sorted({address.rpartition("/")[0] for address in addresses}):
        (site / folder).mkdir(parents=True, exist_ok=True)
    for address in addresses:
        (site / address).write_bytes(files[address])
