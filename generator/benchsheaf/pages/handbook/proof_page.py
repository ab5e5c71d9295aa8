"""How long to test before a repair counts."""

from decimal import Decimal

from benchsheaf.compute.proof import hours_figures, starts_figures
from benchsheaf.pages.handbook.cautions import PLUG_OUT
from benchsheaf.pages.handbook.shape import Column, Content, Section, Table
from benchsheaf.pages.printing import number, plain
from benchsheaf.standards import SURELY_SHARE

BETWEEN_HOURS = tuple(Decimal(text) for text in ("0.25", "0.5", "1", "2", "4", "8", "24"))
FAILS = tuple(Decimal(text) for text in ("0.9", "0.75", "0.5", "0.25", "0.2", "0.1", "0.05", "0.02"))
WORKED = Decimal("0.25")


def proof() -> Content:
    """Two tables: by hours between failures, and by the share of cold starts that failed."""
    worked = starts_figures(WORKED)
    risk = number(SURELY_SHARE * 100)
    return Content(
        cautions=(PLUG_OUT,),
        answer="It failed once in T hours: 3 T hours without a failure. It failed at one cold start in four: "
        f"{worked.clean_starts} cold starts in a row without a failure. One good start proves nothing.",
        sections=(
            _hours(risk),
            _starts(risk),
            Section(
                anchor="not",
                title="What it does not prove",
                told=(
                    "It proves that this complaint stays away in the state in which it was tested: as warm, as long "
                    "off, "
                    "with the same cards in. A cold start is one after the machine was off long enough to be cold: the "
                    "waiting is the longer part. A failure during the test begins the count anew.",
                    "Before the first hour the checks that running cannot prove come first: earth, fuse, mains parts. "
                    "Somebody stays in the room.",
                ),
            ),
        ),
    )


def _hours(risk: str) -> Section:
    return Section(
        anchor="hours",
        title="It fails while running",
        table=Table(
            label="Clean hours",
            columns=(Column(name="It failed once in", n=True), Column(name="So it must run clean", n=True)),
            rows=[
                (_hours_told(each), _hours_told(hours_figures(each).clean_hours))
                for each in BETWEEN_HOURS
            ],
            source=f"The rule of three of statistics: a risk of {risk} % is left that the fault is still there.",
        ),
        working=(
            "Failures that come by chance once in T hours stay away for 3 T hours with e to the power of −3, which is "
            "4.98 %.",
        ),
    )  # fmt: skip


def _hours_told(hours: Decimal) -> str:
    """Under an hour in minutes."""
    return f"{number(hours * 60)} min" if hours < 1 else f"{hours.normalize():f} h"


def _starts(risk: str) -> Section:
    worked = starts_figures(WORKED)
    good = 1 - WORKED
    figures = [starts_figures(each) for each in FAILS]
    return Section(
        anchor="starts",
        title="It fails at cold starts",
        table=Table(
            label="Clean cold starts",
            columns=(
                Column(name="Share of cold starts that failed", n=True),
                Column(name="Clean starts in a row", n=True),
                Column(name="Risk that is left", n=True),
            ),
            rows=[
                (f"{number(each.fails_share * 100)} %", str(each.clean_starts), f"{plain(each, 'left_share', 1)} %")
                for each in figures
            ],
            source=f"The binomial, n = ln 0.05 / ln(1 − p), whole starts upwards: a risk of at most {risk} % is left.",
        ),
        working=(
            f"At p = {WORKED}: ln 0.05 / ln {good} = {number(worked.exact_starts, 2)}, so {worked.clean_starts} "
            "starts. "
            f"All of them go well by chance with {good} to the power of {worked.clean_starts}, which is "
            f"{plain(worked, 'left_share', 1)} %.",
        ),
    )
