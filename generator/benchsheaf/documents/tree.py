"""Events of the YAML parser become text values and their spots, in one pass; no object of YAML is ever built."""

from dataclasses import dataclass
from typing import Any
from zlib import compress, decompress

import yaml

from benchsheaf.documents.plain import PARSER_ERRORS, Parser, plain_values
from benchsheaf.documents.records import Document, Spot
from benchsheaf.documents.refusals import (
    COMMA_CUT,
    DEEPEST,
    KEY_NOT_TEXT,
    NO_VALUE,
    ODD_KEYS,
    UNKNOWN_WORDS,
    Refusals,
    Stop,
)
from benchsheaf.documents.shape import is_second_document, refuse_shape
from benchsheaf.documents.strays import Span, has_strays, strays
from benchsheaf.documents.syntax import broken_syntax
from benchsheaf.mistakes import Mistake

QUICKLY = 1  # how hard a text is packed


def tree(text: str, file: str, hidden: dict[int, str]) -> tuple[Document | None, list[Mistake]]:
    """The document of a text and what is wrong with it; no document where it could not be followed to its end.

    `hidden` is filled with the paths of texts that a refused sign was taken out of, by their lines.
    Where nothing in the text is odd its places are found when one is asked for; until then only the text is kept.
    """
    plain = plain_values(text)
    if plain is None:
        return close_look(text, file, hidden)
    document = Document(file, _PlainText(text, file))
    document.__dict__["values"] = plain
    return document, []


def close_look(text: str, file: str, hidden: dict[int, str] | None = None) -> tuple[Document | None, list[Mistake]]:
    """The same for a text in which something may be odd; it takes longer."""
    refusals = Refusals(text, file, hidden)
    document = None
    try:
        values, spots = _grown(refusals)
        if values and isinstance(values[0], dict) and values[0]:
            document = Document(file, _LookedAt(values[0], spots[0].inner))
        else:
            refuse_shape(refusals, values, spots)
    except Stop:
        pass
    if has_strays(text):
        _refuse_strays(refusals, document)
    return document, refusals.mistakes


@dataclass(slots=True)
class _PlainText:
    """A text in which nothing is odd: values and spots are found in it again."""

    text: str | bytes | None
    file: str

    def values(self) -> Any:
        """What stands in the text."""
        return plain_values(self._unpacked())

    def spots(self) -> Any:
        """The spot of each value."""
        _, spots = _grown(Refusals(self._unpacked(), self.file))
        return spots[0].inner

    def pack(self) -> None:
        """Keep the text in a fifth of the room."""
        if isinstance(self.text, str):
            self.text = compress(self.text.encode(), QUICKLY)

    def forget(self) -> None:
        """Keep nothing."""
        self.text = None

    def holds(self, sign: str) -> bool:
        """Whether a sign stands in the text, be it in a comment."""
        return sign in self._unpacked()

    def lines(self) -> list[str]:
        """The lines of the text."""
        return self._unpacked().split("\n")

    def _unpacked(self) -> str:
        """The text as it was read.

        Errors: ValueError if it has been forgotten.
        """
        if self.text is None:
            raise ValueError(f"{self.file} has been forgotten")
        return self.text if isinstance(self.text, str) else decompress(self.text).decode()


@dataclass(frozen=True, slots=True)
class _LookedAt:
    """What was found in a text by a close look, without what is refused."""

    found: Any
    places: Any

    def values(self) -> Any:
        """What stands in the text."""
        return self.found

    def spots(self) -> Any:
        """The spot of each value."""
        return self.places

    def pack(self) -> None:
        """Nothing: to find it once more would take long."""

    def forget(self) -> None:
        """Nothing: such files are few."""

    def lines(self) -> list[str]:
        """None: the text is no longer there."""
        return []

    def holds(self, sign: str) -> bool:
        """Perhaps: the text is no longer there to look."""
        return True


