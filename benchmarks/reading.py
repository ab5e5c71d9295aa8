"""Reading, and reading with validating, against the usual libraries on the same files."""

import sys
from pathlib import Path

from measuring import Cost, Row, cost, cpu_row, in_turn
from plain_schemas import write_plain_schemas

HERE = Path(__file__).resolve().parent
READING_MOST = 0.6
VALIDATING_MOST = 1.0


def reading_rows(collection: Path, work: Path, pairs: int) -> list[Row]:
    """The two figures for a collection; `work` is a folder for what is made on the way."""
    schemas = work / "plain-schemas.json"
    write_plain_schemas(schemas)

    def run(script: str, *given: Path) -> Cost:
        return cost([sys.executable, str(HERE / script), str(collection), *map(str, given)], work)

    reading = in_turn(lambda: run("read_ours.py"), lambda: run("read_peer.py"), pairs)
    validating = in_turn(lambda: run("validate_ours.py"), lambda: run("validate_peer.py", schemas), pairs)
    return [
        cpu_row("reading, with places, duplicates refused", reading, READING_MOST),
        cpu_row("reading and validating, cold", validating, VALIDATING_MOST),
    ]
