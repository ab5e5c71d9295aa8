"""What YAML allows and a data file does not, each refused by name where it stands."""

import re
from dataclasses import replace
from functools import cached_property
from typing import Any

from benchsheaf.documents.characters import HIDDEN, HIDDEN_SIGN, LOST_SIGN, is_hidden, sign_name
from benchsheaf.mistakes import Code, Mistake, Place

DEEPEST = 24
_UNKNOWN = ("~", "null", "nil", "n/a", "n.a.", "unknown", "tbd", "todo", "?", "??", "???")
UNKNOWN_WORDS = frozenset(("", *_UNKNOWN, *map(str.capitalize, _UNKNOWN), *map(str.upper, _UNKNOWN)))

ANCHOR = Code(
    id="YAML-04",
    meaning="An anchor: a value is named with an ampersand so that it can be repeated.",
    words="`&` names a value for repeating, which is not used here. Put a text that begins with it in quotes.",
)
ALIAS = Code(
    id="YAML-05",
    meaning="An alias: a value is repeated by an asterisk and its name.",
    words="`*` repeats a value: write it out instead. Put a text that begins with it in quotes.",
)
TAG = Code(
    id="YAML-06",
    meaning="A tag: a value is given a sort by an exclamation mark.",
    words="`!` gives a value a sort, which is not used here. Put a text that begins with it in quotes.",
)
MERGE_KEY = Code(
    id="YAML-07",
    meaning="A merge key: `<<` takes over the keys of another mapping.",
    words="`<<` takes over other keys, which is not used here. Write the keys out.",
)
KEY_AGAIN = Code(
    id="YAML-08",
    meaning="A key stands twice in one mapping.",
    words="`{key}` already stands in line {line}. Keep one of the two, or begin a new item with `- ` above this.",
    example={"key": "rated", "line": "12"},
)
KEY_NOT_TEXT = Code(
    id="YAML-09",
    meaning="A key is missing, or is a list or a mapping.",
    words="A key is plain text. Write `key: value`.",
)
TOO_DEEP = Code(
    id="YAML-10",
    meaning="Lists and mappings stand more than 24 deep in each other.",
    words="This stands {deepest} deep in lists and groups. No data is that deep: look for brackets too many.",
    example={"deepest": "25"},
)
NO_VALUE = Code(
    id="YAML-11",
    meaning="A key or an item of a list has no value.",
    words="Nothing is written here. Leave the whole line out if it is not known.",
)
UNKNOWN_WORD = Code(
    id="YAML-12",
    meaning="A word that stands for a missing value.",
    words="What is not known is left out: delete the whole line. If this is the text itself, put it in quotes.",
)
EMPTY_LIST = Code(
    id="YAML-13",
    meaning="A list or a mapping holds nothing.",
    words="This holds nothing. Leave the whole line out.",
)
COMMA_CUT = Code(
    id="YAML-22",
    meaning="A piece between braces has no colon, mostly because a comma cut a text in two.",
    words="No colon and space follow `{piece}`. In braces a comma ends a text: put a text that holds one in quotes.",
    example={"piece": "the blue one"},
)

LEFT_OUT = (NO_VALUE, UNKNOWN_WORD, HIDDEN_SIGN, LOST_SIGN, ANCHOR, ALIAS, TAG, COMMA_CUT)
"""What is wrong with a text that is then left out, so that its field only seems to be missing."""
ODD_KEYS = frozenset(("", "<<"))
_WARY_SIGNS = "&*!\\\ufffd"
# Two patterns, each of which begins with one sign: such a one is found quickly.
_BLANKS = (re.compile(r"\"\s+\""), re.compile(r"'\s+'"))
_OPENING = {"[": "]", "{": "}"}


def _joined(text: str | None, piece: str) -> str | None:
    """What was meant where a comma cut a text in braces: a number with a point, a field with a space, or quotes."""
    field = re.fullmatch(r"([a-z][a-z0-9_]*):(\S.*)", piece)
    if field:
        return f"{field[1]}: {field[2]}"
    if text and re.fullmatch(r"[-+]?[0-9]+", text) and re.match(r"[0-9]", piece):
        return f"{text}.{piece}"
    is_words = text is not None and text[:1].isalpha() and '"' not in text + piece
    return f'"{text}, {piece}"' if is_words else None


class Stop(Exception):
    """The rest of the file cannot be followed."""


def is_wary(text: str) -> bool:
    """Whether a sign stands in a text that makes more than the plain look necessary."""
    return any(sign in text for sign in _WARY_SIGNS) or any(blank.search(text) for blank in _BLANKS)


