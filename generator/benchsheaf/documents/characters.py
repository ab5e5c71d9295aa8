"""The bytes of a file become text in which every sign can be seen."""

import codecs
import re
import unicodedata
from collections.abc import Iterator

from benchsheaf.mistakes import Code, Mistake, Place

LARGEST_BYTES = 512 * 1024

TOO_LARGE = Code(
    id="FILE-04",
    meaning="A data file is larger than 512 KiB.",
    words="This file is larger than 512 KiB. Split it: each top-level key may stand in a file of its own.",
)
NOT_UTF8 = Code(
    id="FILE-05",
    meaning="A data file was not saved as UTF-8.",
    words="The byte {byte} is not UTF-8 text. Save the file as UTF-8, then look at this line again.",
    example={"byte": "B5"},
)
NOT_TEXT = Code(
    id="FILE-06",
    meaning="A data file holds bytes of zero, as UTF-16 and programs do.",
    words="A byte of zero stands here: this is no text, or it was saved as UTF-16. Save it as UTF-8.",
)
HIDDEN_SIGN = Code(
    id="FILE-07",
    meaning="A sign that cannot be seen, or that turns the direction of text.",
    words="The sign {sign} cannot be seen where it stands. Delete it, or write what was meant.",
    example={"sign": "U+202E (right-to-left override)"},
)
LOST_SIGN = Code(
    id="FILE-08",
    meaning="The sign that programs leave where they lost another.",
    words="Some program lost a sign here and left U+FFFD (replacement character). Write the sign that was meant.",
)
TAB = Code(
    id="YAML-25",
    meaning="A tab, or another sign that is no plain space, where spaces belong.",
    words="A {sign} stands where plain spaces belong. Use spaces, here and in the whole file.",
    example={"sign": "tab"},
)

# Control signs, soft hyphen, marks and overrides of direction, separators of lines and paragraphs, signs of no width,
# lone halves of pairs, signs set aside for inner use, tags; and three that are judged by what stands beside them.
# Source: The Unicode Standard, chapter 23 (special areas and format characters), from memory.
HIDDEN = re.compile(
    r"[\x00-\x09\x0b-\x1f\x7f-\x9f\u00ad\u061c\u180e\u200b-\u200f\u2028-\u202e\u2060-\u206f\ud800-\udfff"
    r"\ufdd0-\ufdef\ufeff\ufff9-\uffff\U000e0000-\U000e007f"
    + "".join(rf"\U{plane:04x}fffe\U{plane:04x}ffff" for plane in range(1, 17))
    + "]"
)
_JOINERS = "\u200c\u200d"
_NO_SPACE = r"[\t\u00a0\u1680\u2000-\u200a\u202f\u205f\u3000]"
_ODD_SPACE = re.compile(_NO_SPACE)
_PLAIN_BYTES = bytes((10, *range(32, 127)))
_ODD_INDENT = re.compile(rf"^ *({_NO_SPACE})[^\S\n]*(?=\S)", re.MULTILINE)


def text_of(content: bytes, file: str) -> tuple[str | None, list[Mistake]]:
    """The text of a file's bytes and what is wrong with its signs; no text where its lines could not be followed.

    A refused sign is replaced by U+FFFD, a tab by a space, so that the rest keeps its place and can be judged.
    """
    if len(content) > LARGEST_BYTES:
        return None, [TOO_LARGE.at(Place(file=file))]
    if (zero := content.find(0)) >= 0:
        return None, [NOT_TEXT.at(_place_of_byte(content, zero, file))]
    try:
        text = content.decode("utf-8").removeprefix("\ufeff")
    except UnicodeDecodeError as error:
        return None, [NOT_UTF8.at(_place_of_byte(content, error.start, file), byte=f"{content[error.start]:02X}")]
    # What is left when the plain signs are gone is short: the long way is gone only where it holds something odd.
    left = content.removeprefix(codecs.BOM_UTF8).translate(None, _PLAIN_BYTES).decode("utf-8")
    if content.count(b"\r") == content.count(b"\r\n"):
        left = left.replace("\r", "")
    mistakes = list(_hidden_signs(text, file)) if HIDDEN.search(left) else []
    if _ODD_SPACE.search(left):
        odd = _ODD_INDENT.search(text)
        if odd:
            sign = "tab" if odd[1] == "\t" else sign_name(odd[1])
            return None, [*mistakes, TAB.at(_place_of(text, odd.start(1), file), sign=sign)]
        if (tab := text.find("\t")) >= 0:
            mistakes.append(TAB.at(_place_of(text, tab, file), sign="tab"))
            text = text.replace("\t", " ")
    return (HIDDEN.sub(_replaced, text) if mistakes else text), mistakes


def is_hidden(found: re.Match[str]) -> bool:
    """Whether a match of `HIDDEN` is to be refused: a return before a new line and a joiner inside a script are not."""
    text, at = found.string, found.start()
    if found[0] == "\r":
        return text[at + 1 : at + 2] not in ("", "\n")
    if found[0] in _JOINERS:
        return not (text[at - 1 : at] > "\x7f" and text[at + 1 : at + 2] > "\x7f")
    return True


def sign_name(sign: str) -> str:
    """A sign by its number and name: `U+202E (right-to-left override)`."""
    unnamed = {"Cc": "a control sign", "Cs": "half of a pair"}.get(unicodedata.category(sign), "no sign of any script")
    return f"U+{ord(sign):04X} ({unicodedata.name(sign, unnamed).lower()})"


def _replaced(found: re.Match[str]) -> str:
    return "\ufffd" if is_hidden(found) else found[0]


def _hidden_signs(text: str, file: str) -> Iterator[Mistake]:
    """Each refused sign once a line."""
    for number, line in enumerate(text.split("\n"), 1):
        told: set[str] = set()
        for found in HIDDEN.finditer(line):
            sign = found[0]
            if sign in told or sign == "\t" or not is_hidden(found):
                continue
            told.add(sign)
            place = Place(file=file, line=number, column=found.start() + 1)
            yield LOST_SIGN.at(place) if sign == "\ufffd" else HIDDEN_SIGN.at(place, sign=sign_name(sign))


def _place_of(text: str, at: int, file: str) -> Place:
    return Place(file=file, line=text.count("\n", 0, at) + 1, column=at - text.rfind("\n", 0, at))


def _place_of_byte(content: bytes, at: int, file: str) -> Place:
    start = content.rfind(b"\n", 0, at) + 1
    column = len(content[start:at].decode("utf-8", "replace").removeprefix("\ufeff")) + 1
    return Place(file=file, line=content.count(b"\n", 0, at) + 1, column=column)
