"""Paths through a description, as a contributor says them."""

from collections.abc import Iterator

from benchsheaf.fields.records import Field


def all_fields(described: Field) -> Iterator[tuple[tuple[str, ...], Field]]:
    """Every field below one, with its path of names; the items of a list stand at the list's own path."""
    for name, inner in described.fields.items():
        yield (name,), inner
        for path, deeper in all_fields(inner):
            yield (name, *path), deeper
    if described.item:
        yield from all_fields(described.item)


def spoken_path(described: Field, values: object, path: tuple[str | int, ...]) -> str:
    """A path as a contributor says it: `boards.main.parts.C7.rated`, items without a name by their number."""
    words: list[str] = []
    here: Field | None = described
    for step in path:
        values = _inside(values, step)
        if isinstance(step, str):
            here = here.fields.get(step) if here else None
            words.append(step)
            continue
        here = here.item if here else None
        name = item_name(here, values) if here else None
        if name is None:
            words[-1:] = [f"{words[-1] if words else ''}[{step + 1}]"]
        else:
            words.append(name)
    return ".".join(words)


def item_name(item: Field, values: object) -> str | None:
    """The name under which others may point at an item of a list, if it has one."""
    for name, inner in item.fields.items():
        if inner.names_item and isinstance(values, dict):
            written = values.get(name)
            if isinstance(written, str):
                return written
            if isinstance(written, list) and written and isinstance(written[0], str):
                return written[0]
    return None


def _inside(values: object, step: str | int) -> object:
    if isinstance(values, dict) and isinstance(step, str):
        return values.get(step)
    if isinstance(values, list) and isinstance(step, int) and step < len(values):
        return values[step]
    return None


def text_at(values: object, path: tuple[str | int, ...]) -> str | None:
    """The contributor's own characters at a path; None where no single value stands there."""
    for step in path:
        values = _inside(values, step)
    return values if isinstance(values, str) else None
