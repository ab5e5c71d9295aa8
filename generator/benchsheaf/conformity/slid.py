"""Items and fields that have slid into what stands before them, because the line that begins their own is missing."""

from collections.abc import Iterator
from typing import Any

from benchsheaf.fields import Field, Misfit, converted

MOST_WORDS = 2  # of a single value: a number and its unit

Path = tuple[str | int, ...]
Slid = tuple[Path, str]
"""Where the first of them stands, and the list or group that it belongs to."""


def without_slid(described: Field, written: Any, path: Path = ()) -> tuple[Any, list[Slid]]:
    """What is written without them, and where they began: what they lack in a strange place is not told."""
    slid: list[Slid] = []
    kept: Any = written
    if described.shape == "record" and isinstance(written, dict):
        kept = {}
        group, strange = _group(described, written)
        if group:
            slid.append(((*path, next(iter(strange))), group))
        for name, inner in written.items():
            if group and name in strange:
                continue
            known = described.fields.get(name)
            for at, other in _breaks(described, written, name):
                slid.append(((*path, name, at), other))
                inner = inner[:at]
            kept[name], deeper = without_slid(known, inner, (*path, name)) if known else (inner, [])
            slid += deeper
    elif described.item and isinstance(written, list):
        several = [without_slid(described.item, each, (*path, index)) for index, each in enumerate(written)]
        kept = [each for each, _ in several]
        slid += [each for _, deeper in several for each in deeper]
    return kept, slid


def _group(described: Field, written: dict[str, Any]) -> tuple[str, list[str]]:
    """The group beside which its own fields stand, where it is missing and nothing else is strange; and these."""
    strange = [name for name in written if name not in described.fields]
    for other in described.fields.values():
        absent = other.shape == "record" and other.name not in written
        if absent and len(strange) > 1 and _is_item(other, dict.fromkeys(strange)):
            return other.name, strange
    return "", strange


def _breaks(described: Field, written: dict[str, Any], name: str) -> Iterator[tuple[int, str]]:
    """Where a list goes on with items of another that is missing beside it, if it does."""
    known, items = described.fields.get(name), written[name]
    if known is None or known.item is None or not isinstance(items, list):
        return
    strange = (at for at, each in enumerate(items) if isinstance(each, dict) and each.keys() - known.item.fields.keys())
    at = next(strange, 0)
    if at == 0:
        return
    for other in described.fields.values():
        if other.name not in written and other.item and all(_is_item(other.item, each) for each in items[at:]):
            yield at, other.name
            return


def _is_item(described: Field, written: Any) -> bool:
    """Whether something has all fields that an item must have, and no other."""
    required = {name for name, inner in described.fields.items() if inner.required}
    return isinstance(written, dict) and bool(required) and required <= written.keys() <= described.fields.keys()


def runs_on(described: Field, written: Any) -> bool:
    """Whether a value is right as far as its first words go, and the text of a field below has slid into it."""
    words = written.split() if isinstance(written, str) else []
    for length in range(1, min(MOST_WORDS, len(words) - 1) + 1):
        value = converted(described, " ".join(words[:length]))
        if not isinstance(value, Misfit) and (not described.allowed or value in described.allowed):
            return True
    return False
