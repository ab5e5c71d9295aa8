"""Where each part of a board lies in the picture's own units, and how its body is drawn."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from decimal import Decimal

from benchsheaf.drawing.lettering import Frame, around, text_width
from benchsheaf.drawing.picture import Box, Circle, Line, Path, Polygon, Shape, Steps
from benchsheaf.model.boards import Part, PartRow

BEAD_UNDER_MM = Decimal(8)
"""A weak part that is smaller than this both ways is drawn as the diamond alone: a hatch in it could not be seen."""

ROUND_KINDS = ("electrolytic", "cell", "socket", "tantalum", "test-pin")
NOTCHED_KINDS = ("chip", "memory")

LETTERING_ON_SLOT = 6.6
"""Size of a slot's designator at its end; the middle line stops before it, for between letters it would be a hyphen."""


@dataclass(frozen=True, kw_only=True, slots=True)
class Spot:
    """A part in the picture: its body's frame, the row of the list that speaks of it, and a link there."""

    part: Part
    frame: Frame
    is_weak: bool
    anchor: str | None
    href: str | None

    @property
    def is_bead(self) -> bool:
        """Whether the diamond stands for its whole body."""
        body = self.part.body
        return self.is_weak and max(body.x_mm, body.y_mm) < BEAD_UNDER_MM

    @property
    def is_hatched(self) -> bool:
        """Whether its body is drawn and marked."""
        return self.is_weak and not self.is_bead

    @property
    def is_round(self) -> bool:
        """Whether it is a can or a coin, drawn as a circle."""
        return self.part.kind in ROUND_KINDS and abs(self.frame.width - self.frame.height) <= 0.1 * self.frame.width

    @property
    def inner(self) -> Frame:
        """The square within a circle, where words and marks belong to it; of other bodies the body itself."""
        return self.frame.grown(-0.146 * min(self.frame.width, self.frame.height)) if self.is_round else self.frame

    @property
    def is_upright(self) -> bool:
        """Whether the body is higher than wide."""
        return self.frame.height > self.frame.width

    @property
    def title(self) -> str:
        """The part in words."""
        return f"{self.part.ref}: {self.part.name}" if self.part.name else self.part.ref


def spot(part: Part, scale: float, weak: Mapping[str, str], links: Mapping[str, str]) -> Spot:
    """A part at its place; scale in units a millimetre."""
    href = links.get(part.ref)
    named = href.partition("#")[2] if href else None
    return Spot(
        part=part,
        frame=around(
            float(part.at.x_mm) * scale,
            float(part.at.y_mm) * scale,
            float(part.body.x_mm) * scale,
            float(part.body.y_mm) * scale,
        ),
        is_weak=part.ref in weak,
        anchor=weak.get(part.ref) or named or None,
        href=href,
    )


Neighbours = tuple[Spot, ...]
"""A part, or weak parts side by side in a row, which have one mark at the head of their row."""


def neighbours(
    parts: Sequence[Part], rows: Sequence[PartRow], scale: float, weak: Mapping[str, str], links: Mapping[str, str]
) -> tuple[Neighbours, ...]:
    """All parts of a board in the order of its file, hatched ones of a row together."""
    found: list[Neighbours] = [(spot(part, scale, weak, links),) for part in parts]
    for row in rows:
        together: list[Spot] = []
        for one in (spot(part, scale, weak, links) for part in row.parts()):
            if together and not (one.is_hatched and together[-1].is_hatched):
                found.append(tuple(together))
                together = []
            together.append(one)
        found.append(tuple(together))
    return tuple(found)


def ref_range(refs: Sequence[str]) -> str:
    """Designators of a row in short: the first and the last."""
    return refs[0] if len(refs) == 1 else f"{refs[0]} {refs[1]}" if len(refs) == 2 else f"{refs[0]}–{refs[-1]}"


def diamond(x: float, y: float, half: float) -> Polygon:
    """The mark of a weak part."""
    return Polygon(((x, y - half), (x + half, y), (x, y + half), (x - half, y)), "diamond")


def body(one: Spot, hatch: str) -> tuple[Shape, ...]:
    """The body of a part: its outline, and what tells its kind."""
    frame = one.frame
    x, y = frame.centre
    css_class, fill = ("body weak", hatch) if one.is_weak else ("body", None)
    if one.part.kind == "test-pin":
        r = max(frame.width / 2, 2.4)
        return Circle(x, y, r, css_class, fill), Circle(x, y, r * 0.4, "axis", stroke_width=r * 0.5)
    if one.is_round:
        return (Circle(x, y, frame.width / 2, css_class, fill),)
    radius = min(frame.width, frame.height) / 3 if one.part.kind in ("crystal", "resistor", "tantalum") else 1
    box = Box(frame.left, frame.top, frame.width, frame.height, css_class, radius, fill)
    return (box, *_inner(one))


def _inner(one: Spot) -> tuple[Shape, ...]:
    frame, kind = one.frame, one.part.kind
    if kind in NOTCHED_KINDS:
        return (_notch(frame, one.is_upright),)
    if kind == "slot":
        length = max(frame.width, frame.height)
        kept = text_width(one.part.ref, LETTERING_ON_SLOT, mono=True) + 6
        return (_along(one, 3, length - (kept if kept < length * 0.6 else 3), "axis"),)
    if kind == "plug":
        return (_along(one, 2, max(frame.width, frame.height) - 2, "axis dash"),)
    if kind == "jumper":
        count = min(one.part.pins or 2, 20)
        return tuple(Circle(*_point(one, (k + 0.5) / count), 0.6, "axis", stroke_width=0.8) for k in range(count))
    return ()


def _notch(frame: Frame, upright: bool) -> Path:
    x, y = frame.centre
    r = min(frame.width, frame.height) / 6
    if upright:
        steps: Steps = (("M", (x - r, frame.top)), ("A", (r, r, 0, 0, 0, x + r, frame.top)))
    else:
        steps = (("M", (frame.left, y - r)), ("A", (r, r, 0, 0, 1, frame.left, y + r)))
    return Path(steps, "axis", 0.8)


def _along(one: Spot, start: float, end: float, css_class: str) -> Line:
    """A line in the middle of a body, between two distances from its left or upper end."""
    frame = one.frame
    x, y = frame.centre
    if one.is_upright:
        return Line(x, frame.top + start, x, frame.top + end, css_class, 0.8)
    return Line(frame.left + start, y, frame.left + end, y, css_class, 0.8)


def _point(one: Spot, share: float) -> tuple[float, float]:
    """A point in the middle of a body, at a share of its length."""
    frame = one.frame
    x, y = frame.centre
    if one.is_upright:
        return x, frame.top + frame.height * share
    return frame.left + frame.width * share, y
