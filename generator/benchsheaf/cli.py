"""The command: what is asked, what is told, and with which exit code."""

import json
import os
import sys
from contextlib import suppress
from functools import partial
from io import TextIOWrapper
from pathlib import Path
from typing import Any

import click

from benchsheaf.documents import PART_FOLDERS, name_refusal
from benchsheaf.fields import EXPORTED, KINDS, built_in_schemas, json_schemas, starting_text
from benchsheaf.mistakes import Mistake
from benchsheaf.sharing import narrowed
from benchsheaf.site import hindrance, judgement
from benchsheaf.wording import as_json, as_text

FOLDER_OF = {kind: folder for folder, kind in PART_FOLDERS.items() if kind in KINDS}
FORMS = {"text": as_text, "json": as_json}


class PlainWords(click.Group):
    """A command that says in words, too, what keeps it from answering."""

    def main(self, *words: Any, **settings: Any) -> Any:
        """Run the command; signs that the terminal cannot print are written as their numbers."""
        if isinstance(sys.stdout, TextIOWrapper):
            sys.stdout.reconfigure(errors="backslashreplace")
        try:
            return super().main(*words, **settings)
        except OSError as error:
            named = f"{error.filename}: " if error.filename else "The answer could not be written: "
            with suppress(OSError):
                click.echo(f"Error: {named}{error.strerror}.", err=True)
            _forget_the_rest()
            sys.exit(2)


def _forget_the_rest() -> None:
    """What could not be written is not tried again when the program ends, which would print a traceback."""
    with suppress(OSError, ValueError, AttributeError):
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())


@click.group(cls=PlainWords, context_settings={"help_option_names": ["-h", "--help"]})
@click.version_option(package_name="benchsheaf")
def main() -> None:
    """Descriptions of old machines, checked and turned into a site.

    Exit codes: 0 fine, 1 mistakes in the data, 2 wrong use, or an answer that could not be given.
    """
    if hindrance():
        raise click.UsageError(hindrance())


@main.command()
@click.argument("paths", nargs=-1, metavar="[PATH]...", type=click.Path(path_type=Path))
@click.option("--format", "form", type=click.Choice(sorted(FORMS)), default="text", help="How mistakes are told.")
def check(paths: tuple[Path, ...], form: str) -> None:
    """Judge descriptions: all of machines/, or only what stands below the given paths.

    Everything is always read, since one file may point at another; only mistakes below PATH are told.
    """
    wanted = [Path(os.path.normpath(path.absolute())) for path in paths or (Path("machines"),)]
    for path in wanted:
        if not path.exists() and not path.is_symlink():
            raise click.UsageError(f"There is nothing at {path}.")
    told: list[Mistake] = []
    for root in dict.fromkeys(folder for path in wanted for folder in data_folders(path)):
        told += narrowed(judgement(root).mistakes, partial(_below, root.parent, wanted))
    click.echo(FORMS[form](told).rstrip("\n"))
    sys.exit(1 if told else 0)


@main.command()
@click.argument("slug")
@click.option("--name", help="Its name, as it stands on the badge or plate.")
@click.option(
    "--kind", type=click.Choice(["machine", "repair", *FOLDER_OF]), default="machine", help="What is described."
)
@click.option(
    "--folder", type=click.Path(path_type=Path), default=Path("machines"), help="The folder of all descriptions."
)
def new(slug: str, name: str | None, kind: str, folder: Path) -> None:
    """Begin a description: a file with every field that must be there, empty, and what belongs at each.

    SLUG is its short name: lower-case letters, digits, hyphens. That of a repair record is MACHINE/NAME.
    """
    if not folder.is_dir():
        raise click.UsageError(f"There is no folder {folder}. Name yours with --folder.")
    path = _place_of(slug, kind, folder)
    alone = kind == "machine"
    given = {"name": name} if name else {}
    write_new(path, starting_text(built_in_schemas().kinds[kind], given), alone=alone)
    click.echo(f"Begun: {path}\nFill in its lines, then run: benchsheaf check {path.parent if alone else path}")


