"""What a process costs, two commands in turn, and the table in which the figures stand."""

import os
import platform
import statistics
import subprocess
import sys
from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from pathlib import Path

MEGABYTE = 1024 * 1024
KILOBYTE = 1024

# The clock must not change a byte of a site, and the theme prints a banner unless told not to.
SURROUNDINGS = os.environ | {"SOURCE_DATE_EPOCH": "946684800", "NO_MKDOCS_2_WARNING": "1"}


@dataclass(frozen=True, kw_only=True)
class Cost:
    """What one process took, from its start to its end."""

    cpu_s: float
    peak_bytes: int

    def less(self, cpu_s: float) -> "Cost":
        """The same without a part of its time."""
        return replace(self, cpu_s=self.cpu_s - cpu_s)


@dataclass(frozen=True, kw_only=True)
class Row:
    """One figure: ours and the peer's in words, the ratio of each pair, and the most that it may be."""

    figure: str
    ours: str
    peer: str
    ratios: Sequence[float]
    most: float

    @property
    def ratio(self) -> float:
        """The median of the pairs."""
        return statistics.median(self.ratios)


def cost(command: Sequence[str], folder: Path) -> Cost:
    """The cost of a command run in a folder.

    Errors: RuntimeError with its words if it fails.
    """
    process = subprocess.Popen(
        command, cwd=folder, env=SURROUNDINGS, stdout=subprocess.PIPE, stderr=subprocess.STDOUT, text=True
    )
    assert process.stdout is not None
    words = process.stdout.read()
    _, status, used = os.wait4(process.pid, 0)
    process.returncode = os.waitstatus_to_exitcode(status)
    if process.returncode:
        raise RuntimeError(f"{' '.join(command)}\n{words}")
    peak = used.ru_maxrss * (1 if sys.platform == "darwin" else KILOBYTE)
    return Cost(cpu_s=used.ru_utime + used.ru_stime, peak_bytes=peak)


def in_turn(ours: Callable[[], Cost], peer: Callable[[], Cost], pairs: int) -> list[tuple[Cost, Cost]]:
    """Both, one after the other, so many times: what else the machine does falls on both."""
    return [(ours(), peer()) for _ in range(pairs)]


def cpu_row(figure: str, costs: Sequence[tuple[Cost, Cost]], most: float) -> Row:
    """The row of two commands whose CPU time is compared."""
    ours, peer = (statistics.median(pair[side].cpu_s for pair in costs) for side in (0, 1))
    ratios = [one.cpu_s / other.cpu_s for one, other in costs]
    return Row(figure=figure, ours=f"{ours:.2f} s", peer=f"{peer:.2f} s", ratios=ratios, most=most)


def table(rows: Sequence[Row]) -> str:
    """The rows under their headings, in columns."""
    head = ("figure", "ours", "peer", "ratio", "least–most", "at most", "")
    lines = [head] + [
        (
            row.figure,
            row.ours,
            row.peer,
            f"{row.ratio:.2f}",
            f"{min(row.ratios):.2f}–{max(row.ratios):.2f}" if len(row.ratios) > 1 else "once",
            f"{row.most:.2f}",
            "reached" if row.ratio <= row.most else "missed",
        )
        for row in rows
    ]
    widths = [max(len(line[column]) for line in lines) for column in range(len(head))]
    padded = ("  ".join(word.ljust(width) for word, width in zip(line, widths, strict=True)).rstrip() for line in lines)
    return "\n".join(padded)


def machine_words() -> str:
    """What kind of machine this is, without a name by which it could be found."""
    memory = os.sysconf("SC_PAGE_SIZE") * os.sysconf("SC_PHYS_PAGES") / 1024**3
    kind = f"{os.cpu_count()} cores ({platform.machine()}), {memory:.0f} GiB, load {os.getloadavg()[0]:.1f}"
    return f"Machine: {kind}, {platform.system()}, Python {platform.python_version()}. CPU time of whole processes."
