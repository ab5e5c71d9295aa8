"""Descriptions whose texts are payloads: what an attacker or an accident may write, put into a copy of the data."""

import json
import random
import re
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import yaml

from benchsheaf.fields import Field, built_in_schemas
from benchsheaf.links import FOLDERS

SEED = 1975

# Kind → what is written. Each breaks out of some place that a text may stand in, if that place does not hold it.
PAYLOADS = {
    "element": "<img src=x> <b>bold</b> <svg><use href=x></svg>",
    "script": "<script>alert(1)</script><SCRIPT SRC=//x.example/x.js></SCRIPT>",
    "style": "<style>*{display:none}</style><link rel=stylesheet href=x>",
    "handler": "<img src=x onerror=alert(1)> <body onload=alert(1)>",
    "frame": "<iframe src=javascript:alert(1)></iframe><base href=//x.example/><meta http-equiv=refresh content=0>",
    "form": "<form action=//x.example><input autofocus onfocus=alert(1)><button formaction=x>",
    "end of a double-quoted attribute": '" onmouseover="alert(1)" x="',
    "end of a single-quoted attribute": "' onmouseover='alert(1)' x='",
    "end of a bare attribute": "x onmouseover=alert(1) x=`",
    "end of an element": "</p></li></td></table></main></body></html>",
    "end of a title, a script, a picture": "</title></script></style></svg></textarea></template>",
    "comment": "<!-- --> --!> <!-- <![CDATA[ ]]> <? ?> <!DOCTYPE x>",
    "entities": "&lt;i&gt; &#60;i&#62; &#x3c;i&#x3e; &amp;amp; &nbsp; &notit; &unknown; &",
    "template expression": "{{ 7 * 7 }} {{ config }} {{ ''.__class__ }} ${7*7} #{7*7} <%= 7*7 %>",
    "template statement": "{% for x in range(9) %}x{% endfor %} {% raw %} {# hidden #} {%- include 'x' -%}",
    "format gaps": "{0} {name} {0.__class__} %s %(x)s %d",
    "Markdown": "**bold** _it_ `code` # head ## head\n- item ![x](x.png) | a | b |",
    "Markdown link": "[x](javascript:alert(1)) [x]: //x.example <https://x.example> [^1] ~~~ ```",
    "address": "javascript:alert(1) https://x.example/?a=1&b=2 data:text/html,x mailto:x@x.example //x.example",
    "path": "../../../etc/hosts ..\\..\\x /etc/hosts file:///etc/hosts C:\\x ~/.x",
    "formula": "=1+1 +1+1 -1+1 @SUM(1) =HYPERLINK(1)",
    "long word": "W" * 400,
    "nothing": "null None undefined NaN true ~ 0 -0 []",
    "emoji": "\U0001f50b\u2764\ufe0f \U0001f469\U0001f3fd \U0001f1e9\U0001f1ea",
    "combining marks": "e\u0301 Z\u0351\u036f\u0310\u0303a\u0304\u0320 \u0e01\u0e33 \u0915\u094d\u0937",
    "other scripts": "\u05e9\u05dc\u05d5\u05dd \u0645\u0631\u062d \u4f60\u597d \u03a9\u2126 \u00b5\u03bc \uff1cb\uff1e",
    "spaces of other kinds": "a\u2003b\u202fc\u3000d",
    "brackets": "[[1, 2], [3]] [[]] [[[x]]] [[ ]x] ]] [[",
    "quotes": "\" ' ` \u201c\u201d \u00ab\u00bb \\\" \\' \\\\ \\n \\u003c",
    "end of a script's comment": "*/ /* // </x>",
    "like a designator": "XC610 c61 C6I C61= =C61 C61/C62 http://x.example/#C61",
}
# What the reader refuses by name; nothing of it comes to a page.
HIDDEN = {
    "right-to-left override": "\u202e",
    "isolate": "\u2066",
    "no width": "\u200b",
    "mark of order": "\ufeff",
    "tag": "\U000e0041",
    "bell": "\x07",
}

