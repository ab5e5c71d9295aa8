"""All measurements, one table; `make bench` runs it."""

import argparse
import tempfile
from pathlib import Path

from collection import MACHINES
from growing import growing_rows
from measuring import machine_words, table
from publishing import building_row, delivery
from reading import reading_rows


def main() -> None:
    """Measure in a folder that is gone afterwards, and print the table."""
    asked = argparse.ArgumentParser(description=__doc__)
    asked.add_argument("--pairs", type=int, default=5, help="how often each two are run in turn")
    asked.add_argument("--only", choices=("reading", "building", "growing"))
    given = asked.parse_args()
    rows = []
    print(machine_words(), flush=True)
    with tempfile.TemporaryDirectory(prefix="bench-") as folder:
        work = Path(folder)
        ours = delivery(work / "ours", MACHINES) if given.only != "growing" else work
        if given.only in (None, "reading"):
            rows += reading_rows(ours / "machines", work, given.pairs)
        if given.only in (None, "building"):
            rows.append(building_row(ours, work, given.pairs))
        if given.only in (None, "growing"):
            rows += growing_rows(work)
    print(table(rows))


if __name__ == "__main__":
    main()
