"""Flawed tracks of a drive: a lane for each head with cylinder 0 framed, and the runs against the limit of its rule."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from benchsheaf.compute.filesystem import FlawListFigures
from benchsheaf.drawing.axis import even_step
from benchsheaf.drawing.lettering import shortened, spread, text_width
from benchsheaf.drawing.picture import Both, Box, Line, Picture, Polygon, Run, Shape, Words, words
from benchsheaf.model.drives import Acceptance, FlawList, Geometry

LANES = (
    "One lane for each head, the cylinders from left to right; the flawed tracks of the last list are crossed, "
    "cylinder 0 is framed."
)
LIMIT = " Below: flawed tracks of each list, up to the most that is accepted."
MOST_HEADS = 16  # beyond that the lanes would be too thin to see
LANE = 20.0
ROW = 18.0


@dataclass(frozen=True, kw_only=True, slots=True)
class Layout:
    """Sizes of one of the two drawings, in pixels of its column."""

    css_class: str
    width: float
    left: float
    text: float


WIDE = Layout(css_class="wide", width=930, left=66, text=13)
PHONE = Layout(css_class="phone", width=344, left=56, text=12.5)


def flawed_tracks(
    flaws: FlawList, figures: FlawListFigures, geometry: Geometry, accept: Acceptance | None, ident: str
) -> Both | None:
    """The two drawings of a list; None where neither the places of its flaws nor a limit are known.

    Units: cylinders, heads, tracks.
    """
    tracks = sorted({(each.cylinder, each.head) for each in flaws.runs[-1].flaws})
    lanes = bool(tracks) and geometry.heads <= MOST_HEADS
    if not lanes and accept is None:
        return None
    counts = [(run.name, each.tracks) for run, each in zip(flaws.runs, figures.runs, strict=True)]
    told = "; ".join(f"{name}: {count} flawed tracks" for name, count in counts)
    limit = f", at most {accept.flawed_tracks} accepted" if accept else ""
    placed = "".join(f", cylinder {cylinder} head {head}" for cylinder, head in tracks)
    label = f"{told}{limit}. {f'Crossed: {placed[2:]}. ' if lanes else ''}The table has the same."
    caption = (LANES if lanes else "") + (LIMIT if accept else "")
    drawn = [_picture(size, tracks if lanes else [], geometry, counts, accept, ident, label) for size in (WIDE, PHONE)]
    return Both(wide=drawn[0], phone=drawn[1], caption=caption.replace(" Below: f", "F") if not lanes else caption)


def _picture(
    size: Layout,
    tracks: Sequence[tuple[int, int]],
    geometry: Geometry,
    counts: Sequence[tuple[str, int]],
    accept: Acceptance | None,
    ident: str,
    label: str,
) -> Picture:
    shapes: list[Shape] = []
    bottom = 0.0
    if tracks:
        shapes += _lanes(size, tracks, geometry)
        bottom = ROW + LANE * geometry.heads + ROW + 14
    if accept:
        shapes += _limit(size, counts, accept.flawed_tracks, bottom)
        bottom += ROW * len(counts) + 56
    return Picture(
        view_box=(0, 0, size.width, bottom),
        label=label,
        shapes=tuple(shapes),
        css_class=size.css_class,
        ident=f"{ident}-{size.css_class}",
    )


def _lanes(size: Layout, tracks: Sequence[tuple[int, int]], geometry: Geometry) -> Iterator[Shape]:
    """The heads, each with its crosses; the cylinders that have one are numbered below."""
    width = size.width - size.left - 8
    every = width / geometry.cylinders
    for head in range(geometry.heads):
        top = ROW + LANE * head
        yield words(0, top + LANE - 7, f"head {head}", size=size.text)
        yield Box(size.left, top + 2, width, LANE - 4, "body")
    frame = max(every, 7)
    yield Box(size.left - 1, ROW - 2, frame + 2, LANE * geometry.heads + 4, "outline", None, None, 2.4)
    yield words(size.left, ROW - 7, "cylinder 0", size=size.text)
    for cylinder, head in tracks:
        x = size.left + max((cylinder + 0.5) * every, frame / 2 if cylinder == 0 else 0)
        y = ROW + LANE * (head + 0.5)
        for slope in (-1, 1):
            yield Line(x - 5, y - 5 * slope, x + 5, y + 5 * slope, "running-end")
    numbers = sorted({cylinder for cylinder, _ in tracks})
    widths = [text_width(str(number), size.text) for number in numbers]
    if sum(widths) + 8 * len(widths) <= width:
        places = [size.left + (number + 0.5) * every for number in numbers]
        base = ROW + LANE * geometry.heads + ROW
        for x, number in zip(spread(places, widths, size.left, size.width, 8), numbers, strict=True):
            yield words(x, base, str(number), size=size.text)


def _limit(size: Layout, counts: Sequence[tuple[str, int]], most: int, top: float) -> Iterator[Shape]:
    """The runs on an axis of tracks; what lies beyond the limit is solid, with its bar."""
    left, right = 10.0, size.width - 60
    end = max([most * 1.5, *(count for _, count in counts), 1]) * 1.05
    y = top + ROW * len(counts) + 22

    def at(count: float) -> float:
        return round(left + count / end * (right - left), 6)

    # Half a track beyond the last that is accepted: that one is still on this side of the bar.
    bar = at(most + 0.5)
    yield Box(bar, y - 9, right - bar, 18, "stop-area")
    yield Line(left, y, bar, y, "axis", 1.4)
    yield Box(bar - 2.5, y - 16, 5, 32, "stop-bar")
    step = max(1, int(even_step(end, 10 if size is WIDE else 5)))
    for number in range(0, int(most) + 1, step):
        yield Line(at(number), y - 4, at(number), y + 4, "axis", 1)
        yield Words(at(number), y + 26, (Run(str(number)),), size.text - 1, "label2", "middle")
    text = f"over {most} tracks: not accepted"
    (start,) = spread([(bar + right) / 2], [text_width(text, size.text - 1)], bar, size.width, 0)
    yield Words(start, y + 26, (Run(text),), size.text - 1, "label bold stop-text")
    # The fewest uppermost, so that leads go down beside words and not through them.
    rows = sorted(counts, key=lambda each: each[1])
    for row, (name, count) in enumerate(rows):
        x, base = at(count), top + ROW * row + 14
        text = shortened(f"{name}: {count}", size.text, size.width)
        start = _beside(x, text_width(text, size.text), size.width, [at(earlier) for _, earlier in rows[:row]])
        yield Words(start, base, (Run(text),), size.text, "label")
        yield Line(x, base - 9, x, y - 18, "axis", 1)
        yield Polygon(((x - 5, y - 18), (x + 5, y - 18), (x, y - 9)), "slider")


def _beside(x: float, width: float, whole: float, leads: Sequence[float]) -> float:
    """Where words begin beside their lead: on the side on which they fit and no lead from above goes through them."""
    sides = [start for start in (x + 5, x - 5 - width) if start >= 0 and start + width <= whole]
    clear = [start for start in sides if not any(start < lead < start + width for lead in leads)]
    return (clear or sides or [max(0.0, whole - width)])[0]
