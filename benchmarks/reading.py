"""Reading, and reading with validating, against the usual libraries on the same files."""

import statistics
import sys
from collections.abc import Sequence
from pathlib import Path

from collection import DATA
from measuring import Cost, Row, cost, cpu_row, in_turn
from plain_schemas import write_plain_schemas

HERE = Path(__file__).resolve().parent
READING_MOST = 0.6
VALIDATING_MOST = 1.0
DEMONSTRATION_TIMES = 60
"""The few files of the demonstration are read so often in one process, or nothing but its start could be seen."""

Pairs = Sequence[tuple[Cost, Cost]]


def reading_rows(collection: Path, work: Path, pairs: int) -> list[Row]:
    """All figures of reading, for a large collection and for the demonstration; `work` is for what is made on the way.

    A row "without the start" is of the same processes: what either takes to start, to load its libraries and to read
    nothing is measured likewise, and taken off each.
    """
    start = _reading(collection, work, pairs, 0)
    large = _reading(collection, work, pairs, 1)
    large_places = _reading(collection, work, pairs, 1, "--all-places")
    small = _reading(DATA, work, pairs, DEMONSTRATION_TIMES)
    small_places = _reading(DATA, work, pairs, DEMONSTRATION_TIMES, "--all-places")
    demonstration = f"demonstration {DEMONSTRATION_TIMES} times"
    return [
        cpu_row("reading the collection", large, READING_MOST),
        cpu_row("— without the start", _without(large, start), READING_MOST),
        cpu_row("— all places, without the start", _without(large_places, start), READING_MOST),
        cpu_row(f"reading the {demonstration}", small, READING_MOST),
        cpu_row("— without the start", _without(small, start), READING_MOST),
        cpu_row("— all places, without the start", _without(small_places, start), READING_MOST),
        *_validating_rows(collection, work, pairs),
    ]


def _reading(folder: Path, work: Path, pairs: int, times: int, *more: str) -> Pairs:
    given = [str(folder), "--times", str(times)]
    return in_turn(
        lambda: cost([sys.executable, str(HERE / "read_ours.py"), *given, *more], work),
        lambda: cost([sys.executable, str(HERE / "read_peer.py"), *given], work),
        pairs,
    )


def _without(costs: Pairs, start: Pairs) -> Pairs:
    """Costs without the median of what a start costs on the same side."""
    ours, peer = (statistics.median(pair[side].cpu_s for pair in start) for side in (0, 1))
    return [(one.less(ours), other.less(peer)) for one, other in costs]


def _validating_rows(collection: Path, work: Path, pairs: int) -> list[Row]:
    """Each process reads and validates once: nothing is warm, and the schemas are read too."""
    schemas = work / "plain-schemas.json"
    write_plain_schemas(schemas)

    def costs(folder: Path) -> Pairs:
        return in_turn(
            lambda: cost([sys.executable, str(HERE / "validate_ours.py"), str(folder)], work),
            lambda: cost([sys.executable, str(HERE / "validate_peer.py"), str(folder), str(schemas)], work),
            pairs,
        )

    return [
        cpu_row("validating the collection, cold", costs(collection), VALIDATING_MOST),
        cpu_row("validating the demonstration, cold", costs(DATA), VALIDATING_MOST),
    ]
