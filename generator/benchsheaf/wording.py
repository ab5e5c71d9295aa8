"""The forms in which mistakes are told: lines for a person, and JSON for a program."""

import json
import unicodedata
from collections.abc import Iterable

from benchsheaf.mistakes import Mistake

LONGEST = 60
_UNSEEN = frozenset(("Cc", "Cf", "Cs", "Co", "Cn", "Zl", "Zp"))


def shown(text: str, longest: int = LONGEST) -> str:
    """A contributor's text made safe to print: what cannot be seen is written as its number, what is long is cut."""
    cut = text if len(text) <= longest else text[: longest - 1] + "…"
    return "".join(_seen(sign) for sign in cut)


def as_text(mistakes: Iterable[Mistake]) -> str:
    """All mistakes in file order, each once, with where it stands, what was found and what to do; then how many."""
    told = in_order(mistakes)
    return "".join(_paragraph(mistake) + "\n" for mistake in told) + summary(told) + "\n"


def as_json(mistakes: Iterable[Mistake]) -> str:
    """The same for programs: an object with the list `mistakes`, in the same order."""
    told = [
        {
            "file": shown(mistake.place.file, 400),
            "line": mistake.place.line,
            "column": mistake.place.column,
            "code": mistake.code.id,
            "path": shown(mistake.path, 400),
            "found": None if mistake.found is None else shown(mistake.found),
            "says": shown(mistake.sentence, 400),
            "nearest": None if mistake.nearest is None else shown(mistake.nearest),
        }
        for mistake in in_order(mistakes)
    ]
    return json.dumps({"mistakes": told}, indent=2) + "\n"


def summary(mistakes: Iterable[Mistake]) -> str:
    """How many mistakes there are, and in how many files."""
    told = in_order(mistakes)
    files = len({mistake.place.file for mistake in told})
    if not told:
        return "No mistakes."
    return f"{len(told)} mistake{'s' * (len(told) > 1)} in {files} file{'s' * (files > 1)}."


def in_order(mistakes: Iterable[Mistake]) -> list[Mistake]:
    """Mistakes in the order in which a reader meets them, each once."""
    seen: dict[tuple[object, ...], Mistake] = {}
    for mistake in mistakes:
        seen.setdefault((mistake.order, mistake.found, mistake.sentence, mistake.nearest), mistake)
    return [seen[key] for key in sorted(seen, key=lambda key: (key[0], key[2]))]


def _paragraph(mistake: Mistake) -> str:
    place = mistake.place
    where = shown(place.file, 400) + (f":{place.line}:{place.column}" if place.line else "")
    head = f"{where}: [{mistake.code.id}]"
    if mistake.path:
        head += f" {shown(mistake.path)}"
    if mistake.found is not None:
        head += f"{':' if mistake.path else ''} found `{shown(mistake.found)}`"
    sentence = shown(mistake.sentence, 400)
    if mistake.nearest is not None:
        sentence += f" Did you mean `{shown(mistake.nearest)}`?"
    return f"{head}\n    {sentence}"


def _seen(sign: str) -> str:
    if unicodedata.category(sign) not in _UNSEEN:
        return sign
    number = ord(sign)
    return f"\\u{number:04x}" if number < 0x10000 else f"\\U{number:08x}"
