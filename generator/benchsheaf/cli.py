"""The command: what is asked, what is told, and with which exit code."""

import json
import sys
from pathlib import Path

import click

from benchsheaf.fields import built_in_schemas
from benchsheaf.fields.json_schema import json_schemas
from benchsheaf.mistakes import Mistake
from benchsheaf.site import judgement
from benchsheaf.wording import as_json, as_text

FORMS = {"text": as_text, "json": as_json}


@click.group(context_settings={"help_option_names": ["-h", "--help"]})
@click.version_option(package_name="benchsheaf")
def main() -> None:
    """Descriptions of old machines, checked and turned into a site.

    Exit codes: 0 fine, 1 mistakes in the data, 2 wrong use.
    """


@main.command()
@click.argument("paths", nargs=-1, metavar="[PATH]...", type=click.Path(path_type=Path))
@click.option("--format", "form", type=click.Choice(sorted(FORMS)), default="text", help="How mistakes are told.")
def check(paths: tuple[Path, ...], form: str) -> None:
    """Judge descriptions: all of machines/, or only what stands below the given paths.

    Everything is always read, since one file may point at another; only mistakes below PATH are told.
    """
    wanted = [path.absolute() for path in paths or (Path("machines"),)]
    for path in wanted:
        if not path.exists() and not path.is_symlink():
            raise click.UsageError(f"There is nothing at {path}.")
    told: list[Mistake] = []
    for root in dict.fromkeys(data_folder(path) for path in wanted):
        told += [each for each in judgement(root).mistakes if _below(root.parent / each.place.file, wanted)]
    click.echo(FORMS[form](told).rstrip("\n"))
    sys.exit(1 if told else 0)


@main.command()
@click.argument("kind", required=False, type=click.Choice(sorted(json_schemas(built_in_schemas()))))
def schema(kind: str | None) -> None:
    """Print the JSON Schema of one KIND, or of all, for editors that check while somebody writes."""
    made = json_schemas(built_in_schemas())
    click.echo(json.dumps(made[kind] if kind else made, ensure_ascii=False, indent=1))


def data_folder(path: Path) -> Path:
    """The folder of descriptions that a path lies in: the nearest with shared parts or cautions, or the path itself.

    Errors: click.UsageError if the path lies in no such folder.
    """
    for folder in (path, *path.parents):
        if (folder / "_shared").is_dir() or (folder / "_parts").is_dir():
            return folder
    if path.is_dir():
        return path
    raise click.UsageError(f"{path} lies in no folder of descriptions (one that has _parts/ or _shared/ in it).")


def _below(file: Path, wanted: list[Path]) -> bool:
    return any(file == path or path in file.parents for path in wanted)
