"""Pages across all machines: where to start, and what the signs ask."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from benchsheaf import urls
from benchsheaf.drawing.picture import Picture
from benchsheaf.drawing.sheaf import sheaf_big
from benchsheaf.pages.bench.ways import anchor
from benchsheaf.pages.frame import loose_frame
from benchsheaf.pages.glance import all_cautions
from benchsheaf.pages.missing import missing_count
from benchsheaf.pages.page import Page
from benchsheaf.pages.shelf import Desk, Shelf
from benchsheaf.pages.views import CautionView, Named


@dataclass(frozen=True, kw_only=True, slots=True)
class Complaint:
    """What owners say, and the machines on whose sheets it stands."""

    says: str
    machines: Sequence[Named]


@dataclass(frozen=True, kw_only=True, slots=True)
class Home:
    """The first page: ways in by whatever one has."""

    machines: Sequence[Named]
    parts: Sequence[tuple[str, Sequence[Named]]]
    weak: Sequence[Named]
    dangers: Sequence[Named]
    sheaf: Picture
    data: str
    manual: str
    missing: str
    missing_count: int
    terms: str | None
    complaints: Sequence[Complaint]
    sounds: Sequence[Named]


@dataclass(frozen=True, kw_only=True, slots=True)
class DangerRow:
    """A shared caution and the machines that carry it."""

    view: CautionView
    machines: Sequence[Named]


@dataclass(frozen=True, kw_only=True, slots=True)
class CautionsPage:
    """All shared cautions."""

    rows: Sequence[DangerRow]


def across_pages(shelf: Shelf) -> Iterator[Page]:
    """The pages that belong to no single thing."""
    yield Page(address=urls.HOME, title="Where to start", written=lambda: _home(shelf.desk(urls.HOME)))
    if shelf.collection.cautions:
        path = shelf.edit_path(("cautions", "cautions"), "cautions")
        yield Page(
            address=urls.CAUTIONS, title="Cautions", written=lambda: _cautions(shelf.desk(urls.CAUTIONS)), edit=path
        )


KINDS_SPOKEN = (
    ("Supplies", "supply"),
    ("Drives", "drive"),
    ("Cards", "card"),
    ("Keyboards", "keyboard"),
    ("Displays", "display"),
    ("Media", "medium"),
    ("Buses", "bus"),
)


def _home(desk: Desk) -> str:
    collection = desk.shelf.collection
    machines = [
        Named(
            name=each.name,
            way=desk.sheet("glance", slug=slug),
            summary=desk.told(each.summary, ("machine", slug)),
            first_power=desk.sheet("first-power", slug=slug),
        )
        for slug, each in collection.machines.items()
    ]
    parts = []
    for words, kind in KINDS_SPOKEN:
        slugs = [slug for (other, slug) in sorted(desk.shelf.things) if other == kind]
        rows = [Named(name=desk.shelf.name_of(kind, slug), way=desk.thing(kind, slug)) for slug in slugs]
        if rows:
            parts.append((words, rows))
    home = Home(
        machines=machines,
        parts=parts,
        weak=[
            Named(name=each.name, way=desk.sheet("boards", slug=slug))
            for slug, each in collection.machines.items()
            if each.boards
        ],
        dangers=[
            Named(name=each.order.rstrip("."), way=desk.href(urls.CAUTIONS, each.id))
            for each in collection.cautions.values()
        ],
        sheaf=sheaf_big("sheaf"),
        data=desk.href(urls.INDEX_DATA),
        manual=desk.href(urls.MANUAL),
        missing=desk.href(urls.MISSING),
        missing_count=missing_count(desk.shelf),
        terms=desk.href(urls.TERMS) if collection.terms else None,
        complaints=_complaints(desk),
        sounds=[
            Named(name=each.name, way=desk.sheet("beeps", slug=slug))
            for slug, each in collection.machines.items()
            if each.beeps or each.messages
        ],
    )
    return desk.printed("home.html", home=home)


def _complaints(desk: Desk) -> list[Complaint]:
    """Every complaint once, in the order in which it comes up, with the machines that have it."""
    found: dict[str, list[Named]] = {}
    for slug, machine in desk.shelf.collection.machines.items():
        for symptom in machine.symptoms:
            way = desk.sheet("finding", anchor("symptom", symptom.id), slug)
            says = desk.worded(symptom.says, ("machine", slug))
            found.setdefault(says, []).append(Named(name=machine.name, way=way))
    return [Complaint(says=says, machines=machines) for says, machines in found.items()]


def _cautions(desk: Desk) -> str:
    rows = []
    for each in desk.shelf.collection.cautions.values():
        view = CautionView(ident=each.id, sign=each.sign, order=desk.told(each.order), says=desk.told(each.says))
        machines = [
            Named(name=machine.name, way=desk.sheet("glance", slug=slug))
            for slug, machine in desk.shelf.collection.machines.items()
            if any(own.caution == each.id for _, own in all_cautions(desk, machine))
        ]
        rows.append(DangerRow(view=view, machines=machines))
    frame = loose_frame(desk, "All machines", "Cautions")
    return desk.printed("cautions.html", page=CautionsPage(rows=rows), frame=frame)
