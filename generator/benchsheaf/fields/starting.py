"""A file to begin a description with: every field that must be there, empty, and beside it what belongs at it.

Nothing in it passes for a fact: examples stand in comments only, and `check` names every field that is still empty.
"""

import textwrap
from collections.abc import Iterator, Mapping

from benchsheaf.fields.examples import least_fields
from benchsheaf.fields.meaning import example_text
from benchsheaf.fields.records import SAFETY, Field
from benchsheaf.fields.sentences import kind_in_words, rules_in_words
from benchsheaf.fields.written_form import written

WIDTH = 110
_OPENING = (
    "A description that was just begun. Write what you know after each colon; an example in a comment is an example and"
    " no fact. `benchsheaf check` names every line that is still empty."
)
_REST = (
    "What else can be told, and is left out where it is not known. Take the `#` away and fill it in; the fields of each"
    " stand in the manual."
)
_FIRST = " Asked for before all else: it keeps somebody from harm."


def starting_text(described: Field, given: Mapping[str, str]) -> str:
    """The text of a file to begin a kind of description with.

    `given` are values of top-level fields that are known already, such as the name.
    """
    must = least_fields(described, also=tuple(given))
    lines = [*_comment(_OPENING, ""), ""]
    for name, inner in must.items():
        lines += [*_field_lines(inner, "", given.get(name)), ""]
    rest = [each for name, each in described.fields.items() if name not in must and each.points_at != "source"]
    if rest:
        lines += [*_comment(_REST, ""), "#"]
        for inner in sorted(rest, key=lambda each: each.wanted != SAFETY):
            lines.append(f"# {inner.name}:")
            first = _FIRST if inner.wanted == SAFETY else ""
            lines += _comment(f"{inner.label}: {inner.help}{first}", "", deeper="  ")
    return "\n".join(lines).rstrip("\n") + "\n"


def _field_lines(described: Field, indent: str, given: str | None = None) -> Iterator[str]:
    for words in _says(described):
        yield from _comment(words, indent)
    yield from _empty(described, indent, given)


def _empty(described: Field, indent: str, given: str | None = None) -> Iterator[str]:
    """The key of a field with nothing after it, or with what must stand below it."""
    if described.shape == "record":
        yield f"{indent}{described.name}:"
        for inner in least_fields(described).values():
            yield from _field_lines(inner, indent + "  ")
    elif described.item:
        yield f"{indent}{described.name}:"
        for number in range(max(1, described.shortest)):
            yield from _item(described.item, indent + "  ", told=number == 0)
    else:
        yield f"{indent}{described.name}:" + (f" {written(given)}" if given else "")


def _item(item: Field, indent: str, *, told: bool) -> Iterator[str]:
    """An item of a list; its first line begins with a hyphen."""
    if item.shape != "record":
        yield f"{indent}-"
        return
    begun = False
    for inner in least_fields(item).values():
        for words in _says(inner) if told else ():
            yield from _comment(words, indent + "  " if begun else indent)
        for line in _empty(inner, indent + "  "):
            yield line if begun or line.lstrip().startswith("#") else f"{indent}- {line.lstrip()}"
            begun = True


def _says(described: Field) -> Iterator[str]:
    """What belongs at a field: its name in words, its sentence, its kind and rules; then an example by itself."""
    words = [f"{described.label}: {described.help}"]
    if described.allowed or described.form or described.shape not in ("text", "record", "list"):
        words.append(f"{kind_in_words(described).partition(', such as')[0]}.")
    yield " ".join([*words, *rules_in_words(described)])
    if described.shape not in ("record", "list"):
        yield f"For example: {example_text(described)}"
    elif described.item and described.item.shape != "record" and isinstance(described.example, list):
        yield f"For example: {', '.join(str(each) for each in described.example)}"


def _comment(words: str, indent: str, deeper: str = "") -> list[str]:
    lead = f"{indent}# {deeper}"
    return textwrap.wrap(words, WIDTH, initial_indent=lead, subsequent_indent=lead, break_on_hyphens=False)
