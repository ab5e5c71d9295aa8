"""What a schema asks of a field, in sentences: for the manual, for editors, for a file that somebody begins with."""

from collections.abc import Iterator, Sequence

from benchsheaf.fields.meaning import FORMS
from benchsheaf.fields.records import Field
from benchsheaf.quantities import MEASURES, printed

_SHAPES = {
    "text": "Text",
    "integer": "A whole number",
    "boolean": "`yes` or `no`",
    "record": "A group of fields",
}


def kind_in_words(described: Field) -> str:
    """What is written at a field: text, a whole number, a voltage with its unit, one of some words, a list of them."""
    if described.item:
        return _list_in_words(described.item)
    if described.unit:
        measure = MEASURES[described.unit]
        return f"{measure.noun[0].upper()}{measure.noun[1:]} with its unit, such as `{measure.wanted}`"
    if described.allowed:
        return _choice(described.allowed)
    if described.form:
        return FORMS[described.form][1].replace(" is wanted", "", 1)
    if described.points_at:
        return "The name of something that is described elsewhere"
    return _SHAPES[described.shape]


def _list_in_words(item: Field) -> str:
    if item.shape == "record":
        return "A list; each item is a group of fields"
    words = kind_in_words(item)
    return f"A list; each item: {words if words.startswith('`') else words[0].lower() + words[1:]}"


def _choice(words: Sequence[str]) -> str:
    return f"One of {spoken_list(words, 'or')}" if len(words) > 1 else f"The word `{words[0]}`"


def spoken_list(words: Sequence[str], last: str) -> str:
    """Names as a sentence holds them: `rail`, `signal` or `key`."""
    quoted = [f"`{word}`" for word in words]
    return quoted[0] if len(quoted) == 1 else f"{', '.join(quoted[:-1])} {last} {quoted[-1]}"


def rules_in_words(described: Field) -> Iterator[str]:
    """What else holds for a field: bounds, what it must be above, what it needs beside it, how many items there are."""
    item = described.item or described
    for one in (described,) if item is described else (described, item):
        if one.least is not None:
            yield f"At least {_number(one, one.least)}."
        if one.most is not None:
            yield f"At most {_number(one, one.most)}."
    if item.of_kind:
        yield f"A part whose kind is {spoken_list(item.of_kind, 'or')}."
    if described.above:
        yield f"Above `{described.above}`."
    if described.needs:
        yield f"Only together with {spoken_list(described.needs, 'and')}."
    if described.shortest > 1:
        yield f"At least {described.shortest} items."
    if item.at_least:
        yield f"At least one of {spoken_list(item.at_least, 'and')} must be there."


def pointer_in_words(described: Field) -> str:
    """What a field points at, as a noun with its article; nothing for a field that points nowhere."""
    pointing = described.points_at or (described.item.points_at if described.item else None)
    if not pointing:
        return ""
    if "[" in pointing:
        listed, _, rest = pointing.partition("[")
        return f"one of the `{rest.partition('].')[2]}` in `{listed}`"
    return family_in_words(pointing)


def family_in_words(family: str) -> str:
    """A family of names as a noun with its article: a part, an outcome."""
    words = family.replace("-", " ")
    return f"{'an' if words[0] in 'aeiou' else 'a'} {words}"


def _number(described: Field, value: object) -> str:
    return printed(value, described.unit) if described.unit else str(value)  # type: ignore[arg-type]
