"""A page before it is written: where it is, what it is called, and how to write it when somebody asks."""

from collections.abc import Callable
from dataclasses import dataclass


def no_column() -> str:
    """For pages that belong to no sheaf."""
    return ""


@dataclass(frozen=True, kw_only=True, slots=True)
class Page:
    """`written` and `column` give finished HTML; `edit` is the data file behind the page, below the data folder.

    `brings` are the addresses of files that are best made right after it, while what they tell is at hand.
    """

    address: str
    title: str
    written: Callable[[], str]
    column: Callable[[], str] = no_column
    edit: str | None = None
    brings: tuple[str, ...] = ()