Put = Callable[["Spot"], str]
"""What is written at a spot."""


@dataclass(frozen=True, kw_only=True, slots=True)
class Spot:
    """Where a text stands: its number among all, its file, the path of its fields, and what stands there."""

    number: int
    file: str
    path: str
    words: str

    def marked(self, words: str) -> str:
        """Words between two marks by which they are found again; a message keeps the letters that stand for gaps."""
        if self.path.startswith("messages") and self.path.endswith(".shows"):
            words = " ".join([words, *(found[0] for found in re.finditer(r"\b([a-z])\1*\b", self.words))])
        # A list of terms is sorted under their first letters.
        first = f"{self.words} " if self.path.startswith("terms") and self.path.endswith(".term") else ""
        return f"{first}q{self.number}q {words} z{self.number}z"


def is_free(described: Field) -> bool:
    """Whether anything may be written into a field: it is no name, no pointer, no choice and has no form."""
    bound = described.allowed or described.names_item or described.points_at or described.form
    return described.shape == "text" and not bound


def rounds(number: int) -> list[Put]:
    """Ways to write all payloads into all texts: in each round some kinds into each text, in all rounds every kind."""

    def way(place: int) -> Put:
        def put(spot: Spot) -> str:
            kinds = sorted(PAYLOADS)
            random.Random(f"{SEED} {spot.file} {spot.path}").shuffle(kinds)
            return spot.marked("  ".join(PAYLOADS[kind] for kind in kinds[place::number]))

        return put

    return [way(place) for place in range(number)]


def written(source: Path, folder: Path, put: Put, new_names: Callable[[str], str] = str) -> list[Spot]:
    """Copy descriptions into a folder with other texts; where each stands comes back, with what was written.

    `new_names` gives what free names become, and the pointers to them. Files are written as JSON, every value on a line
    of its own; the reader takes it for YAML.
    """
    spots: list[Spot] = []
    for path, kind in _described_files(source):
        file = path.relative_to(source).as_posix()

        def replaced(described: Field, value: Any, at: str, file: str = file) -> Any:
            if isinstance(value, dict):
                fields = described.fields
                return {key: replaced(fields[key], inner, f"{at}.{key}".lstrip(".")) for key, inner in value.items()}
            if isinstance(value, list) and described.item:
                return [replaced(described.item, inner, f"{at}[{place}]") for place, inner in enumerate(value)]
            if _is_free_name(described):
                return new_names(value)
            if not is_free(described):
                return value
            spot = Spot(number=len(spots), file=file, path=at, words=value)
            spots.append(Spot(number=spot.number, file=file, path=at, words=put(spot)))
            return spots[-1].words

        values = yaml.load(path.read_text(encoding="utf-8"), Loader=yaml.BaseLoader)
        target = folder / file
        target.parent.mkdir(parents=True, exist_ok=True)
        target.write_text(json.dumps(replaced(kind, values, ""), ensure_ascii=False, indent=1), encoding="utf-8")
    return spots


def _described_files(root: Path) -> Iterator[tuple[Path, Field]]:
    """Every data file with the field that describes what stands at its top."""
    kinds = built_in_schemas().kinds
    folders = {name: kind for kind, name in FOLDERS.items()}
    for path in sorted(root.rglob("*.yml")):
        above = path.parent.name
        kind = path.stem if above == "_shared" else "repair" if above == "repairs" else folders.get(above, "machine")
        yield path, kinds[kind]


def _is_free_name(described: Field) -> bool:
    """Rails, switches and their positions are called as people like; pointers to them follow."""
    family = described.points_at or described.names_item or ""
    position = described.names_item == "here" and described.name == "to"
    return family in ("rail", "switch") or position or family.endswith(".positions")


def in_form(text: str) -> str:
    """A text as a page shows it: one space for all that is blank between words."""
    return re.sub(r"[ \t\r\n\f]+", " ", text).strip()
