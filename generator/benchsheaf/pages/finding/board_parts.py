"""What can be found on boards and in drives: each part, and each weak part with its signs."""

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass

from benchsheaf.model.boards import Part, WeakPart
from benchsheaf.model.drives import DrivePart
from benchsheaf.pages.finding.entry import Entry
from benchsheaf.pages.part_lists import drive_part_words, long_words, weak_anchors
from benchsheaf.pages.printing import words


@dataclass(frozen=True, kw_only=True, slots=True)
class Place:
    """Where parts are: how it is called, the way to each fragment of its page, and the machines that hold it."""

    where: str
    way: Callable[[str], str]
    machines: tuple[str, ...]

    def entry(self, kind: str, title: str, fragment: str, text: str, *more: str, named: bool = False) -> Entry:
        """Something at a fragment of the page; its title is a designator where it is `named`."""
        return Entry(
            kind=kind,
            title=title,
            where=self.where,
            way=self.way(fragment),
            text=text,
            more=" ".join(more),
            machines=self.machines,
            designator=named,
        )


def part_entries(
    place: Place,
    parts: Sequence[Part | DrivePart],
    weak_parts: Iterable[WeakPart],
    prefix: str = "",
    *,
    own: bool = False,
    more: Mapping[str, str] | None = None,
) -> Iterator[Entry]:
    """Weak parts, then the parts that have no list row of their own.

    `prefix` and `own` as for `part_lists.weak_views`; `more` is what else is known of a part, by its designator.
    """
    says = {part.ref: drive_part_words(part) if isinstance(part, DrivePart) else long_words(part) for part in parts}
    kinds = {part.ref: words(part.kind) for part in parts if isinstance(part, Part)}
    listed = list(weak_parts)
    anchors = weak_anchors(listed, prefix, own=own)
    for weak, anchor in zip(listed, anchors, strict=True):
        first = says.get(weak.parts[0], "") if weak.parts else ""
        yield Entry(
            kind="Weak part",
            title=", ".join(weak.parts) or weak.what or weak.id,
            where=place.where,
            way=place.way(anchor),
            text=_weak_words(weak, weak.what or first),
            more=" ".join(filter(None, (weak.what and first, *(kinds.get(name) for name in weak.parts[:1])))),
            machines=place.machines,
            designator=bool(weak.parts),
        )
    for part in parts:
        if part.ref not in anchors:
            known = (more or {}).get(part.ref)
            yield Entry(
                kind="Part",
                title=part.ref,
                where=place.where,
                way=place.way(part.ref),
                text=f"{says[part.ref]}; {known}" if known else says[part.ref],
                more=kinds.get(part.ref, ""),
                machines=place.machines,
                designator=True,
            )


def _weak_words(weak: WeakPart, what: str) -> str:
    fails = f"Fails {words(weak.fails)}."
    told = [f"{what.rstrip('.')}. {fails}" if what else fails, weak.signs]
    told += [each for each in (weak.stop, weak.do, weak.fit.note if weak.fit else None) if each]
    return " ".join(told)
