"""Letters and digits on resistors and capacitors."""

from decimal import Decimal

from benchsheaf.compute.handbook import MarkFigures, capacitor_of_code, resistor_of_code
from benchsheaf.compute.handbook.reading import LETTER_FARADS, LETTER_SHARES, UNEVEN_SHARES, VOLTAGE_LETTERS
from benchsheaf.pages.handbook.rings_page import percent, resistor_told
from benchsheaf.pages.handbook.shape import Column, Content, Section, Table
from benchsheaf.pages.printing import quantity

RESISTORS = (
    *("R47", "4R7", "47R", "470R", "K47", "4K7", "4K7J", "R10K", "103", "470", "100", "000"),
    *("1000", "1001", "49R9", "01C", "18A", "68X", "85C", "96F", "22Y"),
)
CAPACITORS = (
    *("101J", "331", "471K", "103M", "223J", "474K", "105Z", "220G", "8R2D", "479C"),
    *("330p", "n33", "330n", "u33", "3u3", "33u", "1m0"),
)


def codes() -> Content:
    """What is read off a part, letters of tolerance and voltage."""
    return Content(
        answer="Three digits: the third is the number of zeros, so 103 is 10 kΩ on a resistor and 10 nF on a capacitor "
        "(10,000 pF). A letter stands at the place of the point, and a last letter is the tolerance.",
        sections=(
            _read(
                "resistors",
                "Resistors",
                RESISTORS,
                [_link_told(resistor_of_code(each)) for each in RESISTORS],
                "two digits and a letter annex A",
            ),
            _read(
                "capacitors",
                "Capacitors",
                CAPACITORS,
                [capacitor_told(capacitor_of_code(each)) for each in CAPACITORS],
                "a third digit 9 means a tenth and 8 a hundredth, common practice",
            ),
            _letters(),
            _volts(),
        ),
    )


def _read(anchor: str, title: str, codes: tuple[str, ...], told: list[str], also: str) -> Section:
    return Section(
        anchor=anchor,
        title=title,
        table=Table(
            label=f"{title}: markings",
            columns=(Column(name="Marking", mono=True), Column(name="What it is", wordy=True)),
            rows=list(zip(codes, told, strict=True)),
            source=f"IEC 60062, clauses 4 and 5, from memory of the tables; {also}. The values are computed.",
        ),
    )


def capacitor_told(figures: MarkFigures) -> str:
    """A capacitor in words: its value, and its tolerance where one is told."""
    told = quantity(figures.value.normalize(), "F")
    if figures.either_f is not None:
        return f"{told} ±{quantity(figures.either_f.normalize(), 'F')}"
    if figures.more_share is None or figures.less_share is None:
        return f"{told}, no tolerance told"
    if figures.more_share == figures.less_share:
        return f"{told} ±{percent(figures.more_share)}"
    return f"{told} +{percent(figures.more_share)}, −{percent(figures.less_share)}"


def _link_told(figures: MarkFigures) -> str:
    """A resistor in words; one of 0 Ω is a link."""
    return resistor_told(figures) + ("" if figures.value else ", a link")


def _letters() -> Section:
    rows = [(letter, f"±{percent(share)}", _small(letter)) for letter, share in LETTER_SHARES.items()]
    uneven = [(letter, f"+{percent(more)}, −{percent(less)}", "–") for letter, (more, less) in UNEVEN_SHARES.items()]
    return Section(
        anchor="tolerances",
        title="Letters of tolerance",
        table=Table(
            label="Letters of tolerance",
            columns=(
                Column(name="Letter", mono=True),
                Column(name="Means", n=True),
                Column(name="Under 10 pF", n=True),
            ),
            rows=[*rows, *uneven],
            source="IEC 60062, clause 5, from memory.",
        ),
    )


def _small(letter: str) -> str:
    found = LETTER_FARADS.get(letter)
    return f"±{quantity(found.normalize(), 'F')}" if found is not None else "–"


def _volts() -> Section:
    """Voltage of chip tantalums, and which way round."""
    example = capacitor_of_code("475")
    return Section(
        anchor="tantalum",
        title="Tantalum beads and chips",
        told=(
            "On a bead 10 and 16 with a plus are 10 µF and 16 V; the plus stands at its leg. The bar of a tantalum "
            "chip "
            "is plus; the dark segment of an aluminium can is minus.",
            f"On a chip a letter is the voltage: A475 is {quantity(example.value.normalize(), 'F')} and "
            f"{quantity(VOLTAGE_LETTERS['A'], 'V')}.",
        ),
        table=Table(
            label="Letters of rated voltage",
            columns=(Column(name="Letter", mono=True), Column(name="Rated", n=True)),
            rows=[(letter, quantity(Decimal(volts), "V")) for letter, volts in VOLTAGE_LETTERS.items()],
            source="Common practice, from memory.",
        ),
    )
