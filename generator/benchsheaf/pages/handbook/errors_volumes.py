"""Errors with volumes and clusters."""

from collections.abc import Sequence

from benchsheaf.compute.filesystem import LayoutFigures, layout_figures, slack_figures
from benchsheaf.compute.storage import capacity_figures
from benchsheaf.pages.handbook.errors_disks import SECTOR_BYTES, SMALL, TALL
from benchsheaf.pages.handbook.shape import Point
from benchsheaf.pages.printing import number
from benchsheaf.standards import MOST_CLUSTERS_12


def _layout(sectors: int, cluster: int, roots: int = 512) -> LayoutFigures:
    """A volume with one reserved sector and two tables."""
    figures = layout_figures(sectors, SECTOR_BYTES, cluster, 1, 2, roots)
    assert figures is not None
    return figures


def volume_errors() -> Sequence[Point]:
    """What is taken off a disk before a file is on it."""
    whole = capacity_figures(SMALL).sectors
    less = whole - SMALL.sectors
    with_track, without = (_layout(each, 8) for each in (whole, less))
    tall = _layout(capacity_figures(TALL).sectors - TALL.sectors, 4)
    return (
        Point(
            anchor="hidden-track",
            title="The hidden track",
            wrong=f"{number(whole)} sectors make {number(with_track.clusters)} clusters.",
            right=f"The first track lies before the volume: {number(less)} sectors, {number(without.clusters)} "
            "clusters.",
            working=f"(sectors − 1 − 2 × 8 − 32) / 8, whole ones; {without.left_over_sectors} sectors are left over.",
            mark="Two formatters agree; general example.",
        ),
        _root(tall),
        _reserved(without),
        _threshold(),
        _packing(),
        _aligned(),
        _straddling(tall),
        _bad_used(),
        _slack(),
    )


def _root(tall: LayoutFigures) -> Point:
    sectors = capacity_figures(TALL).sectors - TALL.sectors
    return Point(
        anchor="root-directory",
        title="Root directory and tables forgotten",
        wrong=f"{number(sectors)} sectors × 512 = {number(sectors * SECTOR_BYTES)} B are free.",
        right=f"Free are {number(tall.free_bytes)} B.",
        working=f"Data begins at sector {tall.first_data_sector} (1 + 2 × 41 + 32); {number(tall.clusters)} clusters "
        "of "
        "2048 B.",
        mark="A formatter agrees; general example.",
    )


def _reserved(without: LayoutFigures) -> Point:
    return Point(
        anchor="reserved-entries",
        title="Two entries that are no clusters",
        wrong=f"A table for {number(without.clusters)} clusters has {number(without.clusters)} entries.",
        right=f"{number(without.table_entries)}: the first data cluster is number 2. With 12 bits that is "
        f"{number(without.table_bytes)} B, "
        f"{without.table_sectors} sectors.",
        working="(clusters + 2) × 1.5 B, over 512, upwards.",
        mark="ECMA-107, 10.2 and 10.3; computed.",
    )


def _threshold() -> Point:
    most = MOST_CLUSTERS_12
    return Point(
        anchor="threshold",
        title="From 12 to 16 bits",
        wrong="The step comes at 4096 clusters.",
        right=f"{most} clusters are the last with 12 bits, {most + 1} the first with 16, by the standard. Some drivers "
        f"switch only at {most + 3}, so a volume of {most + 1} or {most + 2} clusters is best avoided.",
        working="2 to the power of 12, less 12 numbers that no cluster has.",
        mark="ECMA-107; a formatter refuses the two counts.",
    )


def _packing() -> Point:
    entry = 5
    return Point(
        anchor="packing",
        title="Where a 12-bit entry stands",
        wrong=f"Entry {entry} begins at byte {entry * 2}.",
        right=f"At byte {entry * 3 // 2}: two entries share three bytes, and odd ones take the upper 12 bits.",
        working=f"3 × {entry} / 2, the whole part.",
        mark="ECMA-107, 8.4.",
    )


def _aligned() -> Point:
    table, reserved, cluster = 41, 1, 4
    return Point(
        anchor="alignment",
        title="Tables of a modern formatter",
        wrong="Any formatter makes the volume that the old system made.",
        right=f"One that rounds to clusters turns {table} sectors a table into {_whole(table, cluster)} and {reserved} "
        f"reserved into {_whole(reserved, cluster)} on the same volume: say to it what to use.",
        working=f"Upwards to a multiple of {cluster} sectors.",
        mark="A formatter does so.",
    )


def _whole(sectors: int, cluster: int) -> int:
    return -(-sectors // cluster) * cluster


def _straddling(tall: LayoutFigures) -> Point:
    block = 1057
    sectors = (2 * block, 2 * block + 1)
    clusters = [(each - tall.first_data_sector) // 4 + 2 for each in sectors]
    return Point(
        anchor="straddling",
        title="A bad block over a border",
        wrong="A bad block of 1 KiB costs one cluster.",
        right=f"Over a border it costs two: block {block} is sectors {sectors[0]} and {sectors[1]}, clusters "
        f"{clusters[0]} "
        f"and {clusters[1]}.",
        working=f"(sector − {tall.first_data_sector}) / 4 + 2, the whole part.",
        mark="A formatter agrees; general example.",
    )


def _bad_used() -> Point:
    floppy = _layout(720, 2, roots=112)
    bad = 3
    return Point(
        anchor="bad-used",
        title="Bad clusters count as used",
        wrong=f"A checker that reports {bad}/{floppy.clusters} used has found files.",
        right="There may be none: bad clusters count so. Free are "
        f"{number((floppy.clusters - bad) * floppy.cluster_bytes)} B.",
        working=f"({floppy.clusters} − {bad}) × 1024 B.",
        mark="A formatter and a checker agree.",
    )


def _slack() -> Point:
    files, size = 1000, 3000
    taken = {cluster: slack_figures(size, cluster, files).used_bytes for cluster in (2048, 4096, 8192)}
    return Point(
        anchor="slack",
        title="What is lost in clusters",
        wrong=f"{files} files of {size} B take {number(files * size)} B.",
        right=f"{number(taken[2048])} B with clusters of 2 KiB, {number(taken[4096])} B with 4 KiB, "
        f"{number(taken[8192])} B "
        "with 8 KiB.",
        working="Whole clusters a file.",
        mark="Computed.",
    )
