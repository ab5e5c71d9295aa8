"""Figures that are worked out when somebody asks for them."""

from collections.abc import Callable, Iterable, Iterator, Mapping
from typing import TypeVar

Figures = TypeVar("Figures")

MOST_KEPT = 64
"""Of so many the figures are kept. Machines come one after the other, so that of more machines each is worked out three
times: to be judged, to be found and to be shown, which takes less time than the memory for all is worth."""


class Asked(Mapping[str, Figures]):
    """Figures by slug, each worked out when it is asked for, and kept until others have been asked for since."""

    def __init__(self, slugs: Iterable[str], made: Callable[[str], Figures], most_kept: int | None = MOST_KEPT) -> None:
        """Take the slugs and the way to work out the figures of one; with no `most_kept` all are kept."""
        self._made = made
        self._most_kept = most_kept
        self._kept: dict[str, Figures | None] = dict.fromkeys(slugs)
        self._latest: dict[str, None] = {}

    def __getitem__(self, slug: str) -> Figures:
        """The figures of one.

        Errors: KeyError if there is no such slug.
        """
        found = self._kept[slug]
        if found is None:
            found = self._kept[slug] = self._made(slug)
            self._latest[slug] = None
            if self._most_kept is not None and len(self._latest) > self._most_kept:
                oldest = next(iter(self._latest))
                del self._latest[oldest]
                self._kept[oldest] = None
        return found

    def __iter__(self) -> Iterator[str]:
        """All slugs."""
        return iter(self._kept)

    def __len__(self) -> int:
        """How many there are."""
        return len(self._kept)

    def __contains__(self, slug: object) -> bool:
        """Whether there is such a slug; nothing is worked out for that."""
        return slug in self._kept
