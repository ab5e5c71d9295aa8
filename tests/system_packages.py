"""How packages of the system that tests need come to be there."""

import os
import shutil
import subprocess
import sys


def is_demanded() -> bool:
    """Whether something that is missing is a failure rather than a reason to leave its tests out."""
    return os.environ.get("CI") == "true"


def install(*packages: str) -> None:
    """Bring the system's own packages, where we may and there are any; says nothing unless it fails."""
    if shutil.which("apt-get") is None or not hasattr(os, "geteuid") or os.geteuid() != 0:
        return
    environment = os.environ | {"DEBIAN_FRONTEND": "noninteractive"}
    for command in (["apt-get", "-qq", "update"], ["apt-get", "-qq", "-y", "install", *packages]):
        done = subprocess.run(
            command, env=environment, stdin=subprocess.DEVNULL, capture_output=True, text=True, check=False
        )
        if done.returncode:
            sys.stderr.write(done.stdout + done.stderr)
            return
