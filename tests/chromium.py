"""Where the browser for the tests is and how it comes to be there: the system's own, none that a test tool fetches."""

import os
import shutil
import sys
from pathlib import Path

from system_packages import install, is_demanded

COMMANDS = ("chromium", "chromium-browser", "google-chrome")

# No process of its own guarded by what a container lacks, and not one word to the network beyond the page.
FLAGS = (
    "--headless",
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
)

MISSING = (
    "The browser tests need Chromium: install it with `apt-get install chromium`, "
    "or say where it is with CHROMIUM=/path/to/chromium."
)


def browser_path() -> Path | None:
    """The browser that stands on this machine, or None; the variable CHROMIUM comes before the search path.

    Errors: FileNotFoundError if CHROMIUM names something that cannot be run.
    """
    named = os.environ.get("CHROMIUM")
    if named:
        path = shutil.which(named)
        if path is None:
            raise FileNotFoundError(f"CHROMIUM is {named}, and nothing there can be run.")
        return Path(path)
    found = (shutil.which(command) for command in COMMANDS)
    return next((Path(path) for path in found if path), None)


def main() -> int:
    """Make sure that there is a browser; 1 if there is none where one is demanded."""
    try:
        if browser_path() is None:
            install("chromium")
        if browser_path() is not None:
            return 0
        complaint = MISSING
    except FileNotFoundError as error:
        complaint = str(error)
    sys.stderr.write(complaint + "\n")
    return 1 if is_demanded() else 0


if __name__ == "__main__":
    sys.exit(main())
