"""The system's own formatter, checker and directory lister, which the layout of volumes is held against."""

import os
import re
import shutil
import subprocess
import sys
from dataclasses import dataclass
from pathlib import Path

from system_packages import install, is_demanded

COMMANDS = ("mkfs.fat", "fsck.fat", "mdir")
PACKAGES = ("dosfstools", "mtools")
MISSING = (
    "The tests of volumes need mkfs.fat, fsck.fat and mdir: install them with `apt-get install dosfstools mtools`."
)

# Where a package puts what is meant for the keeper of a system; it is not on everybody's search path.
SEARCH = os.pathsep.join([os.environ.get("PATH", os.defpath), "/usr/sbin", "/sbin"])


@dataclass(frozen=True, kw_only=True, slots=True)
class Made:
    """What the three commands say of one volume."""

    table_bits: int
    table_sectors: int
    first_data_sector: int
    clusters: int
    free_bytes: int
    used_clusters: int


@dataclass(frozen=True, kw_only=True, slots=True)
class Asked:
    """What the formatter is asked for; flaws are numbers of blocks of 1024 bytes."""

    sectors: int
    sector_bytes: int
    cluster: int
    reserved: int
    tables: int
    roots: int
    table_bits: int
    media: str = "F8"
    flaws: tuple[int, ...] = ()


def command_path(name: str) -> str | None:
    """Where a command stands on this machine."""
    return shutil.which(name, path=SEARCH)


def is_there() -> bool:
    """Whether all three commands stand on this machine."""
    return all(command_path(name) for name in COMMANDS)


def _said(name: str, *arguments: str) -> str:
    """What a command prints. Errors: RuntimeError with its words if it fails."""
    path = command_path(name)
    assert path is not None
    environment = os.environ | {"LC_ALL": "C", "TZ": "UTC", "MTOOLS_SKIP_CHECK": "1", "MTOOLSRC": os.devnull}
    done = subprocess.run([path, *arguments], env=environment, capture_output=True, text=True, check=False)
    if done.returncode:
        raise RuntimeError(f"{name} {' '.join(arguments)}: {done.stdout}{done.stderr}")
    return done.stdout + done.stderr


def _number(pattern: str, text: str) -> int:
    found = re.search(pattern, text)
    assert found, f"{pattern} is not in {text}"
    return int("".join(found[1].split()).replace(",", ""))


def made(asked: Asked, folder: Path) -> Made:
    """A volume as the formatter makes it and the other two read it. Errors: RuntimeError if it cannot be made."""
    image, bad = folder / "volume.img", folder / "flaws.txt"
    image.unlink(missing_ok=True)
    with image.open("wb") as file:
        file.truncate(asked.sectors * asked.sector_bytes)
    bad.write_text("".join(f"{block}\n" for block in asked.flaws), encoding="ascii")
    way = ["--invariant", "-a", "-F", str(asked.table_bits), "-f", str(asked.tables), "-R", str(asked.reserved)]
    way += ["-r", str(asked.roots), "-s", str(asked.cluster), "-S", str(asked.sector_bytes), "-g", "2/9"]
    _said("mkfs.fat", *way, "-M", f"0x{asked.media}", *(["-l", str(bad)] if asked.flaws else []), str(image))
    told = _said("fsck.fat", "-n", "-v", str(image))
    listed = _said("mdir", "-i", str(image), "::")
    return Made(
        table_bits=_number(r"(\d+) bit entries", told),
        table_sectors=_number(r"\(= (\d+) sectors\)", told),
        first_data_sector=_number(r"\(sector (\d+)\)\s*\n\s*\d+ data clusters", told),
        clusters=_number(r"(\d+) data clusters", told),
        free_bytes=_number(r"((?:\d+ ?)+) bytes free", listed),
        used_clusters=_number(r"(\d+)/\d+ clusters", told),
    )


def main() -> int:
    """Make sure that the commands are there; 1 if they are not and are demanded."""
    if is_there():
        return 0
    install(*PACKAGES)
    if is_there():
        return 0
    sys.stderr.write(MISSING + "\n")
    return 1 if is_demanded() else 0


if __name__ == "__main__":
    sys.exit(main())
