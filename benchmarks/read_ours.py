"""Every file of a folder read by us: text values with their places, whatever is refused told."""

import sys
from pathlib import Path

from benchsheaf.documents import read_folder

if __name__ == "__main__":
    sys.exit(len(read_folder(Path(sys.argv[1])).mistakes))