def _grown(refusals: Refusals) -> tuple[list[Any], list[Spot]]:
    """The values of a text and their spots, each in a list of one.

    One long loop over local names, as every value of every file goes through it: calls would double its time.

    Errors: Stop, where the text cannot be followed.
    """
    top: list[Any] = []
    top_spots: list[Spot] = []
    values: Any = top
    spots: Any = top_spots
    is_map = False
    key: str | None = None
    keep = True
    key_line = key_column = documents = 0
    within, wary, new = refusals.within, refusals.wary, tuple.__new__
    event: Any = None
    try:
        get = Parser(refusals.text).get_event
        while True:
            event = get()
            kind = event.__class__
            if kind is yaml.ScalarEvent:
                text = event.value
                mark = event.start_mark
                if is_map and key is None:
                    keep = not (wary or text in values or text in ODD_KEYS) or refusals.keeps_key(event, spots)
                    key = text
                    key_line = mark.line + 1
                    key_column = mark.column + 1
                elif (wary or text in UNKNOWN_WORDS) and not refusals.keeps_value(event, key):
                    key = None
                elif not is_map:
                    values.append(text)
                    spots.append(new(Spot, (mark.line + 1, mark.column + 1, 0, 0, None)))
                else:
                    if keep:
                        values[key] = text
                        spots[key] = new(Spot, (mark.line + 1, mark.column + 1, key_line, key_column, None))
                    key = None
            elif kind is yaml.MappingStartEvent or kind is yaml.SequenceStartEvent:
                if wary or (is_map and key is None) or len(within) >= DEEPEST:
                    refusals.enter(event, is_map and key is None, key)
                mark = event.start_mark
                inner: Any = {} if kind is yaml.MappingStartEvent else []
                inner_spots: Any = {} if kind is yaml.MappingStartEvent else []
                if not is_map:
                    values.append(inner)
                    spots.append(new(Spot, (mark.line + 1, mark.column + 1, 0, 0, inner_spots)))
                elif keep:
                    values[key] = inner
                    spots[key] = new(Spot, (mark.line + 1, mark.column + 1, key_line, key_column, inner_spots))
                within.append((values, spots, is_map, key))
                values, spots, is_map, key = inner, inner_spots, kind is yaml.MappingStartEvent, None
            elif kind is yaml.MappingEndEvent or kind is yaml.SequenceEndEvent:
                if not values:
                    refusals.leave_empty(event, values)
                values, spots, is_map, _ = within.pop()
                key = None
            elif kind is yaml.AliasEvent:
                refusals.refuse_alias(event, is_map and key is None, key)
                key = None
            elif kind is yaml.DocumentStartEvent:
                if is_second_document(refusals, event, documents):
                    break
                documents += 1
            elif kind is yaml.StreamEndEvent:
                break
    except PARSER_ERRORS as error:
        refusals.mistakes = broken_syntax(refusals, error, event)
        raise Stop from None
    return top, top_spots


def _spans(text: str) -> tuple[list[Span], tuple[int, int] | None]:
    """Where the texts of a file run, and where the reading came to if it did not come to the end."""
    spans: list[Span] = []
    documents = 0
    event: Any = None
    try:
        get = Parser(text).get_event
        while True:
            event = get()
            start, end = event.start_mark, event.end_mark
            if isinstance(event, yaml.ScalarEvent):
                spans.append(Span(start.line, start.column, end.line, end.column, event.style or ""))
            elif isinstance(event, yaml.DocumentStartEvent):
                documents += 1
            if documents > 1 or isinstance(event, yaml.StreamEndEvent):
                return spans, (start.line, start.column) if documents > 1 else None
    except PARSER_ERRORS:
        return spans, (event.end_mark.line, event.end_mark.column) if event else (0, 0)


def _refuse_strays(refusals: Refusals, document: Document | None) -> None:
    """Keeps the mistakes of stray signs; what follows from one is not told, a text that it may have cut is left out."""
    found = list(strays(refusals.text, refusals.file, *_spans(refusals.text)))
    lines = {mistake.place.line for mistake, _ in found}
    following = (NO_VALUE, COMMA_CUT, KEY_NOT_TEXT)
    known = [told for told in refusals.mistakes if told.code not in following or told.place.line not in lines]
    refusals.mistakes = known + [mistake for mistake, _ in found]
    cut = {(span.line + 1, span.column + 1) for _, span in found if span}
    inner: list[tuple[Any, Any]] = [(document.values, document.spots)] if document and cut else []
    while inner:
        values, spots = inner.pop()
        for key in list(spots) if isinstance(spots, dict) else reversed(range(len(spots))):
            if spots[key].inner:
                inner.append((values[key], spots[key].inner))
            elif spots[key][:2] in cut:
                del values[key], spots[key]
