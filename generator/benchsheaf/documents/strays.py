"""Signs of YAML that leave no trace in what its parser tells: comments behind text, and question marks before keys."""

import re
from collections import defaultdict
from collections.abc import Iterable, Iterator
from typing import NamedTuple

from benchsheaf.mistakes import Code, Mistake, Place

COMMENT = Code(
    id="YAML-14",
    meaning="A comment follows something on its line, or a text was cut by one that was not meant.",
    words="A `#` begins a comment, and comments stand on lines of their own. Put a text that holds one in quotes.",
)
QUESTION = Code(
    id="YAML-27",
    meaning="A question mark stands before a key.",
    words="No `?` stands before a key. Write `key: value`, and put a text that begins with it in quotes.",
)

_QUESTION_ANYWHERE = re.compile(r"(?:\A|(?<=[\n \[{,-]))\?\s")
_QUESTION = re.compile(r"(?:^|(?<=[\s\[{,-]))\?(?=\s|$)")


class Span(NamedTuple):
    """From where to where one text of a file runs, lines and columns counted from 0, and its quoting (`""`: none)."""

    line: int
    column: int
    end_line: int
    end_column: int
    style: str


def has_strays(text: str) -> bool:
    """Whether there may be any; most files have none and need no second look."""
    if "?" in text and _QUESTION_ANYWHERE.search(text):
        return True
    at = text.find("#")
    while at >= 0:
        if text[text.rfind("\n", 0, at) + 1 : at].strip():
            return True
        end = text.find("\n", at)
        at = text.find("#", end) if end >= 0 else -1
    return False


def strays(
    text: str, file: str, spans: Iterable[Span], end: tuple[int, int] | None
) -> Iterator[tuple[Mistake, Span | None]]:
    """The stray signs between the texts of a file, at most one a line, each with the plain text that it cuts off.

    `end` is where the reading came to, where that is not the end of the file.
    """
    lines = [*text.split("\n"), ""]  # the last text may end beyond the last line
    there: dict[int, list[Span]] = defaultdict(list)
    for span in spans:
        for number in range(span.line, span.end_line + 1):
            if "#" in lines[number] or "?" in lines[number]:
                there[number].append(span)
    for number, line in enumerate(lines):
        if "#" in line or "?" in line:
            found = _stray(line, number, there[number])
            if found is not None and (end is None or (number, found) < end):
                code = COMMENT if line[found] == "#" else QUESTION
                place = Place(file=file, line=number + 1, column=found + 1)
                yield code.at(place, found=line[found:].rstrip()), _cut(line, number, found, there[number])


def _stray(line: str, number: int, spans: list[Span]) -> int | None:
    """The column of a line's first sign that stands in no text, save that of a comment with the line to itself."""
    bare = list(line)
    for span in spans:
        first = span.column if span.line == number else 0
        last = span.end_column if span.end_line == number else len(line)
        if span.style in ("|", ">") and span.line == number:
            last = first + 1
        bare[first:last] = "x" * (last - first)
    open_line = "".join(bare)
    comment = open_line.find("#")
    question = _QUESTION.search(open_line[:comment] if comment >= 0 else open_line)
    if question:
        return question.start()
    return comment if comment >= 0 and open_line[:comment].strip() else None


def _cut(line: str, number: int, found: int, spans: list[Span]) -> Span | None:
    """The plain text that ends on this line with nothing but spaces between it and the stray sign."""
    ending = [span for span in spans if span.end_line == number and span.end_column <= found]
    if ending and not ending[-1].style and not line[ending[-1].end_column : found].strip():
        return ending[-1]
    return None
