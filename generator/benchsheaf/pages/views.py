"""What several pages show, made ready so that a template only prints it."""

from collections.abc import Sequence
from dataclasses import dataclass

from benchsheaf import urls
from benchsheaf.compute.reservoir import ReservoirFigures
from benchsheaf.compute.storage import StorageFigures
from benchsheaf.drawing.discharge import discharge_curve
from benchsheaf.drawing.interleave import interleave_ring
from benchsheaf.drawing.picture import Both
from benchsheaf.links import Thing
from benchsheaf.markup import Markup, escaped
from benchsheaf.model.cautions import CautionHere
from benchsheaf.model.drives import Drive
from benchsheaf.model.supply import Reservoir
from benchsheaf.pages.part_lists import WeakView, weak_views
from benchsheaf.pages.printing import figure, quantity
from benchsheaf.pages.shelf import Desk
from benchsheaf.pages.volumes import FlawListView, VolumeView, flaw_list_views, volume_views
from benchsheaf.standards import DISCHARGED_V, EXTRA_LOW_V


@dataclass(frozen=True, kw_only=True, slots=True)
class CautionView:
    """A caution: its sign, the order itself, the rest, what is stopped, and the way to more."""

    ident: str
    sign: str
    order: Markup
    says: Markup
    stop: Markup | None = None
    more: str | None = None
    more_words: str = ""


@dataclass(frozen=True, kw_only=True, slots=True)
class ReservoirView:
    """The charge of a supply, its figures, and the standards they are measured by."""

    reservoir: Reservoir
    figures: ReservoirFigures
    part: Markup
    bleeder_part: Markup | None
    curve: Both | None
    discharged_v: object = DISCHARGED_V
    extra_low_v: object = EXTRA_LOW_V


@dataclass(frozen=True, kw_only=True, slots=True)
class DriveView:
    """A drive with its figures."""

    drive: Drive
    figures: StorageFigures
    ring: Both | None
    weak: Sequence[WeakView]
    volumes: Sequence[VolumeView] = ()
    flaw_lists: Sequence[FlawListView] = ()
    where: str = ""
    way: str = ""


@dataclass(frozen=True, kw_only=True, slots=True)
class Named:
    """Something with a page."""

    name: str
    way: str
    summary: str = ""
    first_power: str = ""


def machine_caution(desk: Desk, written: CautionHere, of: Thing | None = None) -> CautionView:
    """A caution as a machine words it, or something that it holds, with the way to what its sign asks everywhere."""
    shared = desk.shelf.collection.cautions[written.caution]
    return CautionView(
        ident=f"caution-{written.id}",
        sign=shared.sign,
        order=desk.told(written.order, of),
        says=desk.told(written.says, of),
        stop=desk.told(written.stop, of) if written.stop else None,
        more=desk.href(urls.CAUTIONS, shared.id),
        more_words="What this sign asks",
    )


def brief_caution(desk: Desk, place: str, name: str) -> CautionView:
    """A shared danger at the head of a procedure or of a thing's faults, with the way to what its sign asks."""
    shared = desk.shelf.collection.cautions[name]
    return CautionView(
        ident=f"{place}-caution-{shared.id}",
        sign=shared.sign,
        order=Markup(escaped(shared.order)),
        says=Markup(""),
        more=desk.href(urls.CAUTIONS, shared.id),
        more_words="What this sign asks",
    )


def charge_caution(desk: Desk, supply: str, reservoir: Reservoir, figures: ReservoirFigures, way: str) -> CautionView:
    """The caution about stored charge, worked out from the supply's own figures."""
    volts = quantity(reservoir.charged_v, "V")
    wait = figure(figures, "wait_minutes", 0)
    energy = figure(figures, "stored_energy_j")
    broken = "If the bleeder is broken it is still charged." if figures.bleeder else "Nothing drains it."
    return CautionView(
        ident="caution-stored-charge",
        sign="stored-charge",
        order=Markup("Supply open: pull the plug, wait {}, then measure.").format(wait),
        says=Markup("{} holds {} at {}, more at the highest mains. {}").format(
            desk.part(f"{supply}/{reservoir.part}", brief=True), energy, volts, broken
        ),
        more=way,
        more_words="How the wait is worked out",
    )


def reservoir_view(desk: Desk, reservoir: Reservoir, figures: ReservoirFigures, slug: str) -> ReservoirView:
    """The section about stored charge of one supply."""
    bleeder = desk.part(f"{slug}/{reservoir.bleeder_part}") if reservoir.bleeder_part else None
    curve = discharge_curve(reservoir, figures, "discharge") if figures.bleeder else None
    part = desk.part(f"{slug}/{reservoir.part}")
    return ReservoirView(reservoir=reservoir, figures=figures, part=part, bleeder_part=bleeder, curve=curve)


def drive_view(desk: Desk, drive: Drive, where: str = "", *, weak: bool = True) -> DriveView:
    """A drive with its ring of sectors and its weak parts."""
    workup = desk.shelf.workup.drives[drive.slug]
    figures = workup.storage
    ring = interleave_ring(figures.interleave, figures.track, f"ring-{drive.slug}") if figures.interleave else None
    rows = weak_views(desk, drive.weak_parts, desk.shelf.own_parts("drive", drive.slug), (), f"{drive.slug}/")
    return DriveView(
        drive=drive,
        figures=figures,
        ring=ring,
        weak=rows if weak else (),
        volumes=volume_views(drive, workup),
        flaw_lists=flaw_list_views(desk, drive, workup),
        where=where,
        way=desk.thing("drive", drive.slug),
    )
