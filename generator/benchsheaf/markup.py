"""The one template environment: everything that is printed into a page goes through its escaping."""

import re
from collections.abc import Callable, Mapping
from pathlib import Path
from typing import Any

from jinja2 import Environment, FileSystemLoader, StrictUndefined, nodes
from jinja2.compiler import CodeGenerator, Frame
from markupsafe import Markup, escape

__all__ = ["Markup", "Templates", "escaped", "templates"]


def printed(value: object) -> str:
    """Anything as it may stand in markup: escaped, unless it is markup already."""
    if isinstance(value, Markup):
        return value
    text = value if isinstance(value, str) else str(value)
    return escape(text) if _SPECIAL.search(text) else text


_SPECIAL = re.compile("[&<>\"']")


class Templates:
    """Templates of a folder; what they print is escaped unless it is markup already, and a missing name is an error."""

    def __init__(self, environment: Environment) -> None:
        """Wrap an environment that `templates` has made."""
        self._environment = environment

    def rendered(self, name: str, **context: Any) -> Markup:
        """A template with its gaps filled.

        Errors: jinja2.UndefinedError or AttributeError if a template asks for what is not given; that is a bug of ours.
        """
        return Markup(self._environment.get_template(name).render(context))


class _Straight(CodeGenerator):
    """Templates as code that takes the short way, as records are all that they are given.

    An attribute is never a key instead, nothing that is called asks who calls, and what is markup already is not made
    markup again: that saves about a sixteenth of the time in which pages are printed.
    """

    def _output_child_pre(self, node: nodes.Expr, frame: Frame, finalize: CodeGenerator._FinalizeInfo) -> None:
        self.write("environment.printed(")

    def visit_Getattr(self, node: nodes.Getattr, frame: Frame) -> None:  # noqa: N802 - the name is jinja2's
        """`each.name` as it stands."""
        self.visit(node.node, frame)
        self.write(f".{node.attr}")

    def visit_Call(  # noqa: N802 - the name is jinja2's
        self, node: nodes.Call, frame: Frame, forward_caller: bool = False
    ) -> None:
        """`desk.told(text)` as it stands."""
        self.visit(node.node, frame)
        self.write("(")
        for given in (*node.args, *node.kwargs):
            self.visit(given, frame)
            self.write(", ")
        self.write(")")


class _Environment(Environment):
    """Where templates are compiled and what they are given."""

    code_generator_class = _Straight
    printed = staticmethod(printed)


def templates(*folders: Path, filters: Mapping[str, Callable[..., Any]] | None = None) -> Templates:
    """The templates of some folders, with filters that turn facts into print."""
    environment = _Environment(
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
