"""Figures that texts ask for by `[[…]]`: where they are asked for, and whose they are."""

import re
from collections.abc import Iterator, Mapping

from benchsheaf.conformity import Conformed
from benchsheaf.fields import Field
from benchsheaf.links.names import Mention, Path, Thing

MENTION = re.compile(r"(?<!\[)\[\[(?P<path>[^\[\]]+)\]\](?!\])")
"""A path in double brackets; brackets around nothing, or around others, are text."""
OPENS = "[["


def mentions_of(conformed: Conformed) -> tuple[Mention, ...]:
    """All figures that the texts of a description ask for."""
    if not any(document.holds(OPENS) for document in conformed.entry.documents):
        return ()
    return tuple(_mentions(conformed.kind, conformed.values, ()))


def _mentions(described: Field, value: object, at: Path) -> Iterator[Mention]:
    if isinstance(value, dict):
        for name, inner in value.items():
            if name in described.fields:
                yield from _mentions(described.fields[name], inner, (*at, name))
    elif isinstance(value, list) and described.item:
        for index, inner in enumerate(value):
            yield from _mentions(described.item, inner, (*at, index))
    elif isinstance(value, str) and is_told(described):
        for found in MENTION.finditer(value):
            yield Mention(at=at, path=found["path"])


def is_told(described: Field) -> bool:
    """Whether a field is words of a contributor: no name, no pointer, no choice, no form."""
    bound = described.allowed or described.names_item or described.points_at or described.form
    return described.shape == "text" and not bound


def whose(path: str, thing: Thing, held: Mapping[str, str]) -> tuple[Thing, str]:
    """The thing whose figure a path means, and the path from there: `sp-96/reservoir.wait_minutes` is the supply's.

    `held` are the kinds of what the thing holds, by slug; a path without a slug means the thing's own.
    """
    plain = " ".join(path.split())
    slug, slash, rest = plain.partition("/")
    return ((held[slug], slug), rest) if slash and slug in held else (thing, plain)
