"""What a page of the handbook is made of: an answer, sections, tables with their sources, and workings."""

from collections.abc import Sequence
from dataclasses import dataclass

from benchsheaf.drawing.picture import Both
from benchsheaf.markup import Markup
from benchsheaf.pages.views import CautionView, Named


@dataclass(frozen=True, kw_only=True, slots=True)
class Column:
    """A column of a table; `n` holds numbers, `wordy` sentences, `mono` what is printed on a part."""

    name: str
    n: bool = False
    wordy: bool = False
    mono: bool = False

    @property
    def css_class(self) -> str:
        """How its cells look."""
        return " ".join(name for name in ("n", "wordy", "mono") if getattr(self, name))


@dataclass(frozen=True, kw_only=True, slots=True)
class Table:
    """A table, its first column the heads of its rows, and where its figures come from."""

    label: str
    columns: Sequence[Column]
    rows: Sequence[Sequence[str]]
    source: str

    @property
    def stacks(self) -> bool:
        """Whether its rows become blocks on a phone."""
        return len(self.columns) > 4


@dataclass(frozen=True, kw_only=True, slots=True)
class Point:
    """One thing among several: what is said, what is right in its place, how that is worked out, how it is founded."""

    anchor: str
    title: str
    wrong: str = ""
    right: str = ""
    working: str = ""
    told: Markup | str = ""
    plain: str = ""  # the same without links, to be looked through
    mark: str = ""


@dataclass(frozen=True, kw_only=True, slots=True)
class Section:
    """A stretch of a page: words, then its picture, its table, its points, and what is folded away."""

    anchor: str
    title: str
    told: Sequence[str] = ()
    picture: Both | None = None
    table: Table | None = None
    points: Sequence[Point] = ()
    working: Sequence[str] = ()


@dataclass(frozen=True, kw_only=True, slots=True)
class Content:
    """What a page says: cautions first, then the answer, then its sections."""

    answer: str
    sections: Sequence[Section]
    cautions: Sequence[CautionView] = ()
    long: bool = False  # so that its sections are listed first


@dataclass(frozen=True, kw_only=True, slots=True)
class Used:
    """A machine and its sheets on which the page's question comes up."""

    machine: str
    sheets: Sequence[Named]
