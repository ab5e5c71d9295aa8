"""What floppy disks hold, where file systems end, what files take, and which drive reads which disk."""

from decimal import Decimal

from benchsheaf.compute.filesystem import slack_figures
from benchsheaf.compute.storage import capacity_figures
from benchsheaf.model.drives import Geometry
from benchsheaf.pages.handbook.shape import Column, Content, Section, Table
from benchsheaf.pages.printing import binary, number, plain
from benchsheaf.standards import MOST_CLUSTERS_12, MOST_CLUSTERS_16, MOST_SECTORS_16

SECTOR_BYTES = 512
MOST_CLUSTERS = (MOST_CLUSTERS_12, MOST_CLUSTERS_16)
FLOPPIES = (
    ("130 mm, one side", 35, 1, 13, 256),
    ("130 mm, one side", 35, 1, 16, 256),
    ("130 mm", 40, 2, 9, 512),
    ("90 mm", 80, 2, 9, 512),
    ("90 mm, high density", 80, 2, 18, 512),
    ("200 mm, one side, FM", 77, 1, 26, 128),
    ("200 mm or 130 mm, high density", 77, 2, 8, 1024),
)
CLUSTERS = (512, 2048, 4096, 8192, 32768)
FILES = ((4097, 4096), (10000, 2048), (0, 2048), (1, 8192))
READS = (
    (
        "96 tpi drive at 360 rpm, 48 tpi disk of low density",
        "reads it, with double stepping and 300 kbit/s; the narrow track that it writes is often lost to the old drive",
        "common practice",
    ),
    ("48 tpi drive, 96 tpi disk", "no: its head spans two tracks", "common practice"),
    (
        "130 mm disk of low density, formatted as high density",
        "no: about 290 to 300 Oe against 600 to 660 Oe",
        "common practice, oersted from memory",
    ),
    (
        "90 mm disk of 720 KiB, formatted as 1440 KiB",
        "unreliable: about 600 to 665 Oe against 700 to 720 Oe",
        "common practice, from memory",
    ),
    ("1440 KiB drive, 720 KiB disk", "yes", "common practice"),
    ("2880 KiB drive, 1440 and 720 KiB disks", "yes", "common practice"),
    ("200 mm disk of 77 × 26 × 128 in FM, controller without FM", "no", "common practice"),
    ("One-sided disk, drive with two heads", "reads side 0", "common practice"),
)


def disks() -> Content:
    """Four tables."""
    return Content(
        answer="A shape is cylinders × heads × sectors × bytes a sector. What a listing shows as free is less: "
        "tables, the root "
        "directory and whole clusters are taken off. A doubtful drive gets a test disk first, never the only copy.",
        sections=(_floppies(), _limits(), _slack(), _reads()),
    )


def _floppies() -> Section:
    return Section(
        anchor="floppies",
        title="Floppy disks",
        table=Table(
            label="What floppy disks hold",
            columns=(
                Column(name="Disk"),
                Column(name="Shape", n=True),
                Column(name="Bytes", n=True),
                Column(name="KiB", n=True),
                Column(name="MB", n=True),
                Column(name="MiB", n=True),
            ),
            rows=[_floppy(*each) for each in FLOPPIES],
            source="geometries common practice; the rest is computed, prefixes by IEC 80000-13.",
        ),
    )


def _floppy(name: str, cylinders: int, heads: int, sectors: int, sector_bytes: int) -> tuple[str, ...]:
    geometry = Geometry(cylinders=cylinders, heads=heads, sectors=sectors, sector_bytes=sector_bytes)
    held = capacity_figures(geometry)
    return (
        name,
        f"{cylinders} × {heads} × {sectors} × {sector_bytes}",
        number(held.capacity_bytes),
        f"{(Decimal(held.capacity_bytes) / 1024).normalize():f}",
        plain(held, "capacity_megabytes", 3),
        plain(held, "capacity_mebibytes", 3),
    )


def _limits() -> Section:
    rows = []
    for cluster_bytes in CLUSTERS:
        rows.append((binary(cluster_bytes), *(number(most * cluster_bytes) for most in MOST_CLUSTERS)))
    few, many = MOST_CLUSTERS
    return Section(
        anchor="limits",
        title="Where a file system ends",
        told=(
            f"Up to {number(few)} clusters the entries of the table have 12 bits, up to {number(many)} they have 16. "
            "The "
            "first data cluster is number 2, so a table holds two entries more than there are clusters.",
            f"Where the count of sectors has 16 bits a volume ends at {number(MOST_SECTORS_16)} sectors, "
            f"{number(MOST_SECTORS_16 * SECTOR_BYTES)} bytes: one sector under "
            f"{binary((MOST_SECTORS_16 + 1) * SECTOR_BYTES)}.",
        ),
        table=Table(
            label="The most data by size of cluster",
            columns=(
                Column(name="Cluster"),
                Column(name="12-bit entries, bytes", n=True),
                Column(name="16-bit entries, bytes", n=True),
            ),
            rows=rows,
            source="ECMA-107, clause 10; computed. Some systems stop earlier.",
        ),
    )


def _slack() -> Section:
    rows = []
    for file_bytes, cluster_bytes in FILES:
        figures = slack_figures(file_bytes, cluster_bytes)
        rows.append(
            (
                number(file_bytes),
                number(cluster_bytes),
                number(figures.clusters),
                number(figures.used_bytes),
                number(figures.slack_bytes),
            )
        )
    return Section(
        anchor="slack",
        title="What a file takes",
        told=("Whole clusters, and none for an empty file. A flawed sector costs its whole cluster.",),
        table=Table(
            label="What a file takes",
            columns=(
                Column(name="File, bytes", n=True),
                Column(name="Cluster", n=True),
                Column(name="Clusters", n=True),
                Column(name="Bytes taken", n=True),
                Column(name="Lost", n=True),
            ),
            rows=rows,
            source="ECMA-107, clause 10; computed.",
        ),
    )


def _reads() -> Section:
    return Section(
        anchor="reads",
        title="Which drive reads which disk",
        table=Table(
            label="Which drive reads which disk",
            columns=(Column(name="Drive and disk"), Column(name="Does it", wordy=True), Column(name="Mark")),
            rows=READS,
            source="as marked in each row.",
        ),
    )
