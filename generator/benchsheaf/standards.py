"""Numbers from outside, each with its source."""

from collections.abc import Mapping
from decimal import Decimal

HIGHEST_MAINS_RATIO = Decimal(264) / Decimal(230)
"""The highest mains over the nominal 230 V.

Source: upper end of 240 V +10 %, above the 230 V +10 % of IEC 60038.
"""

CAPACITANCE_OVER = Decimal("1.2")
"""How much a reservoir may exceed its print. Source: common practice, the usual tolerance of +20 %."""

BLEEDER_OVER = Decimal("1.1")
"""How much a bleeder may exceed its print. Source: common practice, aged composition and film resistors +10 %."""

DISCHARGED_V = Decimal(10)
"""What a reservoir must have fallen to before a hand goes near. Source: common practice at the bench."""

LONG_TOUCH = (
    ("dry, adults", Decimal(50), Decimal(120)),
    ("wet, or children", Decimal(25), Decimal(60)),
)
"""Conventional limits of long touch: state, a.c. and ripple-free d.c. in volt.

Classes for designers and no permission to touch. Source: IEC TS 60479-1 and IEC 60364-4-41, as given in public.
"""

EXTRA_LOW_PEAK_V = Decimal("42.4")
"""The peak up to which circuits are classed as extra-low. Source: IEC 60950-1, 2.2."""

HAZARDOUS_J, HAZARDOUS_VA = Decimal(20), Decimal(240)
"""From where energy is classed as hazardous; below is not harmless. Source: IEC 60950-1, from memory."""

UNBLED_F, BLED_S = Decimal("0.1e-6"), Decimal(1)
"""Mains capacitors over this are to discharge with this time constant at most. Source: IEC 60950-1, 2.1.1.7."""

IMPEDANCE_LIMITS = (
    ("to 450 V peak", "0.1 µF"),
    ("450 V to 15 kV", "45 µC"),
    ("over 15 kV", "350 mJ"),
)
"""The most behind a protective impedance, by voltage. Source: IEC 60335-1, 8.1.4, as quoted in public."""

EXTRA_LOW_V = Decimal(60)
"""The direct voltage up to which circuits are classed as extra-low.

A class for designers and no permission to touch. Source: IEC 60950-1, 2.2 (60 V d.c.).
"""

MOST_EXTRA_W = Decimal(1)
"""The most extra power that a reading above "no power below" may leave in one part. Source: common practice."""

BODY_OVER_LOAD = Decimal(2)
"""How many times its watts the body of a load resistor should bear. Source: common practice."""

BODY_WATTS = tuple(Decimal(watt) for watt in ("0.25", "0.5", "1", "2", "3", "5", "10", "15", "25", "50", "100", "200"))
"""Power ratings that resistors are sold in. Source: common practice, wire-wound and film kinds of the trade."""

LARGEST_BODY_W = Decimal(50)
"""The largest body of one load resistor; beyond it several like ones share the heat.

Source: common practice, larger ones are rated on a heat sink of their own.
"""

RESISTOR_SPREAD = Decimal("0.05")
"""How far a resistor of series E24 may lie from its print. Source: IEC 60063, the series for 5 %."""

FOIL_M = Decimal("0.000035")
"""Thickness of a board's copper, in metre. Source: common practice, the usual foil of 35 µm; plating makes it more."""

HUNTING_A = Decimal("0.5")
"""What is sent through a shorted rail to find the short. Source: common practice, from a source under 1 V."""

METER_STEP_V = Decimal("0.0001")
"""The last digit of a meter of 3½ digits in its range of 200 mV. Source: 200 mV over 2000 counts."""

E24 = (10, 11, 12, 13, 15, 16, 18, 20, 22, 24, 27, 30, 33, 36, 39, 43, 47, 51, 56, 62, 68, 75, 82, 91)
"""Preferred values of one decade. Source: IEC 60063, series E24."""

RING_DIGITS = ("black", "brown", "red", "orange", "yellow", "green", "blue", "violet", "grey", "white")
"""The colour of each digit from 0 to 9; as a multiplier that many zeros. Source: IEC 60062, clause 3, from memory."""

RING_POWERS: Mapping[str, int] = {colour: power for power, colour in enumerate(RING_DIGITS)} | {
    "gold": -1,
    "silver": -2,
}
"""The power of ten that a ring multiplies by. Source: IEC 60062, clause 3, from memory."""

