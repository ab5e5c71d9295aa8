"""Volumes and lists of flaws of a drive, made ready for print."""

from collections.abc import Sequence
from dataclasses import dataclass

from benchsheaf.compute.filesystem import FlawListFigures, FlawRunFigures, LayoutFigures, VolumeFigures
from benchsheaf.compute.workup import DriveWorkup
from benchsheaf.drawing.flawed_tracks import flawed_tracks
from benchsheaf.drawing.picture import Both
from benchsheaf.drawing.volume import volume_strip
from benchsheaf.markup import Markup
from benchsheaf.model.drives import Acceptance, Drive, FlawList, FlawRun, Volume
from benchsheaf.pages.printing import figure
from benchsheaf.pages.shelf import Desk

VERDICTS = {"acceptable": ("good", "Acceptable"), "watch": ("suspect", "Watch it"), "not": ("stop", "Not acceptable")}
STATES = {"holds": ("good", "holds"), "broken": ("stop", "broken"), "unknown": ("suspect", "not known")}
LOSSES = {
    "acceptable": "That is acceptable by common practice, which takes about 61 KB lost on a drive of 10 MB.",
    "watch": "That lies between what common practice takes, about 61 KB on a drive of 10 MB, and the 3 MB it refuses.",
    "not": "That is not acceptable by common practice, which refuses 3 MB lost on a drive of 10 MB.",
}
IN_SYSTEM = (
    "A flaw lies before the data, where the start sector, the tables and the root directory are, or on the tracks "
    "before the volume: that is not acceptable, however few there are."
)


@dataclass(frozen=True, kw_only=True, slots=True)
class VolumeView:
    """A volume with its picture; `like` names an earlier one that is laid out the same."""

    volume: Volume
    figures: VolumeFigures
    layout: LayoutFigures
    strip: Both
    like: str | None
    flaws: str
    verdict: str


@dataclass(frozen=True, kw_only=True, slots=True)
class RuleRow:
    """One part of the rule, what was found, and whether it holds: a mark and a word."""

    rule: str
    found: str
    mark: str
    state: str


@dataclass(frozen=True, kw_only=True, slots=True)
class RunRow:
    """One list, and the words for what is on cylinder 0 and what changed."""

    run: FlawRun
    figures: FlawRunFigures
    changed: str


@dataclass(frozen=True, kw_only=True, slots=True)
class FlawListView:
    """The lists of one drive: verdict, picture, rule beside finding, and run by run."""

    flaws: FlawList
    figures: FlawListFigures
    note: Markup
    mark: str
    verdict: str
    found: str
    picture: Both | None
    rules: Sequence[RuleRow]
    runs: Sequence[RunRow]


def volume_views(drive: Drive, workup: DriveWorkup) -> list[VolumeView]:
    """Each volume that can be made, in the order of the file."""
    names = {flaws.id: flaws.name for flaws in drive.flaw_lists}
    views: list[VolumeView] = []
    for volume, figures in zip(drive.volumes, workup.volumes, strict=True):
        if figures.layout is None:
            continue
        like = next((each.volume.name for each in views if each.layout == figures.layout), None)
        views.append(
            VolumeView(
                volume=volume,
                figures=figures,
                layout=figures.layout,
                strip=volume_strip(volume, figures.layout, figures.loss, f"volume-{drive.slug}-{volume.name}"),
                like=like,
                flaws=names.get(volume.flaw_list or "", ""),
                verdict=_loss_words(figures),
            )
        )
    return views


def _loss_words(figures: VolumeFigures) -> str:
    if figures.loss is None:
        return ""
    return IN_SYSTEM if figures.loss.system_sectors else LOSSES[figures.loss.verdict]


def flaw_list_views(desk: Desk, drive: Drive, workup: DriveWorkup) -> list[FlawListView]:
    """Each list of flaws with the rule of its drive beside what was found."""
    views = []
    for flaws, figures in zip(drive.flaw_lists, workup.flaw_lists, strict=True):
        mark, verdict = VERDICTS[figures.verdict]
        views.append(
            FlawListView(
                flaws=flaws,
                figures=figures,
                note=desk.told(flaws.note, ("drive", drive.slug)) if flaws.note else Markup(""),
                mark=mark,
                verdict=verdict,
                found=_found(figures),
                picture=flawed_tracks(flaws, figures, drive.geometry, drive.accept, f"flaws-{drive.slug}-{flaws.id}"),
                rules=_rules(figures, drive.accept, workup.storage.capacity.tracks),
                runs=[
                    RunRow(run=run, figures=each, changed=_changed(each))
                    for run, each in zip(flaws.runs, figures.runs, strict=True)
                ],
            )
        )
    return views


def _counted(count: int, name: str) -> str:
    return f"{count:,} {name}" if count == 1 else f"{count:,} {name}s"


def _found(figures: FlawListFigures) -> str:
    """What the last list says, in one sentence."""
    last = figures.runs[-1]
    tracks = _counted(last.tracks, "flawed track")
    many = (
        tracks
        if last.sectors is None
        else f"{_counted(last.sectors, 'flawed sector')} on {tracks.replace('flawed ', '')}"
    )
    clean = {None: "cylinder 0 not known", 0: "cylinder 0 clean"}.get(last.on_cylinder_0, "cylinder 0 flawed")
    return f"{many}, {clean}, {_news(figures)}."


def _news(figures: FlawListFigures) -> str:
    last = figures.runs[-1]
    state = next(each.state for each in figures.rules if each.id == "nothing-new")
    if state == "holds":
        return "nothing new in the last list"
    if state == "unknown":
        return "one list only" if len(figures.runs) == 1 else "not known whether any are new"
    if last.new is not None:
        return f"{last.new:,} new in the last list"
    return f"{_counted(last.more_tracks or 0, 'track')} more in the last list"


def _rules(figures: FlawListFigures, accept: Acceptance | None, tracks: int) -> list[RuleRow]:
    last = figures.runs[-1]
    states = {each.id: STATES[each.state] for each in figures.rules}
    clean = {None: "the list was not kept", 0: "clean"}.get(last.on_cylinder_0) or f"{last.on_cylinder_0:,} flawed"
    most = f"Not more than {accept.flawed_tracks:,} flawed tracks of {tracks:,}" if accept else "No limit is given"
    many = f"{last.tracks:,} ({figure(last, 'tracks_share', 2)})"
    rows = {
        "cylinder-0": ("Cylinder 0 without a flaw", clean),
        "tracks": (most, many),
        "nothing-new": ("No new flaw in a second run", _news(figures)),
    }
    return [
        RuleRow(rule=rows[name][0], found=rows[name][1], mark=states[name][0], state=states[name][1]) for name in rows
    ]


def _changed(run: FlawRunFigures) -> str:
    """What a list has that the last one had not, and the other way round."""
    if run.new is not None:
        return f"{run.gone:,} gone, {run.stayed:,} stayed, {run.new:,} new"
    if run.more_tracks is None:
        return "the first"
    if run.more_tracks == 0:
        return "as many tracks"
    return f"{_counted(abs(run.more_tracks), 'track')} {'more' if run.more_tracks > 0 else 'fewer'}"
