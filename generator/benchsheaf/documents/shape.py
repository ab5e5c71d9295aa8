"""What a data file is as a whole: one document, and that a set of keys and values."""

from typing import Any

from benchsheaf.documents.records import Spot
from benchsheaf.documents.refusals import Refusals
from benchsheaf.mistakes import Code, Place

EMPTY = Code(
    id="FILE-09", meaning="A data file is empty.", words="This file is empty. Describe something in it, or delete it."
)
ONLY_COMMENTS = Code(
    id="FILE-10",
    meaning="A data file holds nothing but comments.",
    words="This file holds comments only. Describe something in it, or delete it.",
)
NOT_A_MAPPING = Code(
    id="YAML-01",
    meaning="A data file is no set of keys and values.",
    words="A data file holds lines of the form `key: value`; this one holds {what}.",
    example={"what": "a list"},
)
SECOND_DOCUMENT = Code(
    id="YAML-02",
    meaning="A second document begins in a file.",
    words="`---` begins a second description. Take it out, or put what follows into a file of its own.",
)
DIRECTIVE = Code(
    id="YAML-03",
    meaning="A directive (a line that begins with a percent sign) stands in a file.",
    words="A line that begins with `%` is an instruction to a YAML program. None is used here: delete the line.",
)


def is_second_document(refusals: Refusals, event: Any, documents: int) -> bool:
    """Whether a document begins after `documents` others, which is refused; so are the directives before the first."""
    if documents:
        refusals.tell(SECOND_DOCUMENT, event.start_mark, found="---")
        return True
    for number, line in enumerate(refusals.lines[: event.end_mark.line], 1):
        if line.startswith("%"):
            refusals.mistakes.append(
                DIRECTIVE.at(Place(file=refusals.file, line=number, column=1), found=line.rstrip())
            )
    return False


def refuse_shape(refusals: Refusals, values: list[Any], spots: list[Spot]) -> None:
    """Keeps the mistake of a text that is no set of keys and values as a whole."""
    if all(line.strip() in ("", "---", "...") or line.lstrip().startswith("#") for line in refusals.lines):
        code = ONLY_COMMENTS if "#" in refusals.text else EMPTY
        refusals.mistakes.append(code.at(Place(file=refusals.file)))
    elif values:
        place = Place(file=refusals.file, line=spots[0].line, column=spots[0].column)
        refusals.mistakes.append(NOT_A_MAPPING.at(place, what="a list" if isinstance(values[0], list) else "a text"))
