"""The one template environment: everything that is printed into a page goes through its escaping."""

from collections.abc import Callable, Mapping
from pathlib import Path
from typing import Any

from jinja2 import Environment, FileSystemLoader, StrictUndefined
from markupsafe import Markup, escape

__all__ = ["Markup", "Templates", "escaped", "templates"]


class Templates:
    """Templates of a folder; what they print is escaped unless it is markup already, and a missing name is an error."""

    def __init__(self, environment: Environment) -> None:
        """Wrap an environment that `templates` has made."""
        self._environment = environment

    def rendered(self, name: str, **context: Any) -> Markup:
        """A template with its gaps filled.

        Errors: jinja2.UndefinedError if a template asks for what is not given; that is a bug of ours.
        """
        return Markup(self._environment.get_template(name).render(context))


def templates(*folders: Path, filters: Mapping[str, Callable[..., Any]] | None = None) -> Templates:
    """The templates of some folders, with filters that turn facts into print."""
    environment = Environment(
        loader=FileSystemLoader(folders),
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
        keep_trailing_newline=False,
        auto_reload=False,
        cache_size=-1,  # all of them: there are few, and to forget the oldest costs time at every use
    )
    environment.filters.update(filters or {})
    return Templates(environment)


def escaped(text: str) -> str:
    """A text as it may stand in markup that somebody else prints without escaping."""
    # Letters and digits, such as a designator, need no escaping; it would cost more than all that is done with them.
    return text if text.isalnum() else str(escape(text))
