"""A small build that kills itself before the disk is touched for the given time: SITE, steps `one` or `two`, NUMBER."""

import os
import signal
import sys
from collections.abc import Mapping
from pathlib import Path

from benchsheaf import exchange

MARK = "data/index.json"
NEW = {"index.html": "new", MARK: "{1}", "machines/a/index.html": "new a", "machines/b/index.html": "new b"}

TOUCHES = ("open", "fcntl.flock", "ctypes.dlsym", "shutil.rmtree")
HARMLESS = ("os.putenv", "os.kill")


def write(folder: Path, files: Mapping[str, str]) -> None:
    """The files of an edition, into a folder."""
    for name, text in files.items():
        (folder / name).parent.mkdir(parents=True, exist_ok=True)
        (folder / name).write_text(text, encoding="utf-8")


def main(site: str, steps: str, number: str) -> int:
    """Publish a new edition, or die on the way; 0 if there were not so many steps."""
    if steps == "two":
        exchange._exchanged = lambda one, other: False
    touched = 0

    def count(event: str, _: tuple[object, ...]) -> None:
        nonlocal touched
        if event in TOUCHES or (event.startswith("os.") and event not in HARMLESS):
            if touched == int(number):
                os.kill(os.getpid(), signal.SIGKILL)
            touched += 1

    sys.addaudithook(count)
    with exchange.Exchange(Path(site), MARK) as build:
        write(build.next, NEW)
    return 0


if __name__ == "__main__":
    sys.exit(main(*sys.argv[1:]))
