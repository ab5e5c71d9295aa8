"""What a schema asks and what was written instead, as a message says it."""

import re
from decimal import Decimal
from itertools import takewhile

from benchsheaf.fields import Field, data_lines, least_example, least_fields
from benchsheaf.mistakes import LONGEST_FILL
from benchsheaf.quantities import printed

_SINGLE = {
    "text": "A single value",
    "integer": "A single number",
    "boolean": "A single `yes` or `no`",
    "quantity": "A single value with its unit",
}
_LIST = "A list (each item on a line that begins with `- `)"
MOST_SAMPLE = 110
"""Signs of a line that is shown as an example."""
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


def choices(words: list[str], *, is_one_near: bool) -> str:
    """The words that a field knows: all of them where none of them is offered, if that can be read at all."""
    plain = f"{', '.join(words[:-1])} or {words[-1]}"
    told = listed(words, "or")
    return plain if told.endswith("lists") and not is_one_near and len(plain) <= LONGEST_FILL else told


def sample_line(described: Field) -> str:
    """What to add for a field that is missing: its line with an example, or the line and what belongs below it."""
    lines = data_lines({described.name: least_example(described)})
    if len(lines) == 1 and len(lines[0]) <= MOST_SAMPLE:
        return f"a line such as `{lines[0]}`"
    inside = least_fields(described.item or described)
    if described.item and described.item.shape == "record":
        return f"the line `{described.name}:` and below it items of {listed(list(inside), 'and')}"
    if described.shape == "record":
        return f"the line `{described.name}:` and below it {listed(list(inside), 'and')}"
    return f"a line such as `{lines[0]}`" if len(lines) == 1 else f"the line `{described.name}:` and below it its items"


def wanted_shape(described: Field, found: object) -> str:
    """The shape that a field asks for, as what was found would look in it."""
    if described.shape == "list":
        words = re.split(r"\s*,\s*", found.strip("[]() ")) if isinstance(found, str) else []
        plain = words and all(re.fullmatch(r"[\w./+-][\w ./+-]*", word) for word in words)
        is_single = described.item is not None and described.item.shape not in ("record", "list")
        line = f"[{', '.join(words)}]" if plain and is_single else ""
        return f"A list (`{line}`, or each item on a line with `- ` before it)" if line else _LIST
    if described.shape == "record":
        line = data_lines({"group": least_example(described)})[0].removeprefix("group:").strip()
        fields = listed(list(least_fields(described)), "and")
        return f"A group of fields ({f'`{line}`' if line else f'{fields}, each on a line'})"
    return _SINGLE[described.shape]


def bound(described: Field, value: Decimal | int) -> str:
    """A bound of a field with its unit."""
    return printed(value, described.unit) if described.unit else str(value)


def shape_of(value: object) -> str:
    """What somebody wrote, by its shape."""
    return {"dict": "a group of fields", "list": "a list"}.get(type(value).__name__, "a single value")
