"""Errors with bytes, tracks and sectors."""

from collections.abc import Sequence
from decimal import Decimal

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
