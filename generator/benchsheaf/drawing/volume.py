"""A volume on its drive: all sectors to scale with the flawed ones crossed, and its first ones magnified."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import accumulate

from benchsheaf.compute.filesystem import LayoutFigures, LossFigures
from benchsheaf.drawing.lettering import CAP_HEIGHT, shortened, spread, text_width
from benchsheaf.drawing.picture import Both, Box, Line, Picture, Run, Shape, Words, words
from benchsheaf.model.drives import Volume

CAPTION = (
    "Above: all {sectors} sectors of the drive to scale{crossed}. Below: the first {first}, magnified; numbers are "
    "sectors."
)
CROSSED = ", those kept out crossed and numbered from the first sector of the volume"
MOST_TABLES = 3  # more of them are drawn as one piece
NARROWEST = 5.0
STRIP = 24.0
ROW = 18.0


@dataclass(frozen=True, kw_only=True, slots=True)
class Piece:
    """A stretch of the first sectors: how many, what it is, and its class."""

    sectors: int
    name: str
    css_class: str


@dataclass(frozen=True, kw_only=True, slots=True)
class Layout:
    """Sizes of one of the two drawings, in pixels of its column."""

    css_class: str
    width: float
    text: float


WIDE = Layout(css_class="wide", width=930, text=13)
PHONE = Layout(css_class="phone", width=344, text=12.5)


def volume_strip(volume: Volume, layout: LayoutFigures, loss: LossFigures | None, ident: str) -> Both:
    """The two drawings of a volume that takes the whole drive behind its hidden sectors.

    Units: sectors.
    """
    pieces = first_pieces(volume, layout)
    first = sum(piece.sectors for piece in pieces)
    told = ", ".join(f"{piece.sectors:,} {piece.name}" for piece in pieces[:-1])
    flaws = f" Flawed: {', '.join(_stretches(loss.sectors))}." if loss else ""
    label = f"Volume {volume.name} of {layout.sectors:,} sectors: {told}, then data.{flaws} The table has the same."
    drawn = [_picture(size, volume, layout, loss, pieces, ident, label) for size in (WIDE, PHONE)]
    caption = CAPTION.format(
        sectors=f"{volume.hidden + layout.sectors:,}", crossed=CROSSED if loss else "", first=f"{first:,}"
    )
    return Both(wide=drawn[0], phone=drawn[1], caption=caption)


def first_pieces(volume: Volume, layout: LayoutFigures) -> list[Piece]:
    """What lies before the data in the order of the sectors, and as much of the data as shows where it begins."""
    pieces = [Piece(sectors=volume.hidden, name="before the volume", css_class="load-3")] if volume.hidden else []
    name = "start sector" if volume.reserved == 1 else "reserved, the start sector first"
    pieces.append(Piece(sectors=volume.reserved, name=name, css_class="slider"))
    if volume.tables <= MOST_TABLES:
        for number in range(1, volume.tables + 1):
            name = f"table {number}" if volume.tables > 1 else "table"
            pieces.append(Piece(sectors=layout.table_sectors, name=name, css_class="load-2"))
    else:
        whole = layout.table_sectors * volume.tables
        pieces.append(Piece(sectors=whole, name=f"{volume.tables} tables", css_class="load-2"))
    entries = f"root directory, {volume.roots:,} entries"
    pieces.append(Piece(sectors=layout.root_sectors, name=entries, css_class="load-3"))
    shown = sum(piece.sectors for piece in pieces) // 10 + 1
    data = min(shown, layout.sectors - layout.first_data_sector)
    return [*pieces, Piece(sectors=data, name="data", css_class="chip")]


def _picture(
    size: Layout,
    volume: Volume,
    layout: LayoutFigures,
    loss: LossFigures | None,
    pieces: Sequence[Piece],
    ident: str,
    label: str,
) -> Picture:
    whole = volume.hidden + layout.sectors
    shapes: list[Shape] = []
    top = ROW + 4 if loss else 2.0
    scale = (size.width - 2) / whole
    first = sum(piece.sectors for piece in pieces)
    shapes.append(Box(1, top, size.width - 2, STRIP, "chip"))
    shapes.append(Box(1, top, max(first * scale, 2), STRIP, "load-2"))
    shapes.append(Box(1, top, size.width - 2, STRIP, "outline"))
    if loss:
        shapes += _crosses(size, volume, loss, scale, top)
    lower = top + STRIP + 26
    for start, end in ((1, 1), (1 + max(first * scale, 2), size.width - 1)):
        shapes.append(Line(start, top + STRIP, end, lower, "axis dash", 1.2))
    shapes += _magnified(size, pieces, lower)
    bottom = max((each.y for each in shapes if isinstance(each, Words)), default=lower) + 8
    return Picture(
        view_box=(0, 0, size.width, max(bottom, lower + STRIP + 4)),
        label=label,
        shapes=tuple(shapes),
        css_class=size.css_class,
        ident=f"{ident}-{size.css_class}",
    )


def _stretches(sectors: Sequence[int]) -> list[str]:
    """Sectors next to each other as one stretch."""
    found: list[list[int]] = []
    for each in sectors:
        if found and each == found[-1][-1] + 1:
            found[-1].append(each)
        else:
            found.append([each])
    return [str(run[0]) if len(run) == 1 else f"{run[0]}–{run[-1]}" for run in found]


def _crosses(size: Layout, volume: Volume, loss: LossFigures, scale: float, top: float) -> Iterator[Shape]:
    """A cross through the strip at each flaw, and their numbers above as far as there is room."""
    names = _stretches(loss.sectors)
    places = [1 + (int(name.partition("–")[0] or 0) + volume.hidden + 0.5) * scale for name in names]
    middle = top + STRIP / 2
    for x in places:
        yield Line(x, top, x, top + STRIP, "running-end", 1.4)
        for slope in (-1, 1):
            yield Line(x - 5, middle - 5 * slope, x + 5, middle + 5 * slope, "running-end")
    widths = [text_width(name, size.text) for name in names]
    if sum(widths) + 8 * len(widths) <= size.width:
        for x, name in zip(spread(places, widths, 0, size.width, 8), names, strict=True):
            yield words(x, top - 6, name, size=size.text)


def _magnified(size: Layout, pieces: Sequence[Piece], top: float) -> Iterator[Shape]:
    """The first sectors on a scale of their own: sizes inside, names below, long ones on rows of their own."""
    lefts = _edges([piece.sectors for piece in pieces], size.width - 2)
    row = 0
    # From the right, so that leads from the left go down beside words and not through them.
    for piece, left, right in reversed(list(zip(pieces, lefts, lefts[1:], strict=False))):
        yield Box(left, top, right - left, STRIP, piece.css_class)
        middle = (left + right) / 2
        number = f"{piece.sectors:,}"
        room = right - left - 6
        if piece.css_class != "slider" and piece.name != "data" and text_width(number, size.text) <= room:
            base = top + STRIP / 2 + size.text * CAP_HEIGHT / 2
            yield Words(middle, base, (Run(number),), size.text, "label bold", "middle")
            text = piece.name
        else:
            text = piece.name if piece.name == "data" else f"{number} {piece.name}"
        if text_width(text, size.text) <= room:
            yield Words(middle, top + STRIP + ROW - 2, (Run(text),), size.text, "label2", "middle")
            continue
        row += 1
        base = top + STRIP + ROW * (row + 1) - 2
        text = shortened(text, size.text, size.width)
        (start,) = spread([middle], [text_width(text, size.text)], 0, size.width, 0)
        yield Line(middle, top + STRIP, middle, base - size.text, "axis", 1)
        yield Words(start, base, (Run(text),), size.text, "label2")
    yield Box(1, top, size.width - 2, STRIP, "outline")


def _edges(sectors: Sequence[int], width: float) -> list[float]:
    """Where each piece begins, and the last ends: by its sectors, but none too narrow to be seen."""
    narrow = {place for place, each in enumerate(sectors) if each * width < NARROWEST * sum(sectors)}
    rest = sum(each for place, each in enumerate(sectors) if place not in narrow) or 1
    free = width - NARROWEST * len(narrow)
    widths = [NARROWEST if place in narrow else each * free / rest for place, each in enumerate(sectors)]
    return [1.0, *(round(1 + end, 6) for end in accumulate(widths))]
