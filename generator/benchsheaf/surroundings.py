"""What the theme prints around pages: once for all of a folder, with marks where one differs from another."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

from benchsheaf.markup import escaped

# Private to whoever agrees on it: no reader types it, and neither the theme nor its filters know it.
_MARK = "\ue000"
# The template gives a heading to a page that has none of its own; every sheet has one.
_CONTENT = "<h1"


@dataclass(frozen=True, kw_only=True, slots=True)
class Own:
    """What is a page's own: column and content as markup, all else as text."""

    url: str
    title: str
    column: str
    content: str
    edit_url: str
    canonical_url: str

    # What the theme asks of any page.
    is_homepage: bool = False
    meta: Mapping[str, Any] = field(default_factory=dict)
    toc: tuple[Any, ...] = ()


@dataclass(slots=True)
class Surroundings:
    """The theme's page, cut at its marks; `printed` prints the theme's page from what MkDocs gives its templates."""

    printed: Callable[[Mapping[str, Any]], str]
    _cut: dict[tuple[object, ...], list[str]] = field(default_factory=dict)

    def whole(self, own: Own, context: Mapping[str, Any]) -> list[str]:
        """A page in pieces, one after the other.

        It must not be the first page of the site, of which the theme knows more than of all others.
        """
        key = context["base_url"], *map(bool, (own.column, own.edit_url, own.canonical_url))
        if key not in self._cut:
            self._cut[key] = self.printed({**context, "page": _marked(own)}).split(_MARK)
        filled = {
            "title": escaped(" ".join(own.title.split())),
            "column": own.column,
            _CONTENT: own.content,
            "edit": escaped(own.edit_url),
            "canonical": escaped(own.canonical_url),
        }
        pieces = self._cut[key].copy()
        pieces[1::2] = [filled[name] for name in pieces[1::2]]
        return pieces


def _marked(own: Own) -> Own:
    """A page that has marks for what is its own, and lacks what it lacks."""
    return Own(
        url=own.url,
        title=_mark("title"),
        column=own.column and _mark("column"),
        content=_mark(_CONTENT),
        edit_url=own.edit_url and _mark("edit"),
        canonical_url=own.canonical_url and _mark("canonical"),
    )


def _mark(name: str) -> str:
    return f"{_MARK}{name}{_MARK}"


def overrides_folder() -> Path:
    """The theme overrides: inside the installed package, or beside `generator/` in a checkout."""
    inside = Path(__file__).parent / "site_overrides"
    return inside if inside.is_dir() else Path(__file__).resolve().parents[2] / "site_overrides"
