"""What can be found of a drive's volumes and of its lists of flaws."""

from collections.abc import Iterator

from benchsheaf.model.drives import Drive
from benchsheaf.pages.finding.board_parts import Place
from benchsheaf.pages.finding.entry import Entry
from benchsheaf.pages.printing import figure, number
from benchsheaf.pages.shelf import Desk
from benchsheaf.pages.volumes import VERDICTS


def volume_entries(desk: Desk, place: Place, drive: Drive) -> Iterator[Entry]:
    """Each volume with its free bytes and its clusters, each list of flaws with its verdict."""
    workup = desk.shelf.workup.drives[drive.slug]
    for figures in workup.volumes:
        if figures.layout is None:
            continue
        free = figure(figures.loss or figures.layout, "free_bytes", 0)
        clusters = f"{number(figures.layout.clusters)} clusters of {number(figures.layout.cluster_bytes)} bytes"
        text = f"{free} free, {clusters}, tables of {figures.layout.table_bits} bit"
        yield place.entry("Volume", figures.name, f"{drive.slug}-{figures.name}", text, named=True)
    for flaws, found in zip(drive.flaw_lists, workup.flaw_lists, strict=True):
        runs = "; ".join(f"{run.name}, {each.tracks} tracks" for run, each in zip(flaws.runs, found.runs, strict=True))
        text = " ".join(filter(None, (f"{VERDICTS[found.verdict][1]}: {runs}.", flaws.note)))
        yield place.entry("Section", f"List of flaws: {flaws.name}", f"{drive.slug}-flaws-{flaws.id}", text)
