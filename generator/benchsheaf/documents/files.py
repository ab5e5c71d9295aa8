"""A file is opened without harm and its bytes become text."""

import os
import pathlib
import stat

from benchsheaf.documents.records import Document
from benchsheaf.documents.tree import tree
from benchsheaf.mistakes import Code, Mistake, Place

LARGEST_BYTES = 512 * 1024
NOT_A_FILE = Code(id="FILE-02", meaning="", words="This is not an ordinary file.")
NOT_OPENED = Code(id="FILE-03", meaning="", words="This file cannot be opened.")
TOO_LARGE = Code(id="FILE-04", meaning="", words="This file is larger than 512 KiB.")
NOT_UTF8 = Code(id="FILE-05", meaning="", words="Byte {byte} is not UTF-8 text.", example={"byte": "B5"})


def read_document(path: pathlib.Path, file: str) -> Document | list[Mistake]:
    """The document in a file, or what is wrong with it; `file` is the name shown to people."""
    content = bytes_of(path, file)
    return content if isinstance(content, list) else read_text(content, file)


def read_text(text: bytes, file: str) -> Document | list[Mistake]:
    """The document in the bytes of a file, or what is wrong with it."""
    document, mistakes = text_and_mistakes(text, file)
    return document if document is not None and not mistakes else mistakes


def text_and_mistakes(text: bytes, file: str) -> tuple[Document | None, list[Mistake]]:
    """The document as far as it could be read (no document where it could not be followed to its end), and all mistakes."""
    try:
        decoded = text.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        line = text.count(b"\n", 0, error.start) + 1
        return None, [NOT_UTF8.at(Place(file=file, line=line, column=1), byte=f"{text[error.start]:02X}")]
    document, mistakes = tree(decoded, file)
    return document, sorted(mistakes, key=lambda mistake: mistake.order)


def bytes_of(path: pathlib.Path, file: str) -> bytes | list[Mistake]:
    """What a file holds; links, pipes, devices and too large files are not read."""
    place = Place(file=file)
    flags = os.O_RDONLY
    for name in ("O_NOFOLLOW", "O_NONBLOCK", "O_CLOEXEC", "O_BINARY"):
        flags |= getattr(os, name, 0)
    try:
        number = os.open(path, flags)
    except (OSError, ValueError):
        return [NOT_OPENED.at(place)]
    with open(number, "rb") as opened:
        if not stat.S_ISREG(os.fstat(number).st_mode):
            return [NOT_A_FILE.at(place)]
        content = opened.read(LARGEST_BYTES + 1)
    return [TOO_LARGE.at(place)] if len(content) > LARGEST_BYTES else content
