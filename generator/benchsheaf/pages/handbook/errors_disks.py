"""Errors with bytes, tracks and volumes."""

from collections.abc import Sequence
from decimal import Decimal

from benchsheaf.compute.handbook import DataFigures, clusters_taken, data_figures, volume_figures
from benchsheaf.compute.handbook.prefixes import MIXED_MEGABYTE
from benchsheaf.compute.laws import twelve
from benchsheaf.compute.storage import capacity_figures, interleave_figures, interleave_order, track_figures
from benchsheaf.model.drives import Geometry
from benchsheaf.pages.handbook.shape import Point
from benchsheaf.pages.printing import number
from benchsheaf.standards import MEGABYTE

SECTOR_BYTES = 512
TALL = Geometry(cylinders=615, heads=4, sectors=17, sector_bytes=SECTOR_BYTES)
SMALL = Geometry(cylinders=306, heads=4, sectors=17, sector_bytes=SECTOR_BYTES)
FLOPPY = Geometry(cylinders=80, heads=2, sectors=18, sector_bytes=SECTOR_BYTES)
RPM, RATE = Decimal(3600), Decimal(5_000_000)
LANDING = 319


def byte_errors() -> Sequence[Point]:
    """Three ways to write a size."""
    tall, floppy, small = (capacity_figures(each) for each in (TALL, FLOPPY, SMALL))
    track = track_figures(SMALL, RPM, RATE)
    mixed = Decimal(tall.capacity_bytes) / MIXED_MEGABYTE
    half_kib = floppy.capacity_bytes // 1024
    return (
        Point(
            anchor="megabytes",
            title="Decimal and binary megabytes",
            wrong="20.4 and 21.4 MB cannot be the same drive.",
            right=f"{number(tall.capacity_bytes)} B is {number(tall.capacity_megabytes, 3)} MB, "
            f"{number(tall.capacity_mebibytes, 3)} MiB, and {number(mixed, 3)} “MB” of {number(MIXED_MEGABYTE)}.",
            working=f"615 × 4 × 17 × 512, over {number(MEGABYTE)}, over 1024², over {number(MIXED_MEGABYTE)}.",
            mark="IEC 80000-13; computed; general example.",
        ),
        Point(
            anchor="one-point-four-four",
            title="A floppy of “1.44”",
            wrong="It holds 1.44 MB.",
            right=f"{number(floppy.capacity_bytes)} B is {number(floppy.capacity_megabytes, 3)} MB or "
            f"{number(floppy.capacity_mebibytes, 3)} MiB; 1.44 is neither.",
            working=f"80 × 2 × 18 × 512 = {half_kib} × 1024; {half_kib} over 1000 is the figure on the box.",
            mark="Computed.",
        ),
        Point(
            anchor="unformatted",
            title="Unformatted and formatted",
            wrong=f"The label says {number(track.raw_megabytes, 2)} MB, so that much is there.",
            right=f"Formatted it is {number(small.capacity_megabytes, 2)} MB: "
            f"{number(track.raw_track_bytes, 0, 'down')} raw "
            f"against {number(track.formatted_track_bytes)} B a track, {number(track.format_share * 100, 2)} %.",
            working="5 Mbit/s × 1/60 s / 8 a track against 17 × 512 B; 306 × 4 tracks.",
            mark="Computed; general example.",
        ),
    )


def disk_errors() -> Sequence[Point]:
    """Cylinders, interleave."""
    small = capacity_figures(SMALL)
    over = small.capacity_bytes // SMALL.cylinders
    last = SMALL.cylinders - 1
    figures = interleave_figures(SMALL, 3, 60 / RPM)
    slots = 3 * (SMALL.sectors - 1) + 1
    order = " ".join(map(str, interleave_order(26, 4)))
    return (
        Point(
            anchor="from-zero",
            title="Cylinders count from 0",
            wrong=f"{SMALL.cylinders} cylinders: the last is {SMALL.cylinders}.",
            right=f"They are 0 to {last}; heads land on {LANDING}. Typing {SMALL.cylinders} as the last adds "
            f"{number(over)} "
            "B that are not there.",
            working=f"{SMALL.cylinders} − 1; one cylinder is {SMALL.heads} × {SMALL.sectors} × {SECTOR_BYTES} B.",
            mark="Computed; general example.",
        ),
        Point(
            anchor="interleave-distance",
            title="Interleave is a distance, not a gap",
            wrong="Factor 3 leaves a gap of 3 sectors, and a track takes 3 turns.",
            right=f"It leaves a gap of {3 - 1}; from the start of the first to the end of the last sector it takes "
            f"{number(Decimal(slots) / SMALL.sectors, 2)} turns. With the wait for the next track 3 is a fair count.",
            working=f"(3 × 16 + 1) = {slots} sectors of {SMALL.sectors} a turn.",
            mark="Computed; general example.",
        ),
        Point(
            anchor="interleave-missed",
            title="Interleave too low or too high",
            wrong="The smallest factor is the fastest.",
            right=f"Factor 3 kept is {number(figures.rate_bytes_per_s / 1024)} KiB/s; missed it costs a turn a "
            "sector, about "
            f"{number(missed_rate() / 1024)} KiB/s. Too high costs far less than too low: measure.",
            working="17 × 512 B in 3 turns of 1/60 s; missed, 20 sectors from the start of one to that of the next: "
            "16 × 20 + 1 sectors a track.",
            mark="Computed.",
        ),
        Point(
            anchor="interleave-common",
            title="Interleave with a common factor",
            wrong="With 26 sectors and factor 4 every fourth place is the next number, all round.",
            right=f"Number 13 would stand at place 0, which is taken, and moves on by one: {order}.",
            working="4 and 26 share the factor 2, so every second place is met twice before the others once.",
            mark="Computed.",
        ),
    )


