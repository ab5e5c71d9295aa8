"""What contributors write in words, put into print: plain text, in which nothing becomes markup."""

from benchsheaf.markup import Markup, escaped


def told(text: str) -> Markup:
    """A text on one line of thought, as it may stand inside a sentence of a page."""
    return Markup(escaped(text))


def told_paragraphs(text: str) -> Markup:
    """A text in which blank lines make paragraphs."""
    blocks = [block.strip() for block in text.split("\n\n") if block.strip()]
    return Markup("").join(Markup("<p>{}</p>").format(told(block)) for block in blocks)
