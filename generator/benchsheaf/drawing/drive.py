"""A drive from above or below: the parts that a repair meets, where they sit."""

from collections.abc import Mapping
from decimal import Decimal

from benchsheaf.drawing.board import board_pictures
from benchsheaf.drawing.picture import Both
from benchsheaf.model.boards import Extent, Part
from benchsheaf.model.drives import Drive, DrivePart

SPOT = Extent(x_mm=Decimal(6), y_mm=Decimal(6))
"""How large a part is drawn of which only the spot is known: as a target, not as a body."""


def drive_pictures(drive: Drive, weak: Mapping[str, str], ident: str, links: Mapping[str, str]) -> Both | None:
    """The two drawings of a drive; None where its size or the places of its parts are not known.

    `weak` gives for a designator the id of its row in the list, `links` the address of that row.
    """
    parts = [part for each in drive.parts if (part := _placed(each))]
    if drive.body is None or not parts:
        return None
    size = Extent(x_mm=drive.body.x_mm, y_mm=drive.body.y_mm)
    side = (drive.seen or "").partition(",")[0]
    seen = f"seen {side}" if side else ""
    both = board_pictures(size, parts, (), weak, ident, links, back="front edge", seen=seen)
    spots = [each.ref for each in drive.parts if each.at and not each.body]
    unknown = f" A target is a spot only, no size: {', '.join(spots)}." if spots else ""
    return Both(wide=both.wide, phone=both.phone, caption=both.caption + unknown)


def _placed(one: DrivePart) -> Part | None:
    if one.at is None:
        return None
    kind = "mechanical" if one.body else "test-pin"
    return Part(ref=one.ref, kind=kind, name=one.name, at=one.at, body=one.body or SPOT)
