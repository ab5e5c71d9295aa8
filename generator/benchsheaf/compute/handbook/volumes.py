"""Limits of a volume with a file allocation table, and what files take of it."""

from dataclasses import dataclass

from benchsheaf.standards import FAT_ENTRIES_KEPT


@dataclass(frozen=True, kw_only=True, slots=True)
class VolumeFigures:
    """The most that entries of a width can number; `most_bytes` is the data with clusters of the size asked for."""

    entry_bits: int
    most_clusters: int
    most_bytes: int


def volume_figures(entry_bits: int, cluster_bytes: int) -> VolumeFigures:
    """The limits of a table whose entries have so many bits.

    Units: bits and bytes in; clusters and bytes out.
    Source: ECMA-107, 10.3.
    """
    most = 2**entry_bits - FAT_ENTRIES_KEPT
    return VolumeFigures(entry_bits=entry_bits, most_clusters=most, most_bytes=most * cluster_bytes)


def clusters_taken(file_bytes: int, cluster_bytes: int) -> int:
    """How many clusters a file takes: whole ones, and none for an empty file.

    Errors: ZeroDivisionError for clusters of nothing.
    Source: ECMA-107, 10.2.
    """
    return -(-file_bytes // cluster_bytes)


@dataclass(frozen=True, kw_only=True, slots=True)
class DataFigures:
    """The data of a volume: where it begins, how many whole clusters it has, and the sectors that are left over."""

    first_sector: int
    clusters: int
    unused_sectors: int


def data_figures(sectors: int, before_tables: int, table_sectors: int, entries: int, per_cluster: int) -> DataFigures:
    """What two tables and a root directory leave of a volume of 512-byte sectors.

    Units: sectors; entries of the root directory, 32 bytes each.
    Errors: ZeroDivisionError for clusters of nothing.
    Source: ECMA-107, clauses 10 and 11.
    """
    first = before_tables + 2 * table_sectors + -(-entries * 32 // 512)
    return DataFigures(
        first_sector=first,
        clusters=(sectors - first) // per_cluster,
        unused_sectors=(sectors - first) % per_cluster,
    )
