"""Fields at which nothing is written yet, as in a file that was just begun."""

from typing import Any

from benchsheaf.conformity.codes import FIELD_06
from benchsheaf.documents import COMMA_CUT, LEFT_OUT, NO_VALUE, Reading
from benchsheaf.fields import Field, Schemas, data_lines, least_example
from benchsheaf.mistakes import Mistake

Blanks = dict[tuple[str, str], frozenset[str]]


def blanks_told(reading: Reading, schemas: Schemas) -> tuple[list[Mistake], Blanks]:
    """The mistakes of reading, and for each thing the paths of keys at which nothing is written that can be used.

    Where a field must be there, it is said what belongs at it; a field that may be absent is told as it was.
    """
    told: list[Mistake] = []
    blanks: Blanks = {}
    for mistake in reading.mistakes:
        owner = reading.owners.get(mistake.place.file)
        if mistake.path and mistake.code in LEFT_OUT and owner is not None:
            blank = mistake.path
            if mistake.code is COMMA_CUT:  # any field of that group may be the one that was cut
                blank = mistake.path.removesuffix(mistake.fills["piece"])
            blanks[owner] = blanks.get(owner, frozenset()) | {blank}
        if mistake.code is not NO_VALUE or owner is None or owner[0] not in schemas.kinds:
            told.append(mistake)
            continue
        described = _field_at(schemas.kinds[owner[0]], mistake.path)
        told.append(_begun(mistake, described) if described and described.required else mistake)
    return told, blanks


def follows_from_blank(error: Any, path: tuple[str | int, ...], blanks: frozenset[str]) -> bool:
    """Whether one of Cerberus' errors is there only because nothing is written at a field."""
    here = ".".join(step for step in path if isinstance(step, str))
    if f"{here}." in blanks or f"{here.rpartition('.')[0]}." in blanks:
        return error.rule in ("required", "at_least", "needs", "minlength")
    if error.rule == "needs":
        return f"{here.rpartition('.')[0]}.{error.info[0]}".lstrip(".") in blanks
    if error.rule in ("required", "at_least", "minlength"):
        return any(blank == here or blank.startswith(f"{here}.") for blank in blanks)
    return False


def _field_at(kind: Field, path: str) -> Field | None:
    here: Field | None = kind
    for name in path.split("."):
        while here and here.item:
            here = here.item
        here = here.fields.get(name) if here else None
    return here


def _begun(mistake: Mistake, described: Field) -> Mistake:
    lines = data_lines({described.name: least_example(described)})
    sample = lines[0] if len(lines) == 1 else f"{lines[0]} …"
    return FIELD_06.at(mistake.place, mistake.path, help=described.help, sample=sample)
