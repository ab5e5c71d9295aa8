"""Built pages as Markdown: what a person would write who keeps the same site by hand, for the same theme.

Headings, paragraphs, lists, pipe tables, links between pages, pictures as raw SVG in a figure each. Left out, and so
not counted against the peer: ids and classes, the list of sheets (the theme's own navigation is in its place), small
marks inside a line.
"""

import argparse
import re
import shutil
from html import escape
from html.parser import HTMLParser
from pathlib import Path

HEADINGS = {f"h{level}": "#" * level for level in range(1, 7)}
LINES = frozenset({"p", "li", "summary", "figcaption", "caption", "dt", "dd"})
CELLS = frozenset({"td", "th"})
STRONG = frozenset({"b", "strong"})
EMPTY = frozenset({"area", "br", "col", "hr", "img", "input", "link", "meta", "source", "wbr"})
SKIPPED_CLASSES = frozenset({"sheets-line", "edit-sheet"})
SKIPPED_TAGS = frozenset({"script", "style", "template", "form", "nav"})
_SIGNS = re.compile(r"([\\`*_\[\]<|])")

CONFIGURATION = """\
site_name: Benchsheaf
docs_dir: docs
site_dir: site
use_directory_urls: false
nav: [index.md]
not_in_nav: "*"
validation: {omitted_files: ignore}
theme:
  name: material
  language: en
  font: false
  palette:
    - {media: "(prefers-color-scheme: light)", scheme: default, toggle: {icon: material/weather-night, name: Dark}}
    - {media: "(prefers-color-scheme: dark)", scheme: slate, toggle: {icon: material/weather-sunny, name: Light}}
extra: {generator: false}
plugins: [search]
"""


class _Sheet(HTMLParser):
    """One page's article on its way from markup to blocks of Markdown."""

    def __init__(self) -> None:
        super().__init__(convert_charrefs=True)
        self.blocks: list[str] = []
        self._line: list[str] = []
        self._prefix = ""
        self._rows: list[list[str]] = []
        self._picture: list[str] = []
        self._drawing = self._skipping = 0
        self._within = self._in_figure = self._in_cell = False
        self._href = ""

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        """Open a block, a cell, a picture or a run of words."""
        given = {name: value or "" for name, value in attrs}
        self._within = self._within or tag == "article"
        if not self._within:
            return
        if self._skipping or self._is_skipped(tag, given):
            self._skipping += tag not in EMPTY
        elif self._drawing or tag == "svg":
            self._drawing += 1
            self._picture.append(self.get_starttag_text() or "")
        elif tag in ("figure", "table", "tr"):
            self._open(tag)
        elif tag in CELLS:
            self._line, self._in_cell = [], True
        elif tag in HEADINGS or (tag in LINES and not (tag == "p" and self._prefix)):
            self._begin_line(HEADINGS.get(tag, "-" if tag in ("li", "dt") else ""))
        elif tag in STRONG:
            self._line.append("**")
        elif tag == "a":
            self._href = _target(given.get("href", ""))
            self._line.append("[" if self._href else "")
        elif tag == "br":
            self._line.append(" ")

    def handle_startendtag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        """A tag that closes itself, which in our pages is a shape of a picture."""
        if self._drawing and not self._skipping:
            self._picture.append(self.get_starttag_text() or "")

    def handle_endtag(self, tag: str) -> None:
        """Close what was opened."""
        if not self._within:
            return
        if self._skipping:
            self._skipping -= tag not in EMPTY
        elif self._drawing:
            self._picture.append(f"</{tag}>")
            self._drawing -= 1
            if not self._drawing:
                self._end_picture()
        elif tag == "article":
            self._end_line()
            self._within = False
        elif tag == "figure":
            self._in_figure = False
        elif tag == "table":
            self._end_table()
        elif tag in CELLS:
            self._rows[-1].append(self._words())
            self._in_cell = False
        elif tag in HEADINGS or (tag in LINES and not (tag == "p" and self._prefix)):
            self._end_line()
        elif tag in STRONG:
            self._line.append("**")
        elif tag == "a" and self._href:
            self._line.append(f"]({self._href})")

    def handle_data(self, data: str) -> None:
        """Words of a line or of a picture."""
        if self._skipping or not self._within:
            return
        if self._drawing:
            self._picture.append(escape(data))
        else:
            self._line.append(_SIGNS.sub(r"\\\1", data))

    def _is_skipped(self, tag: str, given: dict[str, str]) -> bool:
        in_line = tag == "svg" and not self._in_figure
        return in_line or tag in SKIPPED_TAGS or not SKIPPED_CLASSES.isdisjoint(given.get("class", "").split())

    def _open(self, tag: str) -> None:
        if tag == "figure":
            self._in_figure = True
        elif tag == "table":
            self._end_line()
            self._rows = []
        else:
            self._rows.append([])

    def _words(self) -> str:
        words = " ".join("".join(self._line).split()).replace("****", "")
        self._line = []
        return words

    def _begin_line(self, prefix: str) -> None:
        if not self._in_cell:
            self._end_line()
            self._prefix = prefix

    def _end_line(self) -> None:
        if self._in_cell:
            return
        words = self._words()
        if words:
            block = f"{self._prefix} {words}" if self._prefix else words
            if self._prefix == "-" and self.blocks and self.blocks[-1].startswith("- "):
                self.blocks[-1] += f"\n{block}"
            else:
                self.blocks.append(block)
        self._prefix = ""

    def _end_table(self) -> None:
        rows = [row for row in self._rows if row]
        widest = max(map(len, rows), default=0)
        lines = ["| " + " | ".join(row + [""] * (widest - len(row))) + " |" for row in rows]
        if lines:
            self.blocks.append("\n".join([lines[0], "|" + " --- |" * widest, *lines[1:]]))

    def _end_picture(self) -> None:
        lines = [line for line in "".join(self._picture).splitlines() if line.strip()]
        self.blocks.append("\n".join(["<figure>", *lines, "</figure>"]))
        self._picture = []


def _target(href: str) -> str:
    """Where a link of the Markdown form leads: to another page, without the place on it; nowhere else."""
    path = href.partition("#")[0]
    return path.removesuffix(".html") + ".md" if path.endswith(".html") and "://" not in path else ""


def markdown(page: str) -> str:
    """The Markdown of one built page."""
    sheet = _Sheet()
    sheet.feed(page)
    sheet.close()
    return "\n\n".join(sheet.blocks) + "\n"


def write_markdown_form(site: Path, folder: Path) -> int:
    """A folder that MkDocs builds, made from a built site; how many pages it has. What was in the folder is lost."""
    shutil.rmtree(folder, ignore_errors=True)
    pages = [path for path in sorted(site.rglob("*.html")) if "assets" not in path.relative_to(site).parts]
    for path in pages:
        target = folder / "docs" / path.relative_to(site).with_suffix(".md")
        target.parent.mkdir(parents=True, exist_ok=True)
        target.write_text(markdown(path.read_text("utf-8")), "utf-8")
    (folder / "mkdocs.yml").write_text(CONFIGURATION, "utf-8")
    return len(pages)


if __name__ == "__main__":
    asked = argparse.ArgumentParser(description=__doc__)
    asked.add_argument("site", type=Path)
    asked.add_argument("folder", type=Path)
    given = asked.parse_args()
    write_markdown_form(given.site, given.folder)
