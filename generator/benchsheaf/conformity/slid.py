"""Items that have slid into the list before theirs, because the line that names their own list is missing."""

from collections.abc import Iterator
from typing import Any

from benchsheaf.fields import Field

Path = tuple[str | int, ...]
Slid = tuple[Path, str]
"""Where the first such item stands, and the list that it belongs to."""


def without_slid(described: Field, written: Any, path: Path = ()) -> tuple[Any, list[Slid]]:
    """What is written without such items, and where they began: what they lack in a strange list is not told."""
    slid: list[Slid] = []
    kept: Any = written
    if described.shape == "record" and isinstance(written, dict):
        kept = {}
        for name, inner in written.items():
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
