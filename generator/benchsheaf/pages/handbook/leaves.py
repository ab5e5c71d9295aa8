"""The pages of the handbook: a question that somebody has at the bench each, and the sheets that ask it."""

from dataclasses import dataclass

NAME = "Handbook"


@dataclass(frozen=True, kw_only=True, slots=True)
class Leaf:
    """A page: the end of its address, its title, the group in its list, and the sheets of a machine that lead to it."""

    name: str
    title: str
    group: str
    says: str
    sheets: tuple[str, ...] = ()


LEAVES = (
    Leaf(name="index", title="What do you want to know?", group="Before you touch", says="All questions."),
    Leaf(
        name="touch",
        title="What do standards say about touching?",
        group="Before you touch",
        says="Classes of voltage and stored charge, and why none of them is a permission.",
        sheets=("first-power", "ladder", "power"),
    ),
    Leaf(
        name="practice",
        title="What does a workshop go by?",
        group="Before you touch",
        says="What is done in a workshop, each with how well it is founded.",
        sheets=("glance", "ladder", "boards", "checks"),
    ),
    Leaf(
        name="rings",
        title="What do the rings on a resistor say?",
        group="Reading parts",
        says="Colours of digits, multipliers and tolerances, with examples.",
        sheets=("boards",),
    ),
    Leaf(
        name="codes",
        title="What do letters and digits on a part say?",
        group="Reading parts",
        says="103, 4K7, 8R2D, 01C: resistors and capacitors.",
        sheets=("boards",),
    ),
    Leaf(
        name="series",
        title="Which value can I buy?",
        group="Reading parts",
        says="Preferred values E6, E12 and E24.",
        sheets=("power",),
    ),
    Leaf(
        name="wires",
        title="How much does a wire lose?",
        group="Reading parts",
        says="Gauges with copper, resistance, and the drop to the far chip.",
        sheets=("power",),
    ),
    Leaf(
        name="units",
        title="kB or KiB: how much is it?",
        group="Bytes and disks",
        says="What each prefix is worth.",
        sheets=("memory", "drives"),
    ),
    Leaf(
        name="disks",
        title="What fits on a disk?",
        group="Bytes and disks",
        says="Floppy formats, limits of file systems, which drive reads which disk.",
        sheets=("drives", "service"),
    ),
    Leaf(
        name="sums",
        title="What does a checksum prove?",
        group="Bytes and disks",
        says="Sums and CRCs by their parameters, and what a sum of zero hides.",
        sheets=("firmware", "drives"),
    ),
    Leaf(
        name="errors",
        title="What is often worked out wrong?",
        group="Getting it right",
        says="The wrong figure, the right one, and how it is worked out.",
        sheets=("power", "memory", "drives", "display"),
    ),
    Leaf(
        name="proof",
        title="How long must it run to count as repaired?",
        group="Getting it right",
        says="Clean hours and clean cold starts.",
        sheets=("service", "repairs", "finding"),
    ),
)
GROUPS = tuple(dict.fromkeys(leaf.group for leaf in LEAVES))
