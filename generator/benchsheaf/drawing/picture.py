"""A picture as plain records of shapes, and the one way in which they become markup.

Shapes are tuples with names: there are thousands to a page, and of all records that cannot be changed these are made
quickest.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import NamedTuple

from benchsheaf.drawing.attributes import coordinate, number, word
from benchsheaf.markup import Markup, escaped

Steps = tuple[tuple[str, tuple[float, ...]], ...]
"""A way: letters of the path language, each with its numbers."""


class Box(NamedTuple):
    """A rectangle; `fill` is a hatch or the colour of what is drawn, never a matter of style."""

    x: float
    y: float
    width: float
    height: float
    css_class: str
    radius: float | None = None
    fill: str | None = None
    stroke_width: float | None = None

    @property
    def svg(self) -> str:
        """As markup."""
        size = f'width="{coordinate(self.width)}" height="{coordinate(self.height)}"{number("rx", self.radius)}'
        look = word("class", self.css_class) + word("fill", self.fill) + number("stroke-width", self.stroke_width)
        return f'<rect x="{coordinate(self.x)}" y="{coordinate(self.y)}" {size}{look}/>\n'


class Line(NamedTuple):
    """A straight line."""

    x1: float
    y1: float
    x2: float
    y2: float
    css_class: str
    stroke_width: float | None = None

    @property
    def svg(self) -> str:
        """As markup."""
        start = f'x1="{coordinate(self.x1)}" y1="{coordinate(self.y1)}"'
        look = word("class", self.css_class) + number("stroke-width", self.stroke_width)
        return f'<line {start} x2="{coordinate(self.x2)}" y2="{coordinate(self.y2)}"{look}/>\n'


class Circle(NamedTuple):
    """A circle."""

    cx: float
    cy: float
    r: float
    css_class: str
    fill: str | None = None
    stroke_width: float | None = None

    @property
    def svg(self) -> str:
        """As markup."""
        place = f'cx="{coordinate(self.cx)}" cy="{coordinate(self.cy)}" r="{coordinate(self.r)}"'
        look = word("class", self.css_class) + word("fill", self.fill) + number("stroke-width", self.stroke_width)
        return f"<circle {place}{look}/>\n"


class Polygon(NamedTuple):
    """A closed run of corners."""

    points: tuple[tuple[float, float], ...]
    css_class: str
    fill: str | None = None

    @property
    def svg(self) -> str:
        """As markup."""
        corners = " ".join(f"{coordinate(x)},{coordinate(y)}" for x, y in self.points)
        return f'<polygon points="{corners}"{word("class", self.css_class)}{word("fill", self.fill)}/>\n'


class Path(NamedTuple):
    """A line of several steps, each a letter of the path language with its numbers."""

    steps: Steps
    css_class: str
    stroke_width: float | None = None

    @property
    def svg(self) -> str:
        """As markup; the letters of the path language are ours, never a contributor's."""
        way = " ".join([letter + " ".join([coordinate(each) for each in numbers]) for letter, numbers in self.steps])
        return f'<path d="{way}"{word("class", self.css_class)}{number("stroke-width", self.stroke_width)}/>\n'


class Run(NamedTuple):
    """A stretch of words in one hand."""

    text: str
    css_class: str = ""

    @property
    def svg(self) -> str:
        """As markup."""
        text = escaped(self.text)
        return f"<tspan{word('class', self.css_class)}>{text}</tspan>" if self.css_class else text


class Words(NamedTuple):
    """A line of words from a point on its base line, upright or turned so that it reads from below."""

    x: float
    y: float
    runs: tuple[Run, ...]
    size: float
    css_class: str = "label"
    anchor: str = "start"
    turned: bool = False

    @property
    def text(self) -> str:
        """The whole line."""
        return "".join(run.text for run in self.runs)

    @property
    def svg(self) -> str:
        """As markup."""
        x, y = coordinate(self.x), coordinate(self.y)
        look = f'{word("class", self.css_class)} font-size="{coordinate(self.size)}"'
        anchor = word("text-anchor", self.anchor) if self.anchor != "start" else ""
        turn = f' transform="rotate(-90 {x} {y})"' if self.turned else ""
        return f'<text x="{x}" y="{y}"{look}{anchor}{turn}>{"".join(run.svg for run in self.runs)}</text>\n'


