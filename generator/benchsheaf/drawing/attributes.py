"""Numbers and words as they stand in the tags of a picture; what recurs in every picture is written once."""

from functools import lru_cache

from benchsheaf.markup import escaped


@lru_cache(maxsize=1 << 14)
def coordinate(value: float) -> str:
    """A length or a place with at most two decimals, the same on every machine; never minus nought."""
    text = f"{value:.2f}".rstrip("0").rstrip(".")
    return "0" if text == "-0" else text


def number(name: str, value: float | None) -> str:
    """An attribute that is a number, with the space before it; nothing where there is none."""
    return "" if value is None else f' {name}="{coordinate(value)}"'


@lru_cache(maxsize=1 << 12)
def word(name: str, value: str | None) -> str:
    """An attribute that is a text, escaped, with the space before it; nothing where there is none."""
    return f' {name}="{escaped(value)}"' if value else ""
