"""The quick walk through a description that is right never lets pass what the validator refuses."""

import json
import random
import re
from copy import deepcopy
from typing import Any

from benchsheaf.conformity import conformed, measured
from benchsheaf.conformity.sound import Doubt, Shell, sound_walk
from benchsheaf.documents import Entry, text_and_mistakes
from benchsheaf.fields import built_in_schemas, specimens
from test_schema_export import mutate, spots

SCHEMAS = built_in_schemas()
KINDS = sorted(SCHEMAS.kinds)


def entry_of(kind: str, document: Any) -> Entry:
    """A document as it is read from a file."""
    read, _ = text_and_mistakes(json.dumps(document, ensure_ascii=False).encode(), "a.yml")
    assert read is not None
    return Entry(kind, "a", (read,), dict.fromkeys(read.values, read))


def with_another_number(document: Any, dice: random.Random) -> None:
    """One number of the document changed, so that bounds and what must be above another are met and missed."""
    holder, key = dice.choice([(holder, key) for holder, key in spots(document) if isinstance(holder[key], str)])
    number = dice.choice(["0", "1", "-1", "0.5", "12", "99999999"])
    holder[key] = re.sub(r"-?[0-9]+(\.[0-9]+)?", number, holder[key], count=1)


def test_both_ways_say_the_same_of_a_thousand_documents() -> None:
    """Documents changed at random: the quick walk has no doubt exactly where the validator finds nothing."""
    dice = random.Random(1977)
    whole = specimens(SCHEMAS)
    right = 0
    for number in range(1000):
        kind = dice.choice(KINDS)
        document = deepcopy(whole[kind])
        dice.choice([mutate, with_another_number, with_another_number])(document, dice)
        entry = entry_of(kind, document)
        told = measured(entry, SCHEMAS.kinds[kind], whole=True)
        try:
            values = sound_walk(Shell(SCHEMAS.kinds[kind]))(entry.values)
        except Doubt:
            assert told.mistakes, (number, kind, document)
        else:
            assert (told.mistakes, told.values) == ([], values), (number, kind, document)
            right += 1
        assert conformed(entry, SCHEMAS.kinds[kind], whole=True) == told
    assert 200 < right < 800
