"""All machines and all that they share, as one record."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from typing import Any

from benchsheaf.conformity import Conformed
from benchsheaf.model.bench import Repair
from benchsheaf.model.building import built
from benchsheaf.model.cards import Bus, Card, Keyboard
from benchsheaf.model.cautions import Caution, Cautions
from benchsheaf.model.displays import Display, Medium, Term, Terms
from benchsheaf.model.drives import Drive
from benchsheaf.model.machine import Machine
from benchsheaf.model.practice import Fact, Practice
from benchsheaf.model.sources import SourceEntry
from benchsheaf.model.supply import Supply

RECORDS: Mapping[str, type] = {
    "machine": Machine,
    "supply": Supply,
    "drive": Drive,
    "card": Card,
    "keyboard": Keyboard,
    "bus": Bus,
    "display": Display,
    "medium": Medium,
    "cautions": Cautions,
    "terms": Terms,
    "practice": Practice,
    "repair": Repair,
}


@dataclass(frozen=True, kw_only=True, slots=True)
class Collection:
    """Everything that stands in a folder of descriptions, by slug."""

    machines: Mapping[str, Machine] = field(default_factory=dict)
    supplies: Mapping[str, Supply] = field(default_factory=dict)
    drives: Mapping[str, Drive] = field(default_factory=dict)
    cards: Mapping[str, Card] = field(default_factory=dict)
    keyboards: Mapping[str, Keyboard] = field(default_factory=dict)
    buses: Mapping[str, Bus] = field(default_factory=dict)
    displays: Mapping[str, Display] = field(default_factory=dict)
    media: Mapping[str, Medium] = field(default_factory=dict)
    cautions: Mapping[str, Caution] = field(default_factory=dict)
    terms: Mapping[str, Term] = field(default_factory=dict)
    term_sources: tuple[SourceEntry, ...] = ()
    practice: tuple[Fact, ...] = ()
    practice_sources: tuple[SourceEntry, ...] = ()
    repairs: Mapping[str, Repair] = field(default_factory=dict)

    repairs_of: Mapping[str, tuple[Repair, ...]] = field(default_factory=dict)
    """The repair records of each machine that has some, in the order of their dates."""


def records_by_kind(collection: Collection) -> Mapping[str, Mapping[str, object]]:
    """The machines and all that they share, by kind and slug."""
    return {
        "machine": collection.machines,
        "supply": collection.supplies,
        "drive": collection.drives,
        "card": collection.cards,
        "keyboard": collection.keyboards,
        "bus": collection.buses,
        "display": collection.displays,
        "medium": collection.media,
    }


def record_of(conformed: Conformed) -> object:
    """The record of one thing that is without a mistake."""
    entry = conformed.entry
    return built(RECORDS[entry.kind], conformed.values, conformed.kind, slug=entry.slug)


def collection(records: Mapping[tuple[str, str], Any]) -> Collection:
    """The records of all things, by kind and slug, as one."""
    made: dict[str, dict[str, Any]] = {kind: {} for kind in RECORDS}
    for kind, slug in sorted(records):
        made[kind][slug] = records[kind, slug]
    return Collection(
        machines=made["machine"],
        supplies=made["supply"],
        drives=made["drive"],
        cards=made["card"],
        keyboards=made["keyboard"],
        buses=made["bus"],
        displays=made["display"],
        media=made["medium"],
        cautions={each.id: each for one in made["cautions"].values() for each in one.cautions},
        terms={each.id: each for one in made["terms"].values() for each in one.terms},
        term_sources=tuple(each for one in made["terms"].values() for each in one.sources),
        practice=tuple(each for one in made["practice"].values() for each in one.practice),
        practice_sources=tuple(each for one in made["practice"].values() for each in one.sources),
        repairs=made["repair"],
        repairs_of=_by_machine(made["repair"].values()),
    )


def _by_machine(repairs: Iterable[Repair]) -> dict[str, tuple[Repair, ...]]:
    found: dict[str, list[Repair]] = {}
    for each in sorted(repairs, key=lambda repair: (repair.date, repair.slug)):
        found.setdefault(each.machine, []).append(each)
    return {slug: tuple(several) for slug, several in found.items()}
