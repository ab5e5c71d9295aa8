"""All measurements, one table; `make bench` runs it."""

import argparse
import tempfile
from pathlib import Path

from collection import MACHINES
from growing import growing_rows
from measuring import machine_words, table
from publishing import building_row, delivery
from reading import reading_rows

SUBJECTS = ("reading", "building", "growing")


def main() -> None:
    """Measure in a folder that is gone afterwards, and print the table."""
    asked = argparse.ArgumentParser(description=__doc__)
    asked.add_argument("--pairs", type=int, default=5, help="how often each two are run in turn")
    asked.add_argument("--only", choices=SUBJECTS)
    given = asked.parse_args()
    wanted = (given.only,) if given.only else SUBJECTS
    rows = []
    print(machine_words(), flush=True)
    with tempfile.TemporaryDirectory(prefix="bench-") as folder:
        work = Path(folder)
        ours = delivery(work / "ours", MACHINES)
        if "reading" in wanted:
            rows += reading_rows(ours / "machines", work, given.pairs)
        if "building" in wanted:
            rows.append(building_row(ours, work, given.pairs))
        if "growing" in wanted:
            rows += growing_rows(work, ours)
    print(table(rows))


if __name__ == "__main__":
    main()
