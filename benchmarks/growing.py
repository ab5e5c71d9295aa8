"""What four times the machines cost: memory, the size of a page, time."""

import statistics
from pathlib import Path

from collection import MACHINES
from measuring import MEGABYTE, Row
from publishing import build, delivery

FEW, MANY = MACHINES, 4 * MACHINES
MEMORY_MOST = 1.6
PAGE_MOST = 1.01
"""The same, but for a figure here and there that is a digit longer: one in a hundred is ten times what that makes."""
TIME_MOST = 4.4
"""Four times the work, and a tenth more for what is noise."""


def growing_rows(work: Path, few: Path | None = None) -> list[Row]:
    """The figures of a build of few machines and one of many, each from nothing; `few` may be there already."""
    few = few or delivery(work / f"machines-{FEW}", FEW)
    many = delivery(work / f"machines-{MANY}", MANY)
    least, most = build(few), build(many)
    small, large = page_bytes(few / "site"), page_bytes(many / "site")
    return [
        Row(
            figure=f"peak memory, {MANY} to {FEW} machines",
            ours=f"{most.peak_bytes / MEGABYTE:.0f} MiB",
            peer=f"{least.peak_bytes / MEGABYTE:.0f} MiB",
            ratios=[most.peak_bytes / least.peak_bytes],
            most=MEMORY_MOST,
        ),
        Row(
            figure=f"median machine page, {MANY} to {FEW}",
            ours=f"{large:.0f} bytes",
            peer=f"{small:.0f} bytes",
            ratios=[large / small],
            most=PAGE_MOST,
        ),
        Row(
            figure=f"time to build, {MANY} to {FEW}",
            ours=f"{most.cpu_s:.2f} s",
            peer=f"{least.cpu_s:.2f} s",
            ratios=[most.cpu_s / least.cpu_s],
            most=TIME_MOST,
        ),
    ]


def page_bytes(site: Path) -> float:
    """The median size of a machine's page."""
    return statistics.median(path.stat().st_size for path in (site / "machines").rglob("*.html"))
