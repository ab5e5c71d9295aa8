"""How a machine is recognised: front and back as they are drawn, and the marks that tell it from its sisters."""

from collections.abc import Sequence
from dataclasses import dataclass

from benchsheaf.drawing.picture import Both
from benchsheaf.drawing.views import feature_words, view_pictures
from benchsheaf.markup import Markup
from benchsheaf.model.machine import Machine
from benchsheaf.model.signals import Mark, View
from benchsheaf.pages.shelf import Desk

PLACES = {
    "front": "From the front",
    "back": "From behind",
    "plate": "On the type plate",
    "inside": "Inside",
    "screen": "On the screen",
}
"""Where one looks, outside first."""


@dataclass(frozen=True, kw_only=True, slots=True)
class ViewFigure:
    """A front or a back: its drawing, and the same in words from left to right."""

    view: View
    drawing: Both
    told: str


@dataclass(frozen=True, kw_only=True, slots=True)
class MarkRow:
    """A mark, and the part that it is on."""

    mark: Mark
    part: Markup | None


@dataclass(frozen=True, kw_only=True, slots=True)
class MarkGroup:
    """The marks of one place where one looks."""

    where: str
    rows: Sequence[MarkRow]


def view_figures(machine: Machine) -> list[ViewFigure]:
    """Every view of the machine."""
    return [
        ViewFigure(view=view, drawing=view_pictures(view, f"view-{view.id}"), told=_told(view))
        for view in machine.views
    ]


def _told(view: View) -> str:
    """What a view shows, from left to right."""
    from_left = sorted(view.features, key=lambda each: (each.at.x_mm, each.at.y_mm))
    return "; ".join(feature_words(each) for each in from_left)


def mark_groups(desk: Desk, machine: Machine) -> list[MarkGroup]:
    """The marks, outside first; those of one place in the order of the file."""
    groups = []
    for seen, where in PLACES.items():
        here = [mark for mark in machine.marks if mark.seen == seen]
        rows = [MarkRow(mark=mark, part=_part(desk, mark)) for mark in here]
        groups += [MarkGroup(where=where, rows=rows)] if rows else []
    return groups


def _part(desk: Desk, mark: Mark) -> Markup | None:
    """The part that a mark is on, where its words do not name and link it already."""
    return desk.part(mark.part) if mark.part and mark.part not in f"{mark.look} {mark.here}" else None
