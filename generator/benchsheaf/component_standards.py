"""Numbers from outside about capacitors and resistors: ratings, limits, series and markings, each with its source."""

from decimal import Decimal

from benchsheaf.standards import E24, TANTALUM_SHARE

ALUMINIUM_SHARE = Decimal("0.8")
"""The most of its rated voltage that an aluminium electrolytic should see. Source: common practice."""

USED_SHARES = {"tantalum": TANTALUM_SHARE, "electrolytic": ALUMINIUM_SHARE}
"""The share of its rating that a capacitor of a kind should see at most; of other kinds none is known to us."""

RATED_VOLTS = {
    "tantalum": tuple(Decimal(volt) for volt in ("4", "6.3", "10", "16", "20", "25", "35", "50")),
    "electrolytic": (Decimal("6.3"), *map(Decimal, (10, 16, 25, 35, 50, 63, 100, 160, 200, 250, 350, 400, 450))),
}
"""Voltages that capacitors are sold for.

Source: series R5 of the preferred voltages of IEC 60384-1 (1, 1.6, 2.5, 4, 6.3 and their tens), with those between that
the trade sells; from memory, common practice.
"""

E6 = E24[::4]
"""Preferred values that capacitors are sold in. Source: IEC 60063, series E6; that it is this one, common practice."""

E96 = tuple(round(100 * 10 ** (step / 96)) for step in range(96))
"""Preferred values of one decade for parts of 1 %. Source: IEC 60063, series E96, which follows its formula."""

LOSS_HZ = Decimal(120)
"""At what frequency makers state tan δ. Source: IEC 60384-4 (100 or 120 Hz); common practice of catalogues."""

USUAL_TAN_DELTA = tuple(
    (Decimal(volt), Decimal(loss))
    for volt, loss in (
        *(("6.3", "0.22"), ("10", "0.19"), ("16", "0.16"), ("25", "0.14"), ("35", "0.12"), ("50", "0.10")),
        *(("63", "0.09"), ("100", "0.08")),
    )
)
"""Rated volts up to which a tan δ holds for general aluminium electrolytics. Source: common practice, catalogues."""

TAN_DELTA_STEP = Decimal("0.02")
TAN_DELTA_STEP_F = Decimal("0.001")
"""What is added to it for each started 1000 µF above 1000 µF. Source of both: common practice, catalogues."""

LEAKAGE_PER_S = Decimal("0.01")
LEAST_LEAKAGE_A = Decimal("0.000003")
"""What an aluminium electrolytic may leak after two minutes at 20 °C: 0.01 C V, or 3 µA where that is more.

Source: common practice, the usual form of data sheets.
"""

OLD_LEAKAGE = tuple(
    (Decimal(volt), Decimal(factor)) for volt, factor in ((100, "0.01"), (250, "0.02"), (350, "0.025"), (450, "0.04"))
)
OLD_LEAKAGE_A = Decimal("0.0003")
"""What old papers allowed: K C + 0.3 mA, C in microfarad, result in milliampere, K by the rated volts.

Source: military specification JAN-C-62 as quoted on a public list; for reading old papers, no limit for a part today.
"""

RMS_OF_TRIANGLE = Decimal(12).sqrt()
"""How many times its rms value a triangle wave swings from peak to peak. Source: its definition, 2 √3."""

RING_COLOURS = ("black", "brown", "red", "orange", "yellow", "green", "blue", "violet", "grey", "white")
"""Digits 0 to 9 and powers of ten as colours. Source: IEC 60062:2016, clause 3; from memory of its table."""

RING_TENTHS = {-1: "gold", -2: "silver"}
"""Powers of ten below one. Source: IEC 60062:2016, clause 3; from memory of its table."""

RING_TOLERANCES = {
    Decimal(share).scaleb(-2): colour
    for share, colour in (
        *(("20", "none"), ("10", "silver"), ("5", "gold"), ("1", "brown"), ("2", "red"), ("0.5", "green")),
        *(("0.25", "blue"), ("0.1", "violet"), ("0.05", "orange"), ("0.02", "yellow"), ("0.01", "grey")),
    )
}
"""Colours of the last ring but the sixth. Source: IEC 60062:2016, clause 3; from memory of its table."""

RING_DRIFTS = {
    250: "black",
    100: "brown",
    50: "red",
    15: "orange",
    25: "yellow",
    20: "green",
    10: "blue",
    5: "violet",
    1: "grey",
}
"""Millionths of its value for each kelvin, as the colour of a sixth ring. Source: IEC 60062:2016; from memory."""

TOLERANCE_LETTERS = {
    Decimal(share).scaleb(-2): letter
    for letter, share in (
        *(("B", "0.1"), ("C", "0.25"), ("D", "0.5"), ("F", "1"), ("G", "2"), ("H", "3"), ("J", "5"), ("K", "10")),
        *(("M", "20"), ("N", "30")),
    )
}
"""Letters of tolerances alike to both sides. Source: IEC 60062:2016, clause 5; from memory of its table."""

UNEVEN_LETTERS = {
    (Decimal(up).scaleb(-2), Decimal(down).scaleb(-2)): letter
    for letter, up, down in (("Q", "30", "10"), ("T", "50", "10"), ("S", "50", "20"), ("Z", "80", "20"))
}
"""Letters of tolerances that differ up and down. Source: IEC 60062:2016, clause 5; from memory of its table."""

PICOFARAD_LETTERS = {Decimal(pf).scaleb(-12): letter for letter, pf in (("B", "0.1"), ("C", "0.25"), ("D", "0.5"))}
"""Letters of tolerances in picofarad, under 10 pF. Source: IEC 60062:2016, clause 5; from memory of its table."""

VOLT_LETTERS = {
    Decimal(volt): letter
    for letter, volt in (
        *(("e", "2.5"), ("G", "4"), ("J", "6.3"), ("A", "10"), ("C", "16"), ("D", "20"), ("E", "25"), ("V", "35")),
        ("T", "50"),
    )
}
"""Rated volts of chip tantalums as a letter. Source: common practice; from memory of its use."""

E96_LETTERS = {-3: "Z", -2: "Y", -1: "X", 0: "A", 1: "B", 2: "C", 3: "D", 4: "E", 5: "F"}
"""Powers of ten by which three digits of E96 are multiplied. Source: IEC 60062:2016, annex A; letters from memory."""
