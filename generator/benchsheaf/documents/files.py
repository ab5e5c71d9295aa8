"""A file is opened without harm and read, or what is wrong with it is said."""

import os
import pathlib
import stat
from collections.abc import Callable
from dataclasses import replace

from benchsheaf.documents.characters import LARGEST_BYTES, TOO_LARGE, text_of
from benchsheaf.documents.records import Document
from benchsheaf.documents.tree import tree
from benchsheaf.mistakes import Code, Mistake, Place

LINK = Code(
    id="FILE-01",
    meaning="A symbolic link stands among the data.",
    words="This is a link to another place. Put the {what} itself here.",
    example={"what": "file"},
)
NOT_A_FILE = Code(
    id="FILE-02",
    meaning="A pipe, a device, a socket or a folder stands where a file belongs.",
    words="This is {what}, where a file belongs. Take it away.",
    example={"what": "a pipe"},
)
NOT_OPENED = Code(
    id="FILE-03",
    meaning="A file or folder cannot be read.",
    words="This cannot be read: {why}.",
    example={"why": "its rights do not allow it"},
)


def read_document(path: pathlib.Path, file: str) -> Document | list[Mistake]:
    """The document in a file, or what is wrong with it; `file` is the name shown to people."""
    content = bytes_of(path, file)
    return content if isinstance(content, list) else read_text(content, file)


def read_text(text: bytes, file: str) -> Document | list[Mistake]:
    """The document in the bytes of a file, or what is wrong with it."""
    document, mistakes = text_and_mistakes(text, file)
    return document if document is not None and not mistakes else mistakes


def text_and_mistakes(text: bytes, file: str) -> tuple[Document | None, list[Mistake]]:
    """The document as far as it could be read, and all mistakes in file order.

    There is no document where the text could not be followed to its end; what is mistaken is left out of it.
    """
    decoded, mistakes = text_of(text, file)
    document = None
    if decoded is not None:
        lines = {mistake.place.line for mistake in mistakes}
        paths: dict[int, str] = {}
        document, more = tree(decoded, file, paths)
        mistakes = [replace(mistake, path=paths.get(mistake.place.line, "")) for mistake in mistakes]
        # What else is wrong with a line that holds a refused sign may only follow from the sign.
        mistakes += [mistake for mistake in more if mistake.place.line not in lines]
    return document, sorted(mistakes, key=lambda mistake: mistake.order)


def bytes_of(path: pathlib.Path, file: str) -> bytes | list[Mistake]:
    """What a file holds, or why that is not read; links, pipes and devices are never opened."""
    place = Place(file=file)
    try:
        odd = odd_thing(path.lstat().st_mode)
        if odd:
            return [LINK.at(place, what="file") if odd == "a link" else NOT_A_FILE.at(place, what=odd)]
        flags = os.O_RDONLY
        for name in ("O_NOFOLLOW", "O_NONBLOCK", "O_CLOEXEC", "O_BINARY"):
            flags |= getattr(os, name, 0)  # not every system has each of them
        with os.fdopen(os.open(path, flags), "rb") as opened:
            found = os.fstat(opened.fileno())
            if not stat.S_ISREG(found.st_mode):
                return [NOT_A_FILE.at(place, what="something else")]
            content = opened.read(min(found.st_size, LARGEST_BYTES) + 1)
    except (OSError, ValueError) as error:
        return [NOT_OPENED.at(place, why=reason(error))]
    return [TOO_LARGE.at(place)] if len(content) > LARGEST_BYTES else content


def odd_thing(mode: int) -> str | None:
    """What a thing in a folder is, in words; none if it is an ordinary file."""
    if stat.S_ISREG(mode):
        return None
    tests: dict[str, Callable[[int], bool]] = {
        "a link": stat.S_ISLNK,
        "a folder": stat.S_ISDIR,
        "a pipe": stat.S_ISFIFO,
        "a socket": stat.S_ISSOCK,
        "a device": lambda mode: stat.S_ISCHR(mode) or stat.S_ISBLK(mode),
    }
    return next((words for words, is_such in tests.items() if is_such(mode)), "something else")


def reason(error: Exception) -> str:
    """Why the system did not let a file or folder be read."""
    if isinstance(error, PermissionError):
        return "its rights do not allow it"
    if isinstance(error, FileNotFoundError):
        return "it is not there"
    return "the system reports an error of the disk or of the name"
