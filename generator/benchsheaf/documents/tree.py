"""Events of the YAML parser become text values and their spots; what YAML could also do is refused by name."""

from typing import Any

import yaml

from benchsheaf.documents.records import Document, Spot
from benchsheaf.mistakes import Code, Mistake, Place

try:
    from yaml.cyaml import CParser as Parser
except ImportError:
    from yaml import SafeLoader as Parser  # type: ignore[assignment]

DEEPEST = 24
UNKNOWN_WORDS = frozenset(("", "~", "null", "Null", "NULL", "nil", "n/a", "N/A", "n.a.", "unknown", "Unknown", "tbd", "TBD", "?"))

NOT_READABLE = Code(
    id="YAML-99",
    meaning="The file cannot be understood from some line on.",
    words="The file cannot be understood here: {what}.",
    example={"what": "x"},
)
NOT_A_MAPPING = Code(id="YAML-01", meaning="", words="A data file is a list of lines `key: value`.")
SECOND_DOCUMENT = Code(id="YAML-02", meaning="", words="A second document begins here; one file holds one.")
DECORATED = Code(id="YAML-04", meaning="", words="Anchors, aliases and tags are not used here.")
DUPLICATE = Code(id="YAML-08", meaning="", words="`{key}` already stands in line {line}.", example={"key": "name", "line": "1"})
KEY_NOT_TEXT = Code(id="YAML-09", meaning="", words="A key is plain text.")
TOO_DEEP = Code(id="YAML-11", meaning="", words="Nested more than 24 deep.")
NO_VALUE = Code(id="YAML-12", meaning="", words="Nothing is written here: leave the line out.")


class _Stop(Exception):
    pass


def tree(text: str, file: str) -> tuple[Document | None, list[Mistake]]:
    """The values of a text, and what is wrong with it; no document where it could not be read to its end."""
    mistakes: list[Mistake] = []
    try:
        values, spots = _grown(text, file, mistakes)
    except _Stop:
        return None, mistakes
    except yaml.YAMLError as error:
        mark = getattr(error, "problem_mark", None) or getattr(error, "context_mark", None)
        place = Place(file=file, line=mark.line + 1, column=mark.column + 1) if mark else Place(file=file)
        mistakes.append(NOT_READABLE.at(place, what=str(getattr(error, "problem", "") or "")))
        return None, mistakes
    return Document(file, values, spots), mistakes


def _grown(text: str, file: str, mistakes: list[Mistake]) -> tuple[dict[str, Any], dict[str, Spot]]:
    parser = Parser(text)
    get = parser.get_event

    def tell(code: Code, mark: Any, **fills: str) -> None:
        mistakes.append(code.at(Place(file=file, line=mark.line + 1, column=mark.column + 1), **fills))

    top: list[Any] = []
    top_spots: list[Any] = []
    values: Any = top
    spots: Any = top_spots
    is_map = False
    key: str | None = None
    keep = True
    key_line = key_column = 0
    stack: list[Any] = []
    documents = 0
    while True:
        event = get()
        kind = event.__class__
        mark = event.start_mark
        if kind is yaml.ScalarEvent:
            if event.anchor is not None or event.tag is not None:
                tell(DECORATED, mark)
            word = event.value
            if is_map and key is None:
                keep = word not in values
                if not keep:
                    tell(DUPLICATE, mark, key=word, line=str(spots[word].key_line))
                key, key_line, key_column = word, mark.line + 1, mark.column + 1
                continue
            if word in UNKNOWN_WORDS and (not word or event.style is None):
                tell(NO_VALUE, mark)
                key = None
                continue
            spot = Spot(mark.line + 1, mark.column + 1, key_line, key_column, None)
            if not is_map:
                values.append(word)
                spots.append(spot)
            else:
                if keep:
                    values[key] = word
                    spots[key] = spot
                key = None
        elif kind is yaml.MappingStartEvent or kind is yaml.SequenceStartEvent:
            if event.anchor is not None or event.tag is not None:
                tell(DECORATED, mark)
            if is_map and key is None:
                tell(KEY_NOT_TEXT, mark)
                raise _Stop
            if len(stack) >= DEEPEST:
                tell(TOO_DEEP, mark)
                raise _Stop
            new: Any = {} if kind is yaml.MappingStartEvent else []
            new_spots: Any = {} if kind is yaml.MappingStartEvent else []
            spot = Spot(mark.line + 1, mark.column + 1, key_line if is_map else 0, key_column if is_map else 0, new_spots)
            if not is_map:
                values.append(new)
                spots.append(spot)
            elif keep:
                values[key] = new
                spots[key] = spot
            stack.append((values, spots, is_map))
            values, spots, is_map, key = new, new_spots, kind is yaml.MappingStartEvent, None
        elif kind is yaml.MappingEndEvent or kind is yaml.SequenceEndEvent:
            if not values:
                tell(NO_VALUE, mark)
            values, spots, is_map = stack.pop()
            key, key_line, key_column = None, 0, 0
        elif kind is yaml.AliasEvent:
            tell(DECORATED, mark)
            if is_map and key is None:
                raise _Stop
            key = None
        elif kind is yaml.DocumentStartEvent:
            documents += 1
            if documents > 1:
                tell(SECOND_DOCUMENT, mark)
                raise _Stop
        elif kind is yaml.StreamEndEvent:
            break
    if not top or not isinstance(top[0], dict):
        mistakes.append(NOT_A_MAPPING.at(Place(file=file, line=1, column=1)))
        raise _Stop
    return top[0], top_spots[0].inner
