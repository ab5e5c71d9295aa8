"""Where the parser stops, the place and the cause that a person can mend."""

import re
from typing import Any

from benchsheaf.documents.refusals import DEEPEST, KEY_NOT_TEXT, TOO_DEEP, Refusals
from benchsheaf.documents.shape import DIRECTIVE, SECOND_DOCUMENT
from benchsheaf.documents.strays import COMMENT
from benchsheaf.documents.trouble import Trouble, trouble_of
from benchsheaf.mistakes import Code, Mistake, Place

COLON = Code(
    id="YAML-15",
    meaning="A text holds a colon and a space, which end a key.",
    words="A colon and a space end the name of a field. Put a text that holds them in quotes{hint}.",
    example={"hint": ""},
)
STARTS_WITH = Code(
    id="YAML-16",
    meaning="A text begins with a sign that means something to YAML.",
    words="A text cannot begin with {sign} as it stands. Put the text in quotes.",
    example={"sign": "`@`"},
)
QUOTE_OPEN = Code(
    id="YAML-17",
    meaning="A quoted text has no end.",
    words="No `{sign}` ends the text that begins here. If the sign belongs to it, use {other} quotes around all.",
    example={"sign": "'", "other": "double"},
)
AFTER_QUOTE = Code(
    id="YAML-18",
    meaning="Something follows a quoted text.",
    words="Something follows the closing quote. Put the whole text in quotes of the other sort.",
)
AFTER_BRACKET = Code(
    id="YAML-19",
    meaning="Something follows a closing bracket.",
    words="Something follows the closing `{sign}`. If the brackets belong to the text, put the whole text in quotes.",
    example={"sign": "]"},
)
BRACKET_OPEN = Code(
    id="YAML-20",
    meaning="A bracket is not closed.",
    words="No `{closing}` closes this `{sign}`. Add it, or put a text that holds such a sign in quotes.",
    example={"closing": "}", "sign": "{"},
)
COMMA_MISSING = Code(
    id="YAML-21",
    meaning="Two entries between brackets have no comma between them.",
    words="A comma is missing before this, or the `{sign}` belongs to a text: then put the text in quotes.",
    example={"sign": "{"},
)
HOLE = Code(
    id="YAML-23",
    meaning="Nothing stands between two signs that part entries.",
    words="An entry is missing before this `{sign}`. Delete the sign, or write what belongs there.",
    example={"sign": ","},
)
INDENTATION = Code(
    id="YAML-24",
    meaning="A line begins in a column that fits nothing above it.",
    words="This line begins in a column that fits nothing above it. What belongs together begins in one column.",
)
NO_COLON = Code(
    id="YAML-26",
    meaning="A line has no key, or no colon and space after it.",
    words="No colon with a space after it stands here. Write `field: value`, or move it right if it carries on the "
    "text above.",
)
ESCAPE = Code(
    id="YAML-28",
    meaning="A backslash in double quotes begins no escape.",
    words="In double quotes a backslash means something to YAML. Use single quotes, or write it twice: `\\\\`.",
)
NO_SPACE_AFTER_HYPHEN = Code(
    id="YAML-31",
    meaning="No space follows the hyphen that begins an item.",
    words="No space follows the hyphen that begins this item. Put one between.",
)
NO_SPACE = Code(
    id="YAML-30",
    meaning="No space follows a colon in brackets.",
    words="No space follows this colon. Write `key: value`, and put a text that holds a colon in quotes.",
)
NOT_UNDERSTOOD = Code(
    id="YAML-29",
    meaning="The file cannot be followed from some place on.",
    words="This cannot be followed. Look here and in the line above for a missing quote, bracket, colon or space.",
)

_COMMA_HINT = ", or add the comma that is missing before the name of the next field"
_CLOSING = {"{": "}", "[": "]"}


