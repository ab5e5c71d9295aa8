"""What a schema asks and what was written instead, as a message says it."""

from decimal import Decimal
from itertools import takewhile

from benchsheaf.fields import Field
from benchsheaf.quantities import printed

_SINGLE = {
    "text": "A single value",
    "integer": "A single number",
    "boolean": "A single `yes` or `no`",
    "quantity": "A single value with its unit",
}
WANTED = _SINGLE | {
    "list": "A list (each item on a line that begins with `- `)",
    "record": "A group of fields (`name: value`, one on a line)",
}
MOST_SPOKEN = 190
"""Signs of a list of words in one message; more would be cut in its middle."""


def listed(words: list[str], last: str) -> str:
    """Words as a sentence holds them; of very many the first ones, and how many others the manual lists."""
    quoted = [f"`{word}`" for word in words]
    whole = quoted[0] if len(quoted) == 1 else f"{', '.join(quoted[:-1])} {last} {quoted[-1]}"
    if len(whole) <= MOST_SPOKEN:
        return whole
    few = list(takewhile(lambda each: len(", ".join(quoted[: quoted.index(each) + 1])) < MOST_SPOKEN - 50, quoted))
    return f"{', '.join(few)} {last} {len(quoted) - len(few)} others, which the manual lists"


def bound(described: Field, value: Decimal | int) -> str:
    """A bound of a field with its unit."""
    return printed(value, described.unit) if described.unit else str(value)


def shape_of(value: object) -> str:
    """What somebody wrote, by its shape."""
    return {"dict": "a group of fields", "list": "a list"}.get(type(value).__name__, "a single value")
