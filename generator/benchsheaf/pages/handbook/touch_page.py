"""Limits of touch in standards, as the classes that they are."""

from decimal import Decimal

from benchsheaf.compute.laws import seconds_to_fall, stored_energy, twelve
from benchsheaf.pages.handbook.cautions import PLUG_OUT, TRAINED
from benchsheaf.pages.handbook.shape import Column, Content, Section, Table
from benchsheaf.pages.printing import number, quantity
from benchsheaf.standards import (
    BLED_S,
    DISCHARGED_V,
    EXTRA_LOW_PEAK_V,
    EXTRA_LOW_V,
    HAZARDOUS_J,
    HAZARDOUS_VA,
    HIGHEST_MAINS_RATIO,
    IMPEDANCE_LIMITS,
    LONG_TOUCH,
    UNBLED_F,
)

RESERVOIR_F, CHARGED_V, BLEEDER_OHM = Decimal("220e-6"), Decimal(325), Decimal("100e3")
LOWEST_J_V = (Decimal("150e-6"), Decimal(325))


def touch() -> Content:
    """Classes of voltage, of charge and energy, and a reservoir that none of them makes safe."""
    return Content(
        cautions=(PLUG_OUT, TRAINED),
        answer="None of these figures is a permission to touch. They are classes by which designers sort circuits. At "
        f"the bench: plug out, wait, measure, and go on under {quantity(DISCHARGED_V, 'V')}, measured.",
        sections=(_voltages(), _charges(), _reservoir()),
    )


def _voltages() -> Section:
    rows = [
        (f"Long touch, {state}", f"{quantity(alternating, 'V')} a.c.", f"{quantity(direct, 'V')} d.c.")
        for state, alternating, direct in LONG_TOUCH
    ]
    extra_low = ("Extra-low voltage", f"{quantity(EXTRA_LOW_PEAK_V, 'V')} peak", f"{quantity(EXTRA_LOW_V, 'V')} d.c.")
    return Section(
        anchor="voltages",
        title="Classes of voltage",
        told=("Local rules and licensed people decide who may work on what; these classes do not.",),
        table=Table(
            label="Classes of voltage",
            columns=(Column(name="Class"), Column(name="Alternating", n=True), Column(name="Direct", n=True)),
            rows=[*rows, extra_low],
            source="long touch IEC TS 60479-1 and IEC 60364-4-41, as given on a public page on health; extra-low IEC "
            "60950-1, as quoted on a public page. Direct means free of ripple.",
        ),
    )


def _charges() -> Section:
    rows = [(f"Behind a protective impedance, {volts}", f"at most {most}") for volts, most in IMPEDANCE_LIMITS]
    return Section(
        anchor="charges",
        title="Classes of charge and energy",
        told=(
            f"Energy under {quantity(HAZARDOUS_J, 'J')} is not classed as hazardous, and can kill all the same: see "
            "the "
            "reservoir below.",
        ),
        table=Table(
            label="Classes of charge and energy",
            columns=(Column(name="Class"), Column(name="Figure", n=True)),
            rows=[
                *rows,
                (
                    f"Mains capacitors over {UNBLED_F * 10**6} µF, after the plug is drawn",
                    f"time constant at most {quantity(BLED_S, 's')}",
                ),
                ("Hazardous energy", f"from {quantity(HAZARDOUS_J, 'J')}, or {HAZARDOUS_VA} VA at 2 V or more"),
            ],
            source="protective impedance IEC 60335-1, 8.1.4, and mains capacitors IEC 60950-1, 2.1.1.7, both as quoted "
            "on public pages; hazardous energy IEC 60950-1, from memory.",
        ),
    )


def _reservoir() -> Section:
    """A usual reservoir, worked out in general."""
    energy = stored_energy(RESERVOIR_F, CHARGED_V)
    class_s = seconds_to_fall(RESERVOIR_F, BLEEDER_OHM, CHARGED_V, EXTRA_LOW_V)
    bench_s = seconds_to_fall(RESERVOIR_F, BLEEDER_OHM, CHARGED_V, DISCHARGED_V)
    highest = twelve(CHARGED_V * HIGHEST_MAINS_RATIO)
    less = stored_energy(*LOWEST_J_V)
    return Section(
        anchor="reservoir",
        title="Why a class is no permission",
        told=(
            f"In general: {quantity(RESERVOIR_F.normalize(), 'F')} at {quantity(CHARGED_V, 'V')} hold "
            f"{number(energy, 1)} J. Through {quantity(BLEEDER_OHM.normalize(), 'ohm')} they are at {EXTRA_LOW_V} V "
            "after "
            f"{number(class_s, 1, 'up')} s and at {DISCHARGED_V} V after {number(bench_s, 1, 'up')} s, if the bleeder "
            "is whole and the capacitor no larger than printed. An open bleeder drains nothing: measure.",
            f"At the highest mains the same supply charges to {number(highest)} V. Even "
            f"{number(less, 0)} J at {LOWEST_J_V[1]} V, far below the class of hazardous energy, can kill, or throw "
            "the "
            "hand "
            "into something.",
        ),
        working=(
            f"E = C V² / 2 = {quantity(RESERVOIR_F.normalize(), 'F')} × ({CHARGED_V} V)² / 2; "
            f"t = R C ln({CHARGED_V}/{EXTRA_LOW_V}); highest mains 264/230 of nominal (above 230 V +10 %, IEC 60038).",
        ),
    )