def broken_syntax(refusals: Refusals, error: Exception, last: Any) -> list[Mistake]:
    """All mistakes of a text that the parser could not follow, its own among them in words of ours.

    What was told of the line that it could not follow is taken back, as it may only follow from that.
    """
    trouble = trouble_of(refusals, error, last)
    told = (rule(trouble) for rule in (_hyphen, _quoted, _first_sign, _beyond, _bracket, _colon, _block, _key))
    mistake = next((found for found in told if found), None)
    mistake = mistake or trouble.at(NOT_UNDERSTOOD, (trouble.line, trouble.column))
    return [*(known for known in refusals.mistakes if known.place.line != mistake.place.line), mistake]


def _hyphen(trouble: Trouble) -> Mistake | None:
    """An item whose hyphen stands close to it."""
    text = trouble.lines[trouble.line]
    begins = len(text) - len(text.lstrip())
    close = re.match(r"-(?:[\[{]|[a-z_]+:(?:\s|$))", text[begins:])
    return trouble.at(NO_SPACE_AFTER_HYPHEN, (trouble.line, begins)) if close else None


def _quoted(trouble: Trouble) -> Mistake | None:
    if "quoted scalar" not in trouble.doing:
        return None
    if "end of stream" in trouble.says or "document" in trouble.says:
        return _open_quote(trouble, trouble.begun)
    slash = trouble.lines[trouble.line].rfind("\\", 0, trouble.column + 1)
    return trouble.at(ESCAPE, (trouble.line, max(slash, 0)))


def _open_quote(trouble: Trouble, spot: tuple[int, int]) -> Mistake:
    sign = trouble.sign_at(spot)
    return trouble.at(QUOTE_OPEN, spot, sign=sign, other="double" if sign == "'" else "single")


def _first_sign(trouble: Trouble) -> Mistake | None:
    """A text that begins with a sign of YAML's own."""
    spot = (trouble.line, trouble.column)
    if re.search(r"an anchor|an alias|a tag|block scalar", trouble.doing) or "tag handle" in trouble.says:
        spot = trouble.begun
    elif re.search("(sequence entries|mapping keys) are not allowed", trouble.says):
        if not trouble.before:
            return None
    elif "cannot start any token" not in trouble.says and not (
        "node content" in trouble.says and trouble.sign in (",", "]", "}") and "flow" not in trouble.doing
    ):
        return None
    sign = trouble.sign_at(spot)
    return trouble.at(STARTS_WITH, spot, sign="a backtick" if sign == "`" else f"`{sign}`")


def _beyond(trouble: Trouble) -> Mistake | None:
    """A line of instructions, or something after the end of the document."""
    if "directive" not in trouble.doing and "<document start>" not in trouble.says:
        return None
    for number, line in enumerate(trouble.lines):
        if line.startswith("%"):
            return trouble.at(DIRECTIVE, (number, 0))
    above = next((line.strip() for line in reversed(trouble.lines[: trouble.line]) if line.strip()), "")
    if above == "...":
        return trouble.at(SECOND_DOCUMENT, (trouble.line, trouble.column))
    content = (number for number, line in enumerate(trouble.lines) if line.strip() and not re.match(r"\s*#|---", line))
    first = next(content, 0)
    if first < trouble.line and ":" not in trouble.lines[first]:
        return trouble.at(NO_COLON, (first, len(trouble.lines[first]) - len(trouble.lines[first].lstrip())))
    if not trouble.before and not trouble.lines[first].lstrip().startswith(("[", "{", "'", '"')):
        return _indentation(trouble)
    return _after_closing(trouble, trouble.before or above)


