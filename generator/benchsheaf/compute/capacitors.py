"""How hard a capacitor is driven by the rail that it stands on."""

from dataclasses import dataclass
from decimal import Decimal

from benchsheaf.compute.laws import twelve
from benchsheaf.model.boards import Part, Volts


@dataclass(frozen=True, kw_only=True, slots=True)
class StressFigures:
    """The share of its rated voltage that a part sees: at the rail's nominal voltage, and at its high end."""

    ref: str
    rail: str
    stress_share: Decimal
    worst_stress_share: Decimal


def stress_figures(part: Part, nominal_v: Decimal, window: Volts) -> StressFigures | None:
    """The stress of a part on its rail; None where its rating or its rail is not known.

    Units: volt in; shares of the rated voltage out.
    Source: stress = volts across it / rated volts; high end of a rail means its largest magnitude.
    """
    if part.rated_v is None or part.across is None:
        return None
    worst = max(abs(window.low_v), abs(window.high_v))
    return StressFigures(
        ref=part.ref,
        rail=part.across,
        stress_share=twelve(abs(nominal_v) / part.rated_v),
        worst_stress_share=twelve(worst / part.rated_v),
    )