class Refusals:
    """Judges the odd events of one text, and keeps the mistakes.

    `within` is how the reader came to where it is: for each open list or mapping what holds it (values, spots, whether
    that is a mapping, and under which key). `hidden` is given the path of each text that a refused sign was taken out
    of, by its lines.
    """

    def __init__(self, text: str, file: str, hidden: dict[int, str] | None = None) -> None:
        self.text = text
        self.hidden = {} if hidden is None else hidden
        self.file = file
        self.mistakes: list[Mistake] = []
        self.within: list[tuple[Any, Any, bool, str | None]] = []
        self.wary = is_wary(text)

    @cached_property
    def lines(self) -> list[str]:
        """The lines of the text, and one more, as the parser may end beyond the last."""
        return [*self.text.split("\n"), ""]

    def tell(self, code: Code, mark: Any, under: str | None = None, found: str | None = None, **fills: str) -> None:
        """Keeps a mistake at a mark of the parser, its path made of the keys that lead there."""
        keys = [*(step[3] for step in self.within), under]
        place = Place(file=self.file, line=mark.line + 1, column=mark.column + 1)
        self.mistakes.append(code.at(place, ".".join(step for step in keys if step), found, **fills))

    def source(self, event: Any) -> str:
        """The characters from which an event was read, as far as they stand on its first line."""
        number: int = event.start_mark.line
        start: int = event.start_mark.column
        line = self.lines[number].rstrip("\r")
        stop: int = event.end_mark.column if event.end_mark.line == number else len(line)
        return line[start:stop]

    def open_place(self) -> tuple[int, int] | None:
        """Line and column, counted from 0, of the bracket that was opened last and is not closed yet."""
        for _, spots, is_map, key in reversed(self.within):
            spot = (spots.get(key) if is_map else spots[-1]) if spots else None
            if spot and self.lines[spot.line - 1][spot.column - 1] in _OPENING:
                return spot.line - 1, spot.column - 1
            break
        return None

    def keeps_key(self, event: Any, spots: dict[str, Any]) -> bool:
        """Whether a key that is odd, or might be, is to be kept with its value."""
        key, mark = event.value, event.start_mark
        self._decorated(event, None)
        if key == "<<":
            self.tell(MERGE_KEY, mark)
            return False
        if not key.strip():
            self.tell(KEY_NOT_TEXT, mark, found=self.source(event))
            return False
        if key in spots:
            self.tell(KEY_AGAIN, mark, key, key=key, line=str(spots[key].key_line))
            # Where a `- ` is missing, all keys of an item stand twice in the one before: that is one slip.
            begins = next(iter(spots.values()))
            about = ("key again", self.file, str(begins.key_line), str(begins.key_column))
            self.mistakes[-1] = replace(self.mistakes[-1], about=about)
            return False
        return not self._hides_a_sign(event, None)

    def keeps_value(self, event: Any, key: str | None) -> bool:
        """Whether a text that is odd, or might be, is to be kept."""
        text, mark = event.value, event.start_mark
        if self._decorated(event, key):
            return False
        if not self.within:
            return True
        if not text.strip():
            if not event.style and key is not None and self._before(mark) not in ":,":
                self.tell(COMMA_CUT, mark, key, piece=key)
                self.mistakes[-1] = replace(self.mistakes[-1], nearest=_joined(self._cut_text(), key))
            else:
                self.tell(NO_VALUE, mark, key)
            return False
        if not event.style and text in UNKNOWN_WORDS:
            self.tell(UNKNOWN_WORD, mark, key, text)
            return False
        return not self._hides_a_sign(event, key)

    def _cut_text(self) -> str | None:
        """Takes the text before a comma that cut it out of the group that is open, as it is half of one."""
        values, spots, is_map, key = self.within[-1]
        if not values or (is_map and key not in values):
            return None
        group, group_spots = (values[key], spots[key].inner) if is_map else (values[-1], spots[-1].inner)
        last = next(reversed(group), None)
        if last is None or not isinstance(group[last], str):
            return None
        del group_spots[last]
        text: str = group.pop(last)
        return text

    def enter(self, event: Any, is_key: bool, key: str | None) -> None:
        """Judges the beginning of a list or mapping that is odd, or might be.

        Errors: Stop, where it stands in place of a key or too deep.
        """
        self._decorated(event, key)
        if is_key:
            self.tell(KEY_NOT_TEXT, event.start_mark, found=self.source(event))
            raise Stop
        if len(self.within) >= DEEPEST:
            self.tell(TOO_DEEP, event.start_mark, key, deepest=str(DEEPEST + 1))
            raise Stop

    def leave_empty(self, event: Any, empty: Any) -> None:
        """Takes an empty list or mapping out of what holds it; it is a mistake if nothing was written in it either."""
        values, spots, is_map, key = self.within[-1]
        before = self._before(event.start_mark)
        if before in _OPENING:
            self.tell(EMPTY_LIST, event.start_mark, found=before + _OPENING[before])
        if not is_map:
            values.pop()
            spots.pop()
        elif values.get(key) is empty:
            del values[key], spots[key]

    def refuse_alias(self, event: Any, is_key: bool, key: str | None) -> None:
        """Keeps the mistake of an alias.

        Errors: Stop, where it stands in place of a key.
        """
        self.tell(ALIAS, event.start_mark, key, self.source(event))
        if is_key:
            raise Stop

    def _decorated(self, event: Any, key: str | None) -> bool:
        source = self.source(event) if event.anchor is not None or event.tag is not None else ""
        if event.anchor is not None:
            self.tell(ANCHOR, event.start_mark, key, source)
        elif event.tag is not None:
            self.tell(TAG, event.start_mark, key, source)
        return bool(source)

    def _hides_a_sign(self, event: Any, key: str | None) -> bool:
        """Whether a text holds a refused sign; one that stands in the file itself is told already, but not its path."""
        signs = HIDDEN.finditer(event.value)
        hidden = next((sign for sign in signs if sign[0] == "\r" or is_hidden(sign)), None)
        if hidden and hidden[0] == "\ufffd":
            path = ".".join(step for step in (*(step[3] for step in self.within), key) if step)
            lines = range(event.start_mark.line + 1, event.end_mark.line + 2)
            self.hidden |= dict.fromkeys(lines, path)
        elif hidden:
            self.tell(HIDDEN_SIGN, event.start_mark, key, self.source(event), sign=sign_name(hidden[0]))
        return hidden is not None

    def _before(self, mark: Any) -> str:
        """The last sign before a mark that is no space."""
        before: str = self.lines[mark.line][: mark.column].rstrip()
        line: int = mark.line
        while not before and line:
            line -= 1
            before = self.lines[line].rstrip()
        return before[-1:]
