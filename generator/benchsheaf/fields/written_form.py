"""Values as a contributor writes them: lines of a data file that are read back as the very same texts."""

import json
import re
from collections.abc import Iterator, Mapping, Sequence
from typing import Any

SHORT = 60  # letters of a group or list that may stand on one line

_ODD_START = re.compile(r"[\s\-?:,\[\]{}#&*!|>'\"%@`]")
_NUMBER_LIKE = re.compile(r"[0-9]+")
_SIGNED = re.compile(r"-[0-9]")


def data_lines(values: Mapping[str, Any]) -> list[str]:
    """The lines of a data file that holds some values: groups and lists indented by two, short ones on one line."""
    return list(_mapping_lines(values, ""))


def written(text: str, *, inside: bool = False) -> str:
    """A text as it stands after `key: `, in quotes where it must be; `inside` braces or brackets more must be."""
    odd = not text or text != text.strip() or (_ODD_START.match(text) and not _SIGNED.match(text))
    cut = (
        ": " in text or " #" in text or text.endswith(":") or "\n" in text or (inside and re.search(r"[,\[\]{}]", text))
    )
    numbers = _NUMBER_LIKE.fullmatch(text) and text.startswith("0") and len(text) > 1
    return json.dumps(text, ensure_ascii=False) if odd or cut or numbers else text


def _mapping_lines(values: Mapping[str, Any], indent: str) -> Iterator[str]:
    for name, value in values.items():
        short = _on_one_line(value)
        if short is not None:
            yield f"{indent}{name}: {short}"
        else:
            yield f"{indent}{name}:"
            yield from _deeper(value, indent + "  ")


def _deeper(value: Any, indent: str) -> Iterator[str]:
    if isinstance(value, Mapping):
        yield from _mapping_lines(value, indent)
        return
    for item in value:
        inner = [_on_one_line(item)] if not isinstance(item, Mapping) else list(_mapping_lines(item, indent + "  "))
        first, *rest = (str(line) for line in inner)
        yield f"{indent}- {first.lstrip()}"
        yield from rest


def _on_one_line(value: Any) -> str | None:
    """A single value, or a group or list of single values that is short; None for all else."""
    if isinstance(value, str):
        return written(value)
    if isinstance(value, Mapping):
        pieces = [f"{name}: {written(each, inside=True)}" for name, each in value.items() if isinstance(each, str)]
        return _short("{", pieces, value, "}")
    return _short("[", [written(each, inside=True) for each in value if isinstance(each, str)], value, "]")


def _short(opening: str, pieces: Sequence[str], value: Any, closing: str) -> str | None:
    line = opening + ", ".join(pieces) + closing
    return line if pieces and len(pieces) == len(value) and len(line) <= SHORT else None
