"""What the parser of YAML said when it could not go on, and the lines around that place."""

import re
from dataclasses import dataclass
from typing import Any

from benchsheaf.documents.refusals import Refusals
from benchsheaf.mistakes import Code, Mistake, Place

_VALUE = re.compile(r"(\s*(?:- +)*)(?:[^\s\"'#{\[][^:]*?:\s+|\"[^\"]*\":\s+|'[^']*':\s+)?(?=\S)")


@dataclass(frozen=True, slots=True)
class Trouble:
    """What the parser said; lines and columns are counted from 0.

    `doing` is what it was about, `begun` where that began, `last` the event before, `open` the innermost open bracket.
    """

    file: str
    lines: list[str]
    says: str
    line: int
    column: int
    doing: str
    begun: tuple[int, int]
    last: Any
    open: tuple[int, int] | None

    @property
    def before(self) -> str:
        """What stands on the line before the place where the parser stopped."""
        return self.lines[self.line][: self.column].rstrip()

    @property
    def sign(self) -> str:
        """The sign at which it stopped; none at the end of a line."""
        return self.sign_at((self.line, self.column))

    @property
    def is_over(self) -> bool:
        """Whether it stopped at the end of the file or the document."""
        rest = [self.lines[self.line][self.column :], *self.lines[self.line + 1 :]]
        return not "".join(rest).strip() or rest[0].startswith(("---", "..."))

    @property
    def last_quoted(self) -> bool:
        """Whether the last event was a text in quotes."""
        return getattr(self.last, "style", None) in ("'", '"')

    @property
    def value_column(self) -> int:
        """Where the value of the line begins, or its text if it has no key."""
        found = _VALUE.match(self.lines[self.line])
        return found.end() if found else 0

    def sign_at(self, spot: tuple[int, int]) -> str:
        """The sign at a line and column."""
        return self.lines[spot[0]][spot[1] : spot[1] + 1]

    def at(self, code: Code, spot: tuple[int, int], **fills: str) -> Mistake:
        """A mistake at a place, with the rest of its line as found."""
        place = Place(file=self.file, line=spot[0] + 1, column=spot[1] + 1)
        return code.at(place, found=self.lines[spot[0]][spot[1] :].rstrip() or None, **fills)


def trouble_of(refusals: Refusals, error: Exception, last: Any) -> Trouble:
    """The trouble that an error of the parser tells of; `last` is the event before it."""
    lines = [line.rstrip("\r") for line in refusals.lines]
    begun = getattr(error, "context_mark", None)
    mark = getattr(error, "problem_mark", None) or begun or (last and last.end_mark)
    line = min(mark.line, len(lines) - 1) if mark else 0
    return Trouble(
        file=refusals.file,
        lines=lines,
        says=str(getattr(error, "problem", None) or ""),
        line=line,
        column=min(mark.column, len(lines[line])) if mark else 0,
        doing=str(getattr(error, "context", None) or ""),
        begun=(begun.line, begun.column) if begun else (line, 0),
        last=last,
        open=refusals.open_place(),
    )
