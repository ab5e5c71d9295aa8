"""A picture as plain records of shapes, and the one way in which they become markup."""

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache
from pathlib import Path as FilePath
from typing import ClassVar

from benchsheaf.markup import Markup, Templates, templates

Attributes = tuple[tuple[str, str], ...]
Steps = tuple[tuple[str, tuple[float, ...]], ...]
"""A way: letters of the path language, each with its numbers."""


def coordinate(value: float) -> str:
    """A length or a place with at most two decimals, the same on every machine; never minus nought."""
    text = f"{value:.2f}".rstrip("0").rstrip(".")
    return "0" if text == "-0" else text


def _given(**attributes: str | float | None) -> Attributes:
    """Attributes that have a value; `_` in a name stands for the hyphen of markup, a last one is dropped."""
    return tuple(
        (name.rstrip("_").replace("_", "-"), value if isinstance(value, str) else coordinate(value))
        for name, value in attributes.items()
        if value is not None and value != ""
    )


@dataclass(frozen=True, slots=True)
class Box:
    """A rectangle; `fill` is a hatch or the colour of what is drawn, never a matter of style."""

    tag: ClassVar[str] = "rect"
    x: float
    y: float
    width: float
    height: float
    css_class: str
    radius: float | None = None
    fill: str | None = None
    stroke_width: float | None = None

    @property
    def attributes(self) -> Attributes:
        """What stands in the tag."""
        size = _given(x=self.x, y=self.y, width=self.width, height=self.height, rx=self.radius)
        return size + _given(class_=self.css_class, fill=self.fill, stroke_width=self.stroke_width)


@dataclass(frozen=True, slots=True)
class Line:
    """A straight line."""

    tag: ClassVar[str] = "line"
    x1: float
    y1: float
    x2: float
    y2: float
    css_class: str
    stroke_width: float | None = None

    @property
    def attributes(self) -> Attributes:
        """What stands in the tag."""
        ends = _given(x1=self.x1, y1=self.y1, x2=self.x2, y2=self.y2)
        return ends + _given(class_=self.css_class, stroke_width=self.stroke_width)


@dataclass(frozen=True, slots=True)
class Circle:
    """A circle."""

    tag: ClassVar[str] = "circle"
    cx: float
    cy: float
    r: float
    css_class: str
    fill: str | None = None
    stroke_width: float | None = None

    @property
    def attributes(self) -> Attributes:
        """What stands in the tag."""
        return _given(
            cx=self.cx, cy=self.cy, r=self.r, class_=self.css_class, fill=self.fill, stroke_width=self.stroke_width
        )


@dataclass(frozen=True, slots=True)
class Polygon:
    """A closed run of corners."""

    tag: ClassVar[str] = "polygon"
    points: tuple[tuple[float, float], ...]
    css_class: str
    fill: str | None = None

    @property
    def attributes(self) -> Attributes:
        """What stands in the tag."""
        corners = " ".join(f"{coordinate(x)},{coordinate(y)}" for x, y in self.points)
        return _given(points=corners, class_=self.css_class, fill=self.fill)


@dataclass(frozen=True, slots=True)
class Path:
    """A line of several steps, each a letter of the path language with its numbers."""

    tag: ClassVar[str] = "path"
    steps: Steps
    css_class: str
    stroke_width: float | None = None

    @property
    def attributes(self) -> Attributes:
        """What stands in the tag."""
        way = " ".join(letter + " ".join(map(coordinate, numbers)) for letter, numbers in self.steps)
        return _given(d=way, class_=self.css_class, stroke_width=self.stroke_width)


@dataclass(frozen=True, slots=True)
class Run:
    """A stretch of words in one hand."""

    text: str
    css_class: str = ""


@dataclass(frozen=True, slots=True)
class Words:
    """A line of words from a point on its base line, upright or turned so that it reads from below."""

    tag: ClassVar[str] = "text"
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
    def attributes(self) -> Attributes:
        """What stands in the tag."""
        place = _given(x=self.x, y=self.y, class_=self.css_class, font_size=self.size)
        turn = f"rotate(-90 {coordinate(self.x)} {coordinate(self.y)})" if self.turned else None
        return place + _given(text_anchor=self.anchor if self.anchor != "start" else None, transform=turn)


def words(x: float, y: float, *texts: str | Run, size: float, css_class: str = "label", anchor: str = "start") -> Words:
    """A line of words of one or several hands."""
    runs = tuple(text if isinstance(text, Run) else Run(text) for text in texts)
    return Words(x, y, runs, size, css_class, anchor)


@dataclass(frozen=True, kw_only=True, slots=True)
class Group:
    """Shapes that belong to one part: `part` is the id of its row in the list, `href` a link to it."""

    tag: ClassVar[str] = "g"
    shapes: tuple["Shape", ...]
    css_class: str = ""
    part: str | None = None
    href: str | None = None
    title: str | None = None

    @property
    def attributes(self) -> Attributes:
        """What stands in the tag."""
        return _given(class_=self.css_class, data_part=self.part)


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
    def attributes(self) -> Attributes:
        """What stands in the tag; a picture with links is no single image to a screen reader."""
        linked = any(isinstance(shape, Group) and shape.href for shape in every_shape(self.shapes))
        style = f"max-width:{coordinate(self.most_px)}px" if self.most_px else None
        box = " ".join(map(coordinate, self.view_box))
        return _given(
            class_=self.css_class, id=self.ident, viewBox=box, role="group" if linked else "img", style=style
        ) + _given(aria_label=self.label)


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


@cache
def _own_templates() -> Templates:
    return templates(FilePath(__file__).parent / "templates", filters={"coordinate": coordinate})


def drawn(picture: Picture) -> Markup:
    """The picture as markup to stand in a page; every text in it is escaped."""
    return Markup(_own_templates().rendered("picture.svg", picture=picture).strip())
