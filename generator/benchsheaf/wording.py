"""The forms in which mistakes are told: lines for a person, and JSON for a program."""

import json
import re
import textwrap
import unicodedata
from collections.abc import Iterable

from benchsheaf.mistakes import LONGEST_FILL, Mistake

WIDTH = 100
MOST_LINES = 3
"""Of a sentence; with the line above it that says where, a mistake takes four."""
LONGEST = 60
LONGEST_NAME = 200
_KEPT_SPACE = "\x00"
"""Stands for a space between quotes while lines are broken; no text that is shown holds it."""
_QUOTED = re.compile(r"`[^`]{1,60}`")
_UNSEEN = frozenset(("Cc", "Cf", "Cs", "Co", "Cn", "Zl", "Zp"))


def shown(text: str, longest: int = LONGEST) -> str:
    """A contributor's text made safe to print: what cannot be seen is written as its number, what is long is cut."""
    signs = [_seen(sign) for sign in text[: longest + 1]]
    if sum(map(len, signs)) <= longest:
        return "".join(signs)
    while sum(map(len, signs)) >= longest:
        signs.pop()
    return "".join(signs) + "…"


def as_text(mistakes: Iterable[Mistake]) -> str:
    """All mistakes in file order, each once: where it stands, what was found, what to do; then how many they are."""
    told = in_order(mistakes)
    return "".join(_paragraph(mistake) for mistake in told) + summary(told) + "\n"


def as_json(mistakes: Iterable[Mistake]) -> str:
    """The same for programs, in plain ASCII: an object with the list `mistakes`, in the same order."""
    told = [
        {
            "file": shown(mistake.place.file, LONGEST_NAME),
            "line": mistake.place.line,
            "column": mistake.place.column,
            "code": mistake.code.id,
            "path": shown(mistake.path, LONGEST_NAME),
            "found": None if mistake.found is None else shown(mistake.found),
            "says": _sentence(mistake) + _shared(mistake),
            "nearest": None if mistake.nearest is None else shown(mistake.nearest),
        }
        for mistake in in_order(mistakes)
    ]
    return json.dumps({"mistakes": told}, indent=2) + "\n"


def summary(mistakes: Iterable[Mistake]) -> str:
    """How many mistakes there are, and in how many files."""
    told = in_order(mistakes)
    if not told:
        return "No mistakes."
    files = len({mistake.place.file for mistake in told})
    return f"{len(told)} mistake{'s' * (len(told) > 1)} in {files} file{'s' * (files > 1)}."


def in_order(mistakes: Iterable[Mistake]) -> list[Mistake]:
    """Mistakes in the order in which a reader meets them; what reads the same is told once."""
    once: dict[tuple[object, ...], Mistake] = {}
    for mistake in mistakes:
        once.setdefault((mistake.order, mistake.found, mistake.sentence, mistake.nearest), mistake)
    return sorted(once.values(), key=lambda mistake: (mistake.order, mistake.found or "", mistake.sentence))


def _paragraph(mistake: Mistake) -> str:
    place = mistake.place
    head = shown(place.file, LONGEST_NAME) + (f":{place.line}:{place.column}" if place.line else "")
    head += f": [{mistake.code.id}]"
    if mistake.path:
        head += f" {shown(mistake.path, LONGEST_NAME)}" + (":" if mistake.found is not None else "")
    if mistake.found is not None:
        head += f" found `{shown(mistake.found)}`"
    advice = _sentence(mistake) + (f" Did you mean `{shown(mistake.nearest)}`?" if mistake.nearest is not None else "")
    advice += _shared(mistake)
    kept = _QUOTED.sub(lambda quoted: quoted[0].replace(" ", _KEPT_SPACE), advice)
    lines = textwrap.wrap(kept, WIDTH - 4, max_lines=MOST_LINES, placeholder=" …", break_on_hyphens=False)
    told = (f"    {line}".replace(_KEPT_SPACE, " ").rstrip() for line in lines)
    return "".join(f"{_inert(line)}\n" for line in (head, *told))


def _inert(line: str) -> str:
    """A line that no forge's log takes for a command, wherever a contributor's text was broken into lines."""
    start = len(line) - len(line.lstrip())
    if line.startswith("::", start):
        line = f"{line[:start]}:\\u003a{line[start + 2 :]}"
    return line.replace("##[", "#\\u0023[")


def _sentence(mistake: Mistake) -> str:
    """The words of the code, each text of a contributor in them made safe."""
    return mistake.code.words.format_map({name: shown(fill, LONGEST_FILL) for name, fill in mistake.fills.items()})


def _shared(mistake: Mistake) -> str:
    """How many other lines share the mistake, and where the next is."""
    if not mistake.others:
        return ""
    one, several = mistake.code.shares
    place = mistake.others[0].place
    where = shown(place.file, LONGEST_NAME) + (f":{place.line}" if place.line else "")
    if len(mistake.others) == 1:
        return f" One more line {one}: {where}."
    return f" {len(mistake.others)} more lines {several}, the next is {where}."


def _seen(sign: str) -> str:
    if unicodedata.category(sign) not in _UNSEEN:
        return sign
    number = ord(sign)
    return {"\n": "\\n", "\t": "\\t", "\r": "\\r"}.get(sign) or (
        f"\\u{number:04x}" if number < 0x10000 else f"\\U{number:08x}"
    )
