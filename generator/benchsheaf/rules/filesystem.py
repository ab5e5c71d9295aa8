"""Whether volumes can be made as they are described, and flaws lie on their drive."""

from collections.abc import Iterator

from benchsheaf.compute.workup import DriveWorkup
from benchsheaf.mistakes import Code, Mistake
from benchsheaf.model.drives import Drive, FlawRun, Volume
from benchsheaf.rules.scene import PartScene, Path
from benchsheaf.standards import MOST_CLUSTERS_16

SENSE_95 = Code(
    id="SENSE-95",
    meaning="A cluster is no power of two sectors.",
    words="A cluster is 1, 2, 4, 8, 16, 32, 64 or 128 sectors.",
)
SENSE_96 = Code(
    id="SENSE-96",
    meaning="A volume of these figures cannot be made.",
    words="{why}",
    example={"why": "Of 1,400 sectors none is left for data. Hidden, reserved or root entries must be wrong."},
)
SENSE_97 = Code(
    id="SENSE-97",
    meaning="A flaw lies beyond its drive, or stands twice in its list.",
    words="{why}",
    example={"why": "Cylinders go from 0 to 459, heads from 0 to 2 and sectors from 1 to 20."},
)
SENSE_98 = Code(
    id="SENSE-98",
    meaning="A number of flaws differs from their list.",
    words="The list that stands here has {count}. Mend the list, or take `{name}` out: it follows from the list.",
    example={"count": "4", "name": "tracks"},
)


def filesystem_mistakes(scene: PartScene) -> Iterator[Mistake]:
    """The volumes of a drive, then its lists of flaws; nothing for other kinds."""
    drive, workup = scene.part, scene.workup
    if not isinstance(drive, Drive) or not isinstance(workup, DriveWorkup):
        return
    for number, (volume, figures) in enumerate(zip(drive.volumes, workup.volumes, strict=True)):
        if volume.cluster & (volume.cluster - 1):
            yield scene.mistake(SENSE_95, "volumes", number, "cluster")
        elif figures.layout is None:
            why = _impossible(volume, workup.storage.capacity.sectors)
            yield scene.mistake(SENSE_96, "volumes", number, "name", why=why)
    for number, flaws in enumerate(drive.flaw_lists):
        for place, run in enumerate(flaws.runs):
            yield from _run(scene, drive, ("flaw_lists", number, "runs", place), run)


def _impossible(volume: Volume, sectors: int) -> str:
    """Why a volume has no layout: it is full before its data, or has more clusters than can be numbered."""
    rest = f"Of {max(sectors - volume.hidden, 0):,} sectors"
    if (sectors - volume.hidden) // volume.cluster > MOST_CLUSTERS_16:
        return f"{rest} there are more than {MOST_CLUSTERS_16:,} clusters, and 16 bits number no more. Raise `cluster`."
    return f"{rest} none is left for data. Hidden, reserved, tables or root entries must be wrong."


def _run(scene: PartScene, drive: Drive, path: Path, run: FlawRun) -> Iterator[Mistake]:
    shape = drive.geometry
    seen = set()
    for number, flaw in enumerate(run.flaws):
        where = (flaw.cylinder, flaw.head, flaw.sector)
        if flaw.cylinder >= shape.cylinders or flaw.head >= shape.heads or flaw.sector > shape.sectors:
            why = (
                f"Cylinders go from 0 to {shape.cylinders - 1}, heads from 0 to {shape.heads - 1} and sectors from 1 "
                f"to {shape.sectors}."
            )
            yield scene.mistake(SENSE_97, *path, "flaws", number, why=why)
        elif where in seen:
            why = "This flaw stands in the list already. Each is named once."
            yield scene.mistake(SENSE_97, *path, "flaws", number, why=why)
        seen.add(where)
    counts = {"sectors": len(seen), "tracks": len({where[:2] for where in seen})}
    for name, count in counts.items():
        if run.flaws and getattr(run, name) not in (None, count):
            yield scene.mistake(SENSE_98, *path, name, name=name, count=f"{count:,}")
