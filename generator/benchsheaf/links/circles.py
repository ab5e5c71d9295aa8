"""Items that point, over other items of their own list, back at themselves."""

from collections import Counter
from collections.abc import Iterator, Mapping

from benchsheaf.links.names import LEFT_TO_HOLDERS, Names, Path, Pointer

Item = tuple[str, str]
"""An item by its family and its name."""


def circles(names: Names, own: tuple[Pointer, ...]) -> Iterator[tuple[Pointer, str]]:
    """As few pointers as close every circle of one description, each with its way in words.

    A wrong line may close several circles: it is one mistake, and the line that most of them share.
    """
    steps = _steps(names, own)
    done: set[Item] = set()
    rings = [ring for start in steps if start not in done for ring in _rings(start, steps, done)]
    while rings:
        shared = Counter(pointer.path for ring, _ in rings for pointer in ring)
        ring, way = rings[0]
        chosen = max(ring, key=lambda pointer: shared[pointer.path])
        yield chosen, way
        rings = [other for other in rings if chosen not in other[0]]


def _steps(names: Names, own: tuple[Pointer, ...]) -> dict[Item, list[Pointer]]:
    """From each item the pointers that lead to others of its own family."""
    items: dict[tuple[str, Path], str] = {}
    for family, known in names.by_family.items():
        items.update({(family, at[:-1]): name for name, at in known.items()})
    steps: dict[Item, list[Pointer]] = {}
    for pointer in own:
        if pointer.family in LEFT_TO_HOLDERS and pointer.thing[0] != "machine":
            continue  # whose name that is depends on the holder
        for length in range(2, len(pointer.path)):
            name = items.get((pointer.family, pointer.path[:length]))
            if name is not None:
                steps.setdefault((pointer.family, name), []).append(pointer)
    return steps


def _rings(
    start: Item, steps: Mapping[Item, list[Pointer]], done: set[Item]
) -> Iterator[tuple[tuple[Pointer, ...], str]]:
    """Circles that can be reached from an item; no recursion, as a chain may be long."""
    done.add(start)
    trail = [start]
    ways = [iter(steps[start])]
    taken: list[Pointer] = []
    while trail:
        pointer = next(ways[-1], None)
        if pointer is None:
            trail.pop()
            ways.pop()
            del taken[-1:]
            continue
        there = (pointer.family, pointer.name)
        if there in trail:
            ring = [name for _, name in trail[trail.index(there) :]]
            yield (*taken[trail.index(there) :], pointer), " → ".join([*ring, ring[0]])
        elif there in steps and there not in done:
            done.add(there)
            trail.append(there)
            taken.append(pointer)
            ways.append(iter(steps[there]))