RING_SHARES: Mapping[str, Decimal] = {
    "brown": Decimal("0.01"),
    "red": Decimal("0.02"),
    "green": Decimal("0.005"),
    "blue": Decimal("0.0025"),
    "violet": Decimal("0.001"),
    "gold": Decimal("0.05"),
    "silver": Decimal("0.1"),
}
"""Tolerance either way by colour; no ring is 20 %. Colours that editions differ about are left out.

Source: IEC 60062, clause 3, from memory.
"""

RING_PPM: Mapping[str, int] = {"brown": 100, "red": 50, "yellow": 25, "orange": 15, "blue": 10, "violet": 5}
"""Change with temperature, millionths a kelvin, of the sixth ring. Source: IEC 60062, clause 3, from memory."""

LETTER_SHARES: Mapping[str, Decimal] = {
    "B": Decimal("0.001"),
    "C": Decimal("0.0025"),
    "D": Decimal("0.005"),
    "F": Decimal("0.01"),
    "G": Decimal("0.02"),
    "J": Decimal("0.05"),
    "K": Decimal("0.1"),
    "M": Decimal("0.2"),
}
"""Tolerance either way by letter. Source: IEC 60062, clause 5, from memory."""

LETTER_PICOFARADS: Mapping[str, Decimal] = {
    "B": Decimal("0.1"),
    "C": Decimal("0.25"),
    "D": Decimal("0.5"),
    "F": Decimal(1),
    "G": Decimal(2),
}
"""The same letters below 10 pF, where they are picofarads. Source: IEC 60062, clause 5, from memory."""

WIDE_TOLERANCE = ("Z", Decimal("0.8"), Decimal("0.2"))
"""The letter of +80 and -20 %. Source: IEC 60062, clause 5, from memory."""

THREE_SIGN_POWERS: Mapping[str, int] = {
    "Z": -3, "Y": -2, "X": -1, "A": 0, "B": 1, "C": 2, "D": 3, "E": 4, "F": 5,
}  # fmt: skip
"""Multiplier behind two digits that name a value of E96. Source: IEC 60062, annex A; the letters from memory."""

VOLTAGE_LETTERS: Mapping[str, Decimal] = {
    "e": Decimal("2.5"), "G": Decimal(4), "J": Decimal("6.3"), "A": Decimal(10), "C": Decimal(16), "D": Decimal(20),
    "E": Decimal(25), "V": Decimal(35), "T": Decimal(50),
}  # fmt: skip
"""Rated voltage of chip tantalums by letter. Source: common practice, from memory."""

COPPER_OHM_MM2_M = Decimal("0.017241")
"""A metre of annealed copper of 1 mm² at 20 °C, in ohm; 1/58 to the digits that tables of gauges take.

Source: IEC 60028.
"""

GAUGE_36_M = Decimal("0.005") * Decimal("0.0254")
"""Diameter of gauge 36: five thousandths of an inch. Source: ASTM B258."""

GAUGE_RATIO = 92
"""How many times gauge 36 goes into gauge 0000, 39 numbers on. Source: ASTM B258."""

SURELY_SHARE = Decimal("0.05")
"""The risk of being wrong that a clean test may leave. Source: common practice, the usual 95 % of statistics."""

CLEAN_TIMES = 3
"""Clean hours for each hour between failures: ln 20 is 2.996. Source: the rule of three of statistics."""

MEGABYTE = 10**6
MEBIBYTE = 2**20
"""Source of both: IEC 80000-13, clause 4."""

BITS_A_BYTE = 8

TANTALUM_SHARE = Decimal("0.5")
"""The most of its rated voltage that a solid tantalum bead should see.

Source: component makers' application notes for the manganese dioxide kind, to 85 °C.
"""

DIRECTORY_ENTRY_BYTES = 32
"""What one entry of a directory takes. Source: ECMA-107, 2nd edition."""

FIRST_CLUSTER = 2
"""The number of the first data cluster; as many entries of each table are taken for other things.

Source: ECMA-107, 2nd edition, 10.2 and 10.3.
"""

MOST_CLUSTERS_12 = 4084
"""The most clusters whose table has 12 bits an entry; from one more on it has 16.

Source: ECMA-107, 2nd edition, and the published specification of the file system: below 4085.
"""

MOST_CLUSTERS_16 = 65524
"""The most clusters whose table has 16 bits an entry.

Source: the published specification of the file system: below 65,525.
"""

MOST_SECTORS_16 = 65535
"""The most sectors that the old field of 16 bits for a volume's length can say. Source: ECMA-107, 2nd edition."""

LOST_SHARE_ACCEPTABLE = Decimal(61) / Decimal(10_000)
LOST_SHARE_TOO_MUCH = Decimal(3) / Decimal(10)
"""What flaws may cost: 61 KB of a drive of 10 MB is acceptable, 3 MB is not. Source of both: common practice."""
