"""What the weights of faults say by themselves: how much each suspect of a complaint has of them all."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from decimal import Decimal

from benchsheaf.model.bench import Shows, Symptom

WORTH_REPAIRS = 10
"""How many repairs the weights of a machine are worth where its description does not say: a convention of ours."""


@dataclass(frozen=True, kw_only=True, slots=True)
class SuspectFigures:
    """One suspect: its weight, of the sum that stands with the symptom."""

    fault: str
    weight: int


@dataclass(frozen=True, kw_only=True, slots=True)
class SymptomFigures:
    """The suspects of a complaint, the heaviest first; those whose fix cannot be undone come last."""

    id: str
    weight_sum: int
    suspects: tuple[SuspectFigures, ...]


def symptom_figures(symptom: Symptom, weights: Mapping[str, int], lasting: Sequence[str]) -> SymptomFigures:
    """The suspects of one complaint in the order in which a page lists them.

    `lasting` are the faults whose fix cannot be undone. Equal ones stay in the order of the description.
    Errors: KeyError if a suspect has no weight; links have seen to that.
    """
    order = sorted(symptom.suspects, key=lambda name: (name in lasting, -weights[name]))
    return SymptomFigures(
        id=symptom.id,
        weight_sum=sum(weights[name] for name in order),
        suspects=tuple(SuspectFigures(fault=name, weight=weights[name]) for name in order),
    )


def likeliest_first(
    weights: Mapping[str, int], shows: Mapping[str, tuple[Shows, ...]], check: str, outcome: str
) -> list[str]:
    """The faults that change a check to an outcome: the larger product of weight and likelihood stands first.

    A row without a likelihood counts in full, so the order is that of Bayes' rule before anything else is known. Equal
    ones stay in the order of `shows`.
    Errors: KeyError if a fault that shows it has no weight; links have seen to that.
    """
    products = {
        name: weights[name] * (Decimal(1) if row.likelihood_share is None else row.likelihood_share)
        for name, rows in shows.items()
        for row in rows
        if (row.check, row.outcome) == (check, outcome)
    }
    return sorted(products, key=lambda name: -products[name])