def words(x: float, y: float, *texts: str | Run, size: float, css_class: str = "label", anchor: str = "start") -> Words:
    """A line of words of one or several hands."""
    runs = tuple(text if isinstance(text, Run) else Run(text) for text in texts)
    return Words(x, y, runs, size, css_class, anchor)


class Group(NamedTuple):
    """Shapes that belong to one part: `part` is the id of its row in the list, `href` a link to it."""

    shapes: tuple["Shape", ...]
    css_class: str = ""
    part: str | None = None
    href: str | None = None
    title: str | None = None

    @property
    def svg(self) -> str:
        """As markup, inside its link where it has one."""
        title = f"<title>{escaped(self.title)}</title>\n" if self.title else ""
        inner = "".join(shape.svg for shape in self.shapes)
        group = f"<g{word('class', self.css_class)}{word('data-part', self.part)}>\n{title}{inner}</g>"
        return f"<a{word('href', self.href)}>{group}</a>\n" if self.href else f"{group}\n"


Shape = Box | Line | Circle | Polygon | Path | Words | Group


@dataclass(frozen=True, kw_only=True, slots=True)
class Hatch:
    """Lines at 45° that fill a body; `css_class` is weak or ink."""

    ident: str
    css_class: str
    every: float = 3
    line_width: float = 0.9

    @property
    def fill(self) -> str:
        """How a shape asks for it."""
        return f"url(#{self.ident})"

    @property
    def svg(self) -> str:
        """As markup."""
        side, middle = coordinate(self.every), coordinate(self.every / 2)
        place = 'patternUnits="userSpaceOnUse" patternTransform="rotate(45)"'
        line = f'x1="{middle}" y1="0" x2="{middle}" y2="{side}" stroke-width="{coordinate(self.line_width)}"'
        return (
            f'<pattern{word("id", self.ident)} width="{side}" height="{side}" {place}>\n'
            f'<rect class="chip" width="{side}" height="{side}"/>\n'
            f'<line class="hatch-line {escaped(self.css_class)}" {line}/>\n</pattern>\n'
        )


@dataclass(frozen=True, kw_only=True, slots=True)
class Picture:
    """One drawing. Every id in it begins with `ident`; `label` says what it shows and where the same stands in words.

    `most_px` holds a small picture to its own size where the column is wider.
    """

    view_box: tuple[float, float, float, float]
    label: str
    shapes: tuple[Shape, ...]
    css_class: str
    ident: str
    hatches: tuple[Hatch, ...] = ()
    most_px: float | None = None

    @property
    def role(self) -> str:
        """What it is to a screen reader: with links in it no single image."""
        linked = any(isinstance(shape, Group) and shape.href for shape in every_shape(self.shapes))
        return "group" if linked else "img"

    @property
    def svg(self) -> str:
        """As markup."""
        box = " ".join(map(coordinate, self.view_box))
        style = f"max-width:{coordinate(self.most_px)}px" if self.most_px else None
        tag = f'<svg{word("class", self.css_class)}{word("id", self.ident)} viewBox="{box}" role="{self.role}"'
        defined = f"<defs>\n{''.join(hatch.svg for hatch in self.hatches)}</defs>\n" if self.hatches else ""
        inner = "".join(shape.svg for shape in self.shapes)
        return f"{tag}{word('style', style)}{word('aria-label', self.label)}>\n{defined}{inner}</svg>"


@dataclass(frozen=True, kw_only=True, slots=True)
class Both:
    """The same picture for a wide column and for a phone, and what a reader must know to read it."""

    wide: Picture
    phone: Picture
    caption: str = ""


def every_shape(shapes: tuple[Shape, ...]) -> Iterator[Shape]:
    """Shapes with those inside groups, in the order of drawing."""
    for shape in shapes:
        yield shape
        if isinstance(shape, Group):
            yield from every_shape(shape.shapes)


def drawn(picture: Picture) -> Markup:
    """The picture as markup to stand in a page; every text in it is escaped."""
    return Markup(picture.svg)
