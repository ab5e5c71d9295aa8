"""Every file of a folder read by us, so many times: text values, whatever is refused told.

As the program reads, places are found when one is asked for. With `--all-places` each is found as the text is read, as
the program does with a file in which something is odd; then nothing is kept, as with the peer.
"""

import argparse
import sys
from pathlib import Path

from benchsheaf.documents import growth, read_folder
from benchsheaf.documents.characters import text_of
from benchsheaf.documents.tree import close_look


@growth()
def mistakes_with_all_places(folder: Path) -> int:
    """How much is wrong with the files of a folder, the place of every value found."""
    told = 0
    for path in sorted(folder.rglob("*.yml")):
        text, mistakes = text_of(path.read_bytes(), path.name)
        _, more = close_look(text or "", path.name)
        told += len(mistakes) + len(more)
    return told


if __name__ == "__main__":
    asked = argparse.ArgumentParser(description=__doc__)
    asked.add_argument("folder", type=Path)
    asked.add_argument("--times", type=int, default=1)
    asked.add_argument("--all-places", action="store_true")
    given = asked.parse_args()
    told = 0
    for _ in range(given.times):
        told += mistakes_with_all_places(given.folder) if given.all_places else len(read_folder(given.folder).mistakes)
    sys.exit(f"{told} mistakes" if told else 0)
