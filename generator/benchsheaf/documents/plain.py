"""The values of a text in which nothing is odd, without their places: most files are such, and nobody asks for them."""

from typing import Any

import yaml
from yaml import (
    MappingEndEvent,
    MappingStartEvent,
    ScalarEvent,
    SequenceEndEvent,
    SequenceStartEvent,
    StreamEndEvent,
)

from benchsheaf.documents.records import Value
from benchsheaf.documents.refusals import DEEPEST, ODD_KEYS, UNKNOWN_WORDS, is_wary
from benchsheaf.documents.strays import has_strays

Parser: Any
try:
    from yaml._yaml import CParser

    Parser = CParser
except ImportError:  # An installation without the library in C reads the same, several times slower.
    Parser = yaml.SafeLoader

# The parser in Python also lets the errors through that impossible escapes and numbers raise.
PARSER_ERRORS = (yaml.YAMLError, ValueError, OverflowError)


def plain_values(text: str) -> dict[str, Value] | None:
    """What a text holds, or None if anything in it may have to be refused: then it is looked at closely."""
    if is_wary(text) or has_strays(text) or text.startswith("%") or "\n%" in text:
        return None
    try:
        top = _grown(Parser(text).get_event)
    except PARSER_ERRORS:
        return None
    return top if isinstance(top, dict) else None


def _grown(get: Any) -> Any:
    """The one value that the events of a text make, or None.

    One long loop over local names, as every value of every file goes through it: calls would double its time.
    """
    get()  # the stream begins
    get()  # the document begins
    top: list[Any] = []
    values: Any = top
    within: list[Any] = []
    is_map = False
    while True:
        event = get()
        kind = event.__class__
        if is_map and kind is ScalarEvent:
            key = event.value
            if key in values or key in ODD_KEYS:
                return None
            event = get()
            kind = event.__class__
            if kind is ScalarEvent:
                text = event.value
                if text in UNKNOWN_WORDS:
                    return None
                values[key] = text
                continue
            if (kind is not MappingStartEvent and kind is not SequenceStartEvent) or len(within) >= DEEPEST:
                return None
            within.append((values, True))
            values[key] = values = {} if kind is MappingStartEvent else []
            is_map = kind is MappingStartEvent
        elif kind is MappingEndEvent or kind is SequenceEndEvent:
            if not values:
                return None
            values, is_map = within.pop()
        elif is_map:
            return None  # a list or a mapping in the place of a key
        elif kind is ScalarEvent:
            text = event.value
            if text in UNKNOWN_WORDS:
                return None
            values.append(text)
        elif kind is MappingStartEvent or kind is SequenceStartEvent:
            if len(within) >= DEEPEST:
                return None
            within.append((values, False))
            inner: Any = {} if kind is MappingStartEvent else []
            values.append(inner)
            values = inner
            is_map = kind is MappingStartEvent
        else:  # the document ends; there is no alias, as a sign of it would have made the text an odd one
            return top[0] if get().__class__ is StreamEndEvent and top else None
