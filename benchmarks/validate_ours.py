"""Every description of a folder read and measured by us: units, bounds and all."""

import sys
from pathlib import Path

from benchsheaf.conformity import conformed
from benchsheaf.documents import read_folder
from benchsheaf.fields import built_in_schemas

if __name__ == "__main__":
    kinds = built_in_schemas().kinds
    reading = read_folder(Path(sys.argv[1]))
    told = len(reading.mistakes)
    for entry in reading.entries.values():
        told += len(conformed(entry, kinds[entry.kind], whole=True).mistakes)
    sys.exit(told)
