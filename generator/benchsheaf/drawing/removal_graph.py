"""What must come off before what: frames with their minutes, and arrows from what comes first."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from benchsheaf.compute.removal import RemovalFigures
from benchsheaf.drawing.lettering import Frame, wrapped
from benchsheaf.drawing.picture import Both, Box, Group, Line, Path, Picture, Polygon, Run, Shape, words
from benchsheaf.drawing.removal_columns import Cell, Grid, directly, grid
from benchsheaf.drawing.told import as_written, told
from benchsheaf.model.bench import Removal

CAPTION = (
    "Each frame is something that comes off: in its head its own minutes, below them the minutes of all that it takes "
    "from a closed machine. What must be off first stands to its left or is named in it."
)
WIDTH = 920.0
PHONE_WIDTH = 344.0
GAP = 46.0
LEAST_FRAME = 128.0  # a narrower one would break most names
MOST_FRAME = 196.0
HEAD = 25.0
LINE = 16.5
TEXT = 13.0
BETWEEN = 18.0
THROUGH = 14.0
TIP = 9.0


@dataclass(frozen=True, kw_only=True, slots=True)
class Step:
    """One removal as it is drawn: its number in one order that works, and the numbers of what it comes after."""

    number: int
    removal: Removal
    figures: RemovalFigures
    after: tuple[int, ...]
    href: str | None

    @property
    def own(self) -> str:
        """Its own minutes."""
        return as_written(self.removal.off_minutes, "min")

    @property
    def whole(self) -> str:
        """The minutes from a closed machine."""
        return f"in all {told(self.figures, 'off_minutes', 'min', 1)}"

    @property
    def following(self) -> str:
        """What it comes after, by numbers."""
        several = [str(each) for each in self.after]
        return f"after {', '.join(several[:-1])} and {several[-1]}" if several[1:] else f"after {''.join(several)}"


def removal_graph(
    removals: Sequence[Removal], figures: Sequence[RemovalFigures], order: Sequence[str], hrefs: Mapping[str, str]
) -> Both:
    """The two drawings of what comes off: columns with arrows, and for a phone a numbered list.

    Units: minutes by hand. `order` is one order that works, and gives the numbers; `hrefs` lead to its rows.
    """
    steps = _steps(removals, figures, order, hrefs)
    spoken = "; ".join(
        f"{step.number} {step.removal.name}, {step.own}" + (f", {step.following}" if step.after else "")
        for step in steps
    )
    label = f"Order of taking apart: {spoken}. The list has the same."
    cells = grid([step.after for step in steps])
    across = len(cells.columns)
    frame = min(MOST_FRAME, (WIDTH - GAP * (across - 1)) / max(1, across))
    wide = (
        _graph(steps, cells, frame, label) if frame >= LEAST_FRAME else _listed(steps, 2 * PHONE_WIDTH, "wide", label)
    )
    return Both(wide=wide, phone=_listed(steps, PHONE_WIDTH, "phone", label), caption=CAPTION)


def _steps(
    removals: Sequence[Removal], figures: Sequence[RemovalFigures], order: Sequence[str], hrefs: Mapping[str, str]
) -> list[Step]:
    by_name = {each.id: each for each in removals}
    made = {each.id: each for each in figures}
    number = {name: place for place, name in enumerate(order, 1)}
    before = directly({name: by_name[name].after for name in order}, {name: made[name].way for name in order})
    return [
        Step(
            number=number[name],
            removal=by_name[name],
            figures=made[name],
            after=tuple(sorted(number[each] for each in before[name])),
            href=hrefs.get(name),
        )
        for name in order
    ]


def _graph(steps: Sequence[Step], cells: Grid, width: float, label: str) -> Picture:
    lines = {step.number: wrapped(step.removal.name, TEXT, width - 18) for step in steps}
    heights = {number: HEAD + LINE * (len(each) + 1) + 12 for number, each in lines.items()}
    places = _places(cells, heights, width)
    frames = {cell.number: frame for cell, frame in places.items() if cell.target is None}
    shapes: list[Shape] = [*_lines(cells, places)]
    shapes += [_frame(step, frames[step.number], lines[step.number], step.whole) for step in steps]
    right = max((frame.right for frame in places.values()), default=0)
    bottom = max((frame.bottom for frame in places.values()), default=0)
    return Picture(
        view_box=(-1, -1, right + 2, bottom + 2),
        label=label,
        shapes=tuple(shapes),
        css_class="wide",
        ident="removals-wide",
        most_px=right + 2,
    )


def _places(cells: Grid, heights: Mapping[int, float], width: float) -> dict[Cell, Frame]:
    """Where each cell stands: columns from left to right, each in the middle of the height."""
    sizes = {
        cell: heights[cell.number] if cell.target is None else THROUGH for column in cells.columns for cell in column
    }
    tall = [sum(sizes[cell] for cell in column) + BETWEEN * (len(column) - 1) for column in cells.columns]
    places = {}
    for place, column in enumerate(cells.columns):
        left = place * (width + GAP)
        top = (max(tall) - tall[place]) / 2
        for cell in column:
            places[cell] = Frame(left, top, left + width, top + sizes[cell])
            top += sizes[cell] + BETWEEN
    return places


def _lines(cells: Grid, places: Mapping[Cell, Frame]) -> Iterator[Shape]:
    """A line for each pair of cells; the upright pieces of one column stand side by side."""
    for column in cells.columns:
        sources = [cell for cell in column if any(one == cell for one, _ in cells.joined)]
        for place, cell in enumerate(sources):
            turn = places[cell].right + 9 + (GAP - 18 - TIP) * (place + 0.5) / len(sources)
            for _, other in (pair for pair in cells.joined if pair[0] == cell):
                yield from _line(places[cell], places[other], turn, _port(cells, cell, other), other.target is None)
        for cell in column:
            if cell.target is not None:
                left, middle = places[cell].left, places[cell].centre[1]
                yield Line(left, middle, places[cell].right, middle, "arrow-line")


def _port(cells: Grid, cell: Cell, other: Cell) -> float:
    """How far from the middle of the other cell a line ends, so that several do not fall on each other."""
    column = cells.columns[cell.column]
    into = sorted((one for one, there in cells.joined if there == other), key=column.index)
    return (into.index(cell) - (len(into) - 1) / 2) * 14


def _line(start: Frame, end: Frame, turn: float, port: float, ends: bool) -> Iterator[Shape]:
    """From the right edge of one to the left edge of the other, with a tip where it ends."""
    there = end.centre[1] + port
    stop = end.left - (TIP if ends else 0)
    yield Path((("M", (start.right, start.centre[1])), ("H", (turn,)), ("V", (there,)), ("H", (stop,))), "arrow-line")
    if ends:
        yield Polygon(((end.left, there), (end.left - TIP, there - 4.5), (end.left - TIP, there + 4.5)), "arrow-tip")


def _frame(step: Step, frame: Frame, lines: Sequence[str], under: str) -> Group:
    """A frame with number and minutes in its head, the name, and a line of smaller words."""
    shapes: list[Shape] = [
        Box(frame.left, frame.top, frame.width, frame.height, "step-frame"),
        Line(frame.left, frame.top + HEAD, frame.right, frame.top + HEAD, "outline", 1),
        words(frame.left + 9, frame.top + 17, Run(str(step.number), "bold"), size=TEXT),
        words(frame.right - 9, frame.top + 17, step.own, size=TEXT, css_class="label2", anchor="end"),
    ]
    y = frame.top + HEAD + LINE
    for line in lines:
        shapes.append(words(frame.left + 9, y, Run(line, "bold"), size=TEXT))
        y += LINE
    shapes.append(words(frame.left + 9, y, under, size=TEXT, css_class="label2"))
    return Group(tuple(shapes), href=step.href)


def _listed(steps: Sequence[Step], width: float, css_class: str, label: str) -> Picture:
    """All frames one below the other in their order, each with what it comes after."""
    shapes: list[Shape] = []
    top = 0.0
    for step in steps:
        lines = wrapped(step.removal.name, TEXT, width - 20)
        under = f"{step.following}; {step.whole}" if step.after else step.whole
        height = HEAD + LINE * (len(lines) + 1) + 12
        shapes.append(_frame(step, Frame(0, top, width, top + height), lines, under))
        top += height + BETWEEN / 2
    return Picture(
        view_box=(-1, -1, width + 2, top + 2),
        label=label,
        shapes=tuple(shapes),
        css_class=css_class,
        ident=f"removals-{css_class}",
        most_px=width + 2,
    )
