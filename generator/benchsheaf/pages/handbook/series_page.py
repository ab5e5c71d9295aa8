"""The preferred values of one decade, and where the table and the formula part."""

from benchsheaf.compute.handbook import off_the_formula, preferred_values
from benchsheaf.drawing.series_line import series_line
from benchsheaf.pages.handbook.shape import Column, Content, Section, Table
from benchsheaf.pages.printing import number

SERIES = ((6, "20 %"), (12, "10 %"), (24, "5 %"))


def series() -> Content:
    """Three series as a picture and in words, and how one is chosen."""
    return Content(
        answer="Take the value from E24, in any decade: 33 stands for 0.33, 3.3, 33, 330 and so on. For a load, the "
        "next smaller resistance; for a rating, the next greater voltage.",
        sections=(
            Section(
                anchor="decade",
                title="One decade",
                told=("Each step is about the same share more than the last, so that tolerances just meet.",),
                picture=series_line([preferred_values(count) for count, _ in SERIES], "series"),
                table=Table(
                    label="Values of each series",
                    columns=(Column(name="Series"), Column(name="Made for"), Column(name="Values", wordy=True)),
                    rows=[
                        (f"E{count}", tolerance, ", ".join(number(each) for each in preferred_values(count)))
                        for count, tolerance in SERIES
                    ],
                    source="IEC 60063; the tolerances they were made for are common practice.",
                ),
            ),
            Section(
                anchor="exceptions",
                title="Values that do not follow the formula",
                told=(
                    "The steps are those of 10 to the power of k/24, rounded to two digits; but these values of E24 "
                    "stand in the standard otherwise. A table that was made by the formula is wrong there.",
                ),
                table=Table(
                    label="The formula and the standard",
                    columns=(Column(name="By the formula", n=True), Column(name="In the standard", n=True)),
                    rows=[(number(formula), number(own)) for formula, own in off_the_formula()],
                    source="IEC 60063 against the formula, computed.",
                ),
            ),
        ),
    )
