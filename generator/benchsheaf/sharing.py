"""Of mistakes about one thing that several places share, the first is told, and with it how many others there are."""

from collections.abc import Callable, Iterable
from dataclasses import replace

from benchsheaf.mistakes import Mistake


def told_once(mistakes: Iterable[Mistake]) -> tuple[Mistake, ...]:
    """Mistakes in the order of their places: what says the same at the same place once, what is shared at its first.

    A name that is gone is one mistake, however many lines point at it.
    """
    single = {(*each.order, each.sentence): each for each in reversed(list(mistakes))}
    shared: dict[tuple[object, ...], list[Mistake]] = {}
    gone = {_whose(each.about): each.about for each in single.values() if each.about[:1] == ("name",)}
    for each in sorted(single.values(), key=lambda each: (*each.order, each.sentence)):
        about = gone.get(_whose(each.about), each.about) if each.about[:1] == ("figure",) else each.about
        shared.setdefault(about or (each.order, each.sentence), []).append(each)
    return tuple(_first(several) for several in shared.values())


def _whose(about: tuple[str, ...]) -> tuple[str, ...]:
    """The thing and the name that a mistake is about: texts ask for figures of a name that pointers miss as well."""
    return (*about[1:3], about[-1]) if about else ()


def narrowed(mistakes: Iterable[Mistake], is_wanted: Callable[[Mistake], bool]) -> list[Mistake]:
    """The mistakes at wanted places; one that is shared is told at the first of them."""
    found = ([each for each in (mistake, *mistake.others) if is_wanted(each)] for mistake in mistakes)
    return [_first(several) for several in found if several]


def _first(several: list[Mistake]) -> Mistake:
    """The first of mistakes that are about the same, and of the others one for each line that they stand on."""
    first, *rest = several
    lines = {(first.place.file, first.place.line)}
    others = []
    for each in rest:
        line = each.place.file, each.place.line
        if line not in lines:
            lines.add(line)
            others.append(each)
    return replace(first, others=tuple(others)) if first.others or others else first