def _place_of(slug: str, kind: str, folder: Path) -> Path:
    """Where a new description belongs.

    Errors: click.UsageError if its name cannot be one, or a record's machine is not described.
    """
    machine, _, name = slug.rpartition("/") if kind == "repair" else ("", "", slug)
    for each in (machine, name) if kind == "repair" else (name,):
        if refusal := name_refusal(each):
            raise click.UsageError(f"{each or slug} cannot be a name. {refusal}")
    if kind == "machine":
        return folder / name / "machine.yml"
    if kind != "repair":
        return folder / "_parts" / FOLDER_OF[kind] / f"{name}.yml"
    if not (folder / machine).is_dir():
        raise click.UsageError(
            f"There is no machine {folder / machine}. A record is MACHINE/NAME, as in sketch-1/2019-ticks."
        )
    return folder / machine / "repairs" / f"{name}.yml"


def write_new(path: Path, text: str, *, alone: bool) -> None:
    """Write a file that is not there yet; `alone` in a folder that is not there yet either.

    The folder of shared parts is made too: by it `check` knows the folder of all descriptions.
    Errors: click.UsageError if something is there already, or nothing can be written there.
    """
    taken = path.parent if alone else path
    try:
        taken.parent.mkdir(parents=True, exist_ok=True)
        if alone:
            path.parent.mkdir()
            (taken.parent / "_parts").mkdir(exist_ok=True)
        with path.open("x", encoding="utf-8", newline="\n") as file:
            file.write(text)
    except FileExistsError:
        raise click.UsageError(f"There is something at {taken} already. Nothing was changed.") from None
    except OSError as error:
        raise click.UsageError(f"{path} cannot be written: {error.strerror}.") from None


@main.command()
@click.argument("kind", required=False, type=click.Choice(sorted(EXPORTED)))
@click.option("--into", type=click.Path(path_type=Path, file_okay=False), help="A folder to write them into.")
def schema(kind: str | None, into: Path | None) -> None:
    """Tell the data language as JSON Schema, so that editors can check and complete.

    KIND names one kind of description; machine-file is for one of the several files of a machine. Without KIND all are
    told, by their kinds.
    """
    made = json_schemas(built_in_schemas())
    chosen = {kind: made[kind]} if kind else made
    if into is None:
        click.echo(json.dumps(chosen[kind] if kind else chosen, indent=2))
        return
    try:
        into.mkdir(parents=True, exist_ok=True)
        for each, described in chosen.items():
            (into / f"{each}.schema.json").write_text(json.dumps(described, indent=2) + "\n", encoding="ascii")
    except OSError as error:
        raise click.UsageError(f"{into} cannot be written: {error.strerror}.") from None


def data_folders(path: Path) -> list[Path]:
    """The folder of descriptions that a path lies in, or those that lie in it, or the path itself.

    A folder of descriptions is known by its shared parts or cautions, or by the name that it usually has.
    Errors: click.UsageError if the path has nothing to do with such a folder.
    """
    for folder in (path, *path.parents):
        if _holds_what_is_shared(folder):
            return [folder]
    if path.is_dir():
        usual = path / "machines"
        inside = [each for each in sorted(path.iterdir()) if _holds_what_is_shared(each)]
        return inside or [usual if usual.is_dir() else path]
    raise click.UsageError(f"{path} lies in no folder of descriptions (one that has _parts/ or _shared/ in it).")


def _holds_what_is_shared(folder: Path) -> bool:
    return (folder / "_shared").is_dir() or (folder / "_parts").is_dir()


def _below(folder: Path, wanted: list[Path], mistake: Mistake) -> bool:
    file = folder / mistake.place.file
    return any(file == path or path in file.parents for path in wanted)
