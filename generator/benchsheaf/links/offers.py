"""What is offered in the place of a name that is not there: the nearest one, or all, where they are few."""

from collections.abc import Iterable

from benchsheaf.mistakes import nearest_name

HALF = 0.5
"""How much alike a name may be that is offered where not all can be told."""
MOST_LISTED = 120
"""Letters of a list of names that is told with a mistake, so that all of it stays short."""


def nearest_known(name: str, known: Iterable[str]) -> str | None:
    """The known name that one most resembles; of several names without commas, the same with commas."""
    several = list(known)
    words = name.split()
    if len(words) > 1 and name not in several and set(words) <= set(several):
        return ", ".join(words)
    return nearest_name(name, several)


def offered(name: str, close: str | None, known: Iterable[str]) -> tuple[str | None, str]:
    """The nearest name and no sentence, or no name and which there are; where they are many, one half alike will do."""
    several = list(known)
    if close:
        return close, ""
    told = names_there(several)
    return (None, told) if told else (nearest_name(name, several, HALF), "")


def names_there(known: Iterable[str]) -> str:
    """A sentence that says which names there are; nothing where they are too many to be read."""
    quoted = [f"`{each}`" for each in known]
    told = quoted[-1] if quoted else ""
    if len(quoted) > 1:
        told = f"{', '.join(quoted[:-1])} and {told}"
    return f" There {'is' if len(quoted) == 1 else 'are'} {told}." if told and len(told) <= MOST_LISTED else ""