def missed_rate() -> Decimal:
    """Bytes a second where each wanted sector is missed once: a turn more each, as far as the last one's end."""
    start_to_start = 3 + SMALL.sectors
    slots = start_to_start * (SMALL.sectors - 1) + 1
    track_s = Decimal(slots) / SMALL.sectors * 60 / RPM
    return twelve(SMALL.sectors * SECTOR_BYTES / track_s)


def volume_errors() -> Sequence[Point]:
    """What is taken off a disk before a file is on it."""
    whole = capacity_figures(SMALL).sectors
    less = whole - SMALL.sectors
    with_track, without = (data_figures(each, 1, 8, 512, 8) for each in (whole, less))
    tall = data_figures(capacity_figures(TALL).sectors - TALL.sectors, 1, 41, 512, 4)
    return (
        Point(
            anchor="hidden-track",
            title="The hidden track",
            wrong=f"{number(whole)} sectors make {number(with_track.clusters)} clusters.",
            right=f"The first track lies before the volume: {number(less)} sectors, {number(without.clusters)} "
            "clusters.",
            working=f"(sectors − 1 − 2 × 8 − 32) / 8, whole ones; {without.unused_sectors} sectors are left over.",
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


def _root(tall: DataFigures) -> Point:
    sectors = capacity_figures(TALL).sectors - TALL.sectors
    return Point(
        anchor="root-directory",
        title="Root directory and tables forgotten",
        wrong=f"{number(sectors)} sectors × 512 = {number(sectors * SECTOR_BYTES)} B are free.",
        right=f"Free are {number(tall.clusters * 4 * SECTOR_BYTES)} B.",
        working=f"Data begins at sector {tall.first_sector} (1 + 2 × 41 + 32); {number(tall.clusters)} clusters of "
        "2048 B.",
        mark="A formatter agrees; general example.",
    )


def _reserved(without: DataFigures) -> Point:
    entries = without.clusters + 2
    table_bytes = -(-entries * 3 // 2)
    return Point(
        anchor="reserved-entries",
        title="Two entries that are no clusters",
        wrong=f"A table for {number(without.clusters)} clusters has {number(without.clusters)} entries.",
        right=f"{number(entries)}: the first data cluster is number 2. With 12 bits that is {number(table_bytes)} B, "
        f"{-(-table_bytes // SECTOR_BYTES)} sectors.",
        working="(clusters + 2) × 1.5 B, over 512, upwards.",
        mark="ECMA-107, 10.2 and 10.3; computed.",
    )


def _threshold() -> Point:
    most = volume_figures(12, 1).most_clusters
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


def _straddling(tall: DataFigures) -> Point:
    block = 1057
    sectors = (2 * block, 2 * block + 1)
    clusters = [(each - tall.first_sector) // 4 + 2 for each in sectors]
    return Point(
        anchor="straddling",
        title="A bad block over a border",
        wrong="A bad block of 1 KiB costs one cluster.",
        right=f"Over a border it costs two: block {block} is sectors {sectors[0]} and {sectors[1]}, clusters "
        f"{clusters[0]} "
        f"and {clusters[1]}.",
        working=f"(sector − {tall.first_sector}) / 4 + 2, the whole part.",
        mark="A formatter agrees; general example.",
    )


def _bad_used() -> Point:
    floppy = data_figures(720, 1, 2, 112, 2)
    bad = 3
    return Point(
        anchor="bad-used",
        title="Bad clusters count as used",
        wrong=f"A checker that reports {bad}/{floppy.clusters} used has found files.",
        right="There may be none: bad clusters count so. Free are "
        f"{number((floppy.clusters - bad) * 2 * SECTOR_BYTES)} B.",
        working=f"({floppy.clusters} − {bad}) × 1024 B.",
        mark="A formatter and a checker agree.",
    )


def _slack() -> Point:
    files, size = 1000, 3000
    taken = {cluster: files * clusters_taken(size, cluster) * cluster for cluster in (2048, 4096, 8192)}
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
