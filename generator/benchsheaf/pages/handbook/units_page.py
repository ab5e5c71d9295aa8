"""Prefixes of 1000 and of 1024, and the megabyte that is neither."""

from benchsheaf.compute.handbook import PrefixFigures, prefix_figures
from benchsheaf.compute.handbook.prefixes import MIXED_MEGABYTE
from benchsheaf.pages.handbook.shape import Column, Content, Section, Table
from benchsheaf.pages.printing import number
from benchsheaf.standards import MEBIBYTE, MEGABYTE

STEPS = (("kB", "KiB"), ("MB", "MiB"), ("GB", "GiB"))
IEC = "IEC 80000-13, clause 4; the worths and the differences are computed."


def units() -> Content:
    """Which is which, how much they differ, and what boxes say."""
    return Content(
        answer="1 kB is 1000 bytes and 1 KiB is 1024. Memory is counted in KiB, disks are sold in MB: so a plate and a "
        "listing differ though both are right.",
        sections=(
            Section(
                anchor="worths",
                title="What each is worth",
                told=(
                    "Old papers write K, KB or MB for either. Ask what is counted: chips come in powers of two, so "
                    "their sizes are KiB; tracks and sectors come in any number.",
                ),
                table=Table(
                    label="Prefixes and their worths",
                    columns=(
                        Column(name="Prefix"),
                        Column(name="Bytes", n=True),
                        Column(name="Its neighbour"),
                        Column(name="Bytes of it", n=True),
                        Column(name="More by", n=True),
                    ),
                    rows=[_row(names, prefix_figures(step)) for step, names in enumerate(STEPS, 1)],
                    source=IEC,
                ),
            ),
            Section(anchor="mixed", title="The megabyte that is neither", told=(_mixed(),)),
        ),
    )


def _row(names: tuple[str, str], figures: PrefixFigures) -> tuple[str, ...]:
    return (
        f"1 {names[0]}",
        number(figures.decimal_bytes),
        f"1 {names[1]}",
        number(figures.binary_bytes),
        f"{number(figures.more_share * 100, 4)} %",
    )


def _mixed() -> str:
    return (
        f"Boxes of floppy disks count thousands of 1024: {number(MIXED_MEGABYTE)} bytes, between the "
        f"{number(MEGABYTE)} "
        f"of a MB and the {number(MEBIBYTE)} of a MiB. That is common practice and no standard. These sheets never "
        "count so."
    )
