"""Whether a drive may be kept in use with its flaws: its own rule, and how its lists grow or stay."""

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal
from itertools import pairwise

from benchsheaf.compute.laws import rounded_up, twelve
from benchsheaf.model.drives import Acceptance, Flaw, FlawList, FlawRun, Geometry
from benchsheaf.standards import LOST_SHARE_ACCEPTABLE, LOST_SHARE_TOO_MUCH


@dataclass(frozen=True, kw_only=True, slots=True)
class FlawRunFigures:
    """One run: how many sectors and tracks are flawed, how many of them on cylinder 0, what changed since the last.

    None where the list was not kept and its numbers do not tell; `more_tracks` is told by numbers too.
    """

    id: str
    sectors: int | None
    tracks: int
    tracks_share: Decimal = rounded_up()
    on_cylinder_0: int | None
    gone: int | None
    stayed: int | None
    new: int | None
    more_tracks: int | None


@dataclass(frozen=True, kw_only=True, slots=True)
class RuleFigures:
    """One part of the rule for the last run: holds, broken or unknown."""

    id: str
    state: str


@dataclass(frozen=True, kw_only=True, slots=True)
class FlawListFigures:
    """The runs of one drive, and what follows: acceptable, watch or not."""

    id: str
    runs: tuple[FlawRunFigures, ...]
    grew: int
    rules: tuple[RuleFigures, ...]
    verdict: str


def flaw_list_figures(flaws: FlawList, geometry: Geometry, accept: Acceptance | None) -> FlawListFigures:
    """The runs of a list against the rule of its drive.

    Not acceptable: a flaw on cylinder 0, more flawed tracks than the drive's rule allows, or a list that grew in two
    runs one after the other. Watch: it grew in the last run, or a part of the rule cannot be judged.
    Units: counts, and a share of all tracks. Errors: none raised. Source: the drive's own rule; common practice.
    """
    before: list[FlawRun | None] = [None, *flaws.runs]
    runs = tuple(_run(one, other, geometry) for one, other in zip(before, flaws.runs, strict=False))
    last = runs[-1]
    grown = [_grown(run) for run in runs[1:]]
    most = accept.flawed_tracks if accept else None
    states = {
        "cylinder-0": _state(None if last.on_cylinder_0 is None else last.on_cylinder_0 == 0),
        "tracks": _state(None if most is None else last.tracks <= most),
        "nothing-new": _state(None if not grown or grown[-1] is None else not grown[-1]),
    }
    return FlawListFigures(
        id=flaws.id,
        runs=runs,
        grew=sum(each is True for each in grown),
        rules=tuple(RuleFigures(id=name, state=state) for name, state in states.items()),
        verdict=_verdict(states, grew_twice=any(one and other for one, other in pairwise(grown))),
    )


def lost_verdict(lost_share: Decimal) -> str:
    """What is said of the share that flaws take of a volume: acceptable, watch between, or not.

    Units: a share of what is free without flaws. Errors: none. Source: common practice, 61 KB of 10 MB and 3 MB of it.
    """
    if lost_share >= LOST_SHARE_TOO_MUCH:
        return "not"
    return "acceptable" if lost_share <= LOST_SHARE_ACCEPTABLE else "watch"


def _run(before: FlawRun | None, run: FlawRun, geometry: Geometry) -> FlawRunFigures:
    places = _places(run.flaws)
    tracks = _tracks(run)
    known = before is not None and bool(before.flaws) and bool(places)
    last = _places(before.flaws) if before is not None else frozenset()
    return FlawRunFigures(
        id=run.id,
        sectors=len(places) if places else run.sectors,
        tracks=tracks,
        tracks_share=twelve(Decimal(tracks) / (geometry.cylinders * geometry.heads)),
        on_cylinder_0=sum(cylinder == 0 for cylinder, _, _ in places) if places or tracks == 0 else None,
        gone=len(last - places) if known else None,
        stayed=len(last & places) if known else None,
        new=len(places - last) if known else None,
        more_tracks=tracks - _tracks(before) if before is not None else None,
    )


def _places(flaws: Sequence[Flaw]) -> frozenset[tuple[int, int, int]]:
    return frozenset((each.cylinder, each.head, each.sector) for each in flaws)


def _tracks(run: FlawRun) -> int:
    return len({(each.cylinder, each.head) for each in run.flaws}) if run.flaws else run.tracks or 0


def _grown(run: FlawRunFigures) -> bool | None:
    """Whether a run has flaws that the last one had not; None where numbers alone do not tell."""
    if run.new is not None:
        return run.new > 0
    if run.tracks == 0:
        return False
    return True if run.more_tracks is not None and run.more_tracks > 0 else None


def _state(holds: bool | None) -> str:
    return "unknown" if holds is None else "holds" if holds else "broken"


def _verdict(states: dict[str, str], *, grew_twice: bool) -> str:
    if grew_twice or "broken" in (states["cylinder-0"], states["tracks"]):
        return "not"
    return "acceptable" if all(state == "holds" for state in states.values()) else "watch"
