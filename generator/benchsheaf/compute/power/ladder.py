"""The way up after a long rest: which outfit stands on which."""

from collections.abc import Sequence

from benchsheaf.model.machine import Configuration


def ladder(configurations: Sequence[Configuration]) -> tuple[Configuration, ...]:
    """The rungs below the outfit as delivered, the lowest first, and that outfit last.

    Errors: IndexError if there is no outfit, KeyError if one below is not there; links have seen to that.
    """
    by_name = {outfit.id: outfit for outfit in configurations}
    rungs = [configurations[0]]
    while rungs[0].before:
        rungs.insert(0, by_name[rungs[0].before])
    return tuple(rungs)


def branches(configurations: Sequence[Configuration]) -> tuple[Configuration, ...]:
    """Outfits that stand on a rung, or on each other, and are no rung on the way to the machine as delivered."""
    rungs = {outfit.id for outfit in ladder(configurations)}
    return tuple(outfit for outfit in configurations if outfit.before and outfit.id not in rungs)
