"""The look-up: what can be found, and the files in which a script finds it."""

from collections.abc import Iterator

from benchsheaf import urls
from benchsheaf.pages.finding.entry import Entry
from benchsheaf.pages.finding.machine_entries import machine_entries
from benchsheaf.pages.finding.manual_entries import manual_entries
from benchsheaf.pages.finding.shards import Pieces, shard_files
from benchsheaf.pages.finding.shared_entries import shared_entries
from benchsheaf.pages.shelf import Shelf

__all__ = ["Entry", "found_entries", "search_files", "shard_files"]


def found_entries(shelf: Shelf) -> Iterator[Entry]:
    """Everything that can be found; each way is noted in the shelf's trail, to be followed before publishing."""
    yield from manual_entries(shelf.desk(urls.SEARCH))
    yield from shared_entries(shelf.desk(urls.SEARCH))
    for machine in shelf.collection.machines.values():
        yield from machine_entries(shelf.desk(urls.SEARCH, machine), machine)


def search_files(shelf: Shelf, *, alone: bool = False) -> Pieces:
    """The search data by address: of the whole site, or of the manual `alone`, for a site whose data is wrong."""
    if alone:
        return shard_files(manual_entries(shelf.desk(urls.SEARCH)), {})
    return shard_files(found_entries(shelf), {slug: each.name for slug, each in shelf.collection.machines.items()})
