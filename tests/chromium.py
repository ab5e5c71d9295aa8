"""Where the browser for the tests is and how it comes to be there: the system's own, none that a test tool fetches."""

import os
import shutil
import subprocess
import sys
from pathlib import Path

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


def is_demanded() -> bool:
    """Whether a missing browser is a failure rather than a reason to leave its tests out."""
    return os.environ.get("CI") == "true"


def install() -> None:
    """Bring the system's own package, where we may and there is one; says nothing unless it fails."""
    if shutil.which("apt-get") is None or not hasattr(os, "geteuid") or os.geteuid() != 0:
        return
    environment = os.environ | {"DEBIAN_FRONTEND": "noninteractive"}
    for command in (["apt-get", "-qq", "update"], ["apt-get", "-qq", "-y", "install", "chromium"]):
        done = subprocess.run(
            command, env=environment, stdin=subprocess.DEVNULL, capture_output=True, text=True, check=False
        )
        if done.returncode:
            sys.stderr.write(done.stdout + done.stderr)
            return


def main() -> int:
    """Make sure that there is a browser; 1 if there is none where one is demanded."""
    try:
        if browser_path() is None:
            install()
        if browser_path() is not None:
            return 0
        complaint = MISSING
    except FileNotFoundError as error:
        complaint = str(error)
    sys.stderr.write(complaint + "\n")
    return 1 if is_demanded() else 0


if __name__ == "__main__":
    sys.exit(main())
