"""The few files that a person reads before they are kept; this writes them anew, and `make golden` runs it."""

import json
import sys
import tempfile
from collections.abc import Iterator
from pathlib import Path

from benchsheaf.export import figure_paths
from benchsheaf.fields import built_in_schemas, specimen_slug, specimens
from benchsheaf.links import FOLDERS
from benchsheaf.site import edition, judgement

HOUSE = Path(__file__).resolve().parent.parent
FIGURE_PATHS = HOUSE / "tests" / "golden" / "figure-paths.txt"


def paths_of_figures() -> str:
    """Every path of the data that a site gives away, kind by kind: what those who read the data rely on.

    The specimens have every fact that there can be, so that no edit of the demonstration changes this list; with the
    demonstration they have every figure. A list that is empty here and filled there is told by what fills it.
    """
    told = set(_paths(HOUSE / "machines"))
    with tempfile.TemporaryDirectory() as folder:
        told |= set(_paths(specimen_folder(Path(folder))))
    filled = {path[: place + 2] for path in told for place in range(len(path)) if path[place:].startswith("[].")}
    return "".join(f"{path}\n" for path in sorted(told - filled))


def _paths(folder: Path) -> Iterator[str]:
    for name, content in edition(judgement(folder)).files.items():
        if name.endswith(".json"):
            kind = name.removeprefix("data/").rpartition("/")[0] or "index"
            yield from (f"{kind}: {path}" for path in figure_paths(json.loads(content)))


def specimen_folder(root: Path) -> Path:
    """A folder of descriptions that holds the specimen of every kind; what is written as JSON is read as YAML."""
    places = {
        "machine": "specimen-machine/all.yml",
        "repair": "specimen-machine/repairs/specimen.yml",
        "cautions": "_shared/cautions.yml",
        "terms": "_shared/terms.yml",
        "practice": "_shared/practice.yml",
    }
    for kind, values in specimens(built_in_schemas()).items():
        path = root / places.get(kind, f"_parts/{FOLDERS.get(kind)}/{specimen_slug(kind)}.yml")
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(json.dumps(values, ensure_ascii=False, indent=1), encoding="utf-8")
    return root


def main() -> int:
    """Write the golden files anew; the difference is read before it is kept."""
    FIGURE_PATHS.parent.mkdir(exist_ok=True)
    FIGURE_PATHS.write_text(paths_of_figures(), encoding="utf-8")
    sys.stdout.write("Written anew. Read what changed before you keep it: git diff tests/golden\n")
    return 0


if __name__ == "__main__":
    sys.exit(main())
