"""How the sectors of a volume are shared out between start sector, tables, root directory and clusters."""

from dataclasses import dataclass

from benchsheaf.compute.laws import rounded_down, rounded_up
from benchsheaf.standards import (
    BITS_A_BYTE,
    DIRECTORY_ENTRY_BYTES,
    FIRST_CLUSTER,
    MOST_CLUSTERS_12,
    MOST_CLUSTERS_16,
    MOST_SECTORS_16,
)


@dataclass(frozen=True, kw_only=True, slots=True)
class LayoutFigures:
    """A volume of 12 or 16 bits, in sectors from its own first one.

    `table_bytes` are what the entries of one table need; `count_bits` is the field that its length goes into.
    """

    sectors: int
    count_bits: int
    table_bits: int
    table_entries: int
    table_bytes: int = rounded_up()
    table_sectors: int
    root_sectors: int
    first_data_sector: int
    clusters: int
    cluster_bytes: int
    left_over_sectors: int
    free_bytes: int = rounded_down()


@dataclass(frozen=True, kw_only=True, slots=True)
class SlackFigures:
    """What files take on a volume, and what of that they do not fill."""

    clusters: int
    used_bytes: int
    slack_bytes: int


def layout_figures(
    sectors: int, sector_bytes: int, cluster: int, reserved: int, tables: int, roots: int
) -> LayoutFigures | None:
    """The layout with the smallest table that has an entry for each cluster and two more.

    The number of clusters alone says whether an entry has 12 or 16 bits. None where no cluster is left, or where there
    are more than 16 bits can number. A formatter may take a larger table than it needs; then there are fewer clusters.

    Units: sectors of the volume and of a cluster, bytes a sector, tables, root entries in; sectors and bytes out, free
    bytes as the listing of an empty directory says. Errors: ZeroDivisionError if a sector or a cluster is nothing.
    Source: ECMA-107, 2nd edition; the published specification of the file system.
    """
    root_sectors = -(-roots * DIRECTORY_ENTRY_BYTES // sector_bytes)
    before = reserved + root_sectors
    most_table = -(-(MOST_CLUSTERS_16 + FIRST_CLUSTER) * 16 // (sector_bytes * BITS_A_BYTE))
    for table in range(1, most_table + 1):
        clusters, left_over = divmod(sectors - before - tables * table, cluster)
        if clusters < 1:
            return None
        bits = 12 if clusters <= MOST_CLUSTERS_12 else 16
        if table * sector_bytes * BITS_A_BYTE >= (clusters + FIRST_CLUSTER) * bits:
            break
    else:
        return None
    return LayoutFigures(
        sectors=sectors,
        count_bits=16 if sectors <= MOST_SECTORS_16 else 32,
        table_bits=bits,
        table_entries=clusters + FIRST_CLUSTER,
        table_bytes=-(-(clusters + FIRST_CLUSTER) * bits // BITS_A_BYTE),
        table_sectors=table,
        root_sectors=root_sectors,
        first_data_sector=before + tables * table,
        clusters=clusters,
        cluster_bytes=cluster * sector_bytes,
        left_over_sectors=left_over,
        free_bytes=clusters * cluster * sector_bytes,
    )


def slack_figures(file_bytes: int, cluster_bytes: int, files: int = 1) -> SlackFigures:
    """What files of one length take, since each begins a cluster of its own; an empty one takes none.

    Units: bytes. Errors: ZeroDivisionError if a cluster is nothing. Source: ECMA-107, whole clusters belong to a file.
    """
    clusters = -(-file_bytes // cluster_bytes) * files
    used = clusters * cluster_bytes
    return SlackFigures(clusters=clusters, used_bytes=used, slack_bytes=used - file_bytes * files)
