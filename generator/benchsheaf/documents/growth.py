"""What is read is kept, so there is nothing to clear away while it grows."""

import gc
from collections.abc import Iterator
from contextlib import contextmanager

SELDOM = 5000
"""How many records are made between two searches for circles while pages are written: each leaves few behind."""


@contextmanager
def growth() -> Iterator[None]:
    """Python's search for circles that nobody needs rests meanwhile: among records it finds none, and it is slow."""
    was_on = gc.isenabled()
    gc.disable()
    if was_on:
        gc.unfreeze()
    try:
        yield
    finally:
        if was_on:
            gc.freeze()  # what was read is never looked through later either
            gc.set_threshold(SELDOM)
            gc.enable()