def _bracket(trouble: Trouble) -> Mistake | None:
    """Something amiss between brackets."""
    if "flow" not in trouble.doing:
        return None
    spot = (trouble.line, trouble.column)
    if "nesting depth" in trouble.says:
        return TOO_DEEP.at(Place(file=trouble.file, line=spot[0] + 1, column=spot[1] + 1), deepest=str(DEEPEST + 1))
    opened = trouble.open or trouble.begun
    sign = trouble.sign_at(opened)
    left = len(trouble.lines[opened[0]]) - len(trouble.lines[opened[0]].lstrip())
    start = getattr(trouble.last, "start_mark", None) if hasattr(trouble.last, "style") else None
    is_left = not trouble.before and trouble.line > opened[0] and trouble.column <= left
    is_item = trouble.line > opened[0] and trouble.before.strip() == "-"
    runs_on = start is not None and start.line < trouble.line and trouble.sign == ":"
    if (
        trouble.is_over
        or is_left
        or is_item
        or runs_on
        or (trouble.sign in ("]", "}") and trouble.sign != _CLOSING.get(sign))
    ):
        return trouble.at(BRACKET_OPEN, opened, closing=_CLOSING.get(sign, "]"), sign=sign)
    if "node content" in trouble.says:
        return trouble.at(KEY_NOT_TEXT, spot) if trouble.sign == ":" else trouble.at(HOLE, spot, sign=trouble.sign)
    if trouble.sign == ":" and not trouble.last_quoted:
        return trouble.at(COLON, (start.line, start.column) if start else spot, hint=_COMMA_HINT)
    return trouble.at(COMMA_MISSING, spot, sign=sign)


def _colon(trouble: Trouble) -> Mistake | None:
    """A colon where no key can end: in a text, or after a line that was taken for the beginning of this one."""
    if "mapping values are not allowed" not in trouble.says:
        return None
    start = getattr(trouble.last, "start_mark", None)
    if start is not None and start.line < trouble.line and hasattr(trouble.last, "style"):
        if trouble.last_quoted:
            return _open_quote(trouble, (start.line, start.column))
        if not trouble.lines[start.line][: start.column].strip(" -"):
            return trouble.at(NO_COLON, (start.line, start.column))
        return _indentation(trouble)
    column = trouble.value_column
    if column >= trouble.column or not trouble.lines[trouble.line][:column].strip(" -"):
        return _indentation(trouble)
    return _after_closing(trouble, trouble.before) or trouble.at(COLON, (trouble.line, column), hint="")


def _indentation(trouble: Trouble) -> Mistake:
    text = trouble.lines[trouble.line]
    return trouble.at(INDENTATION, (trouble.line, len(text) - len(text.lstrip())))


def _block(trouble: Trouble) -> Mistake | None:
    """Something else than the next key or the next item."""
    if "block" not in trouble.doing:
        return None
    end = trouble.last.end_mark
    if trouble.line > end.line and trouble.lines[end.line][end.column :].lstrip().startswith("#"):
        return trouble.at(COMMENT, (end.line, trouble.lines[end.line].index("#", end.column)))
    if not trouble.before and trouble.sign != ":":
        return _indentation(trouble)
    start = trouble.last.start_mark
    if trouble.before and trouble.last_quoted and start.line < trouble.line:
        return _open_quote(trouble, (start.line, start.column))
    return _after_closing(trouble, trouble.before)


def _after_closing(trouble: Trouble, before: str) -> Mistake | None:
    """Something after a quoted text or a closing bracket."""
    spot = (trouble.line, trouble.value_column if trouble.value_column < trouble.column else trouble.column)
    if before.endswith(("'", '"')):
        return trouble.at(AFTER_QUOTE, spot)
    return trouble.at(AFTER_BRACKET, spot, sign=before[-1]) if before.endswith(("]", "}")) else None


def _key(trouble: Trouble) -> Mistake | None:
    """A line without a key."""
    if trouble.sign == ":" and ("plain scalar" in trouble.doing or not trouble.before):
        return trouble.at(NO_SPACE if trouble.before else KEY_NOT_TEXT, (trouble.line, trouble.column))
    return trouble.at(NO_COLON, trouble.begun) if "simple key" in trouble.doing else None
