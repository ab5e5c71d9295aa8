"""Whether a drive's figures can be true together."""

from collections.abc import Iterator

from benchsheaf.compute.workup import DriveWorkup
from benchsheaf.mistakes import Code, Mistake
from benchsheaf.model.drives import Drive
from benchsheaf.rules.scene import PartScene

SENSE_18 = Code(
    id="SENSE-18",
    meaning="A track holds more formatted than passes the head in one turn.",
    words="{sectors} sectors make {formatted} bytes, but only {raw} bytes pass the head in one turn. "
    "Sectors, turns or data rate must be wrong.",
    example={"sectors": "26", "formatted": "13,312", "raw": "12,500"},
)
SENSE_19 = Code(
    id="SENSE-19",
    meaning="Heads would park on data.",
    words="Parking on cylinder {park} is on the data, which goes from 0 to {last}. Give the cylinder beyond it.",
    example={"park": "305", "last": "459"},
)
SENSE_20 = Code(
    id="SENSE-20",
    meaning="An interleave is not possible on so few sectors.",
    words="With {sectors} sectors the interleave is at most {most}.",
    example={"sectors": "20", "most": "19"},
)

SENSE_27 = Code(
    id="SENSE-27",
    meaning="As many flawed tracks would be accepted as a drive has, or more.",
    words="{cylinders} cylinders of {heads} heads are {tracks} tracks: with {flawed} flawed ones none would be "
    "left. One of these figures is wrong.",
    example={"cylinders": "460", "heads": "3", "tracks": "1,380", "flawed": "2,000"},
)


def drive_mistakes(scene: PartScene) -> Iterator[Mistake]:
    """A drive against itself; nothing for other kinds."""
    drive, workup = scene.part, scene.workup
    if not isinstance(drive, Drive) or not isinstance(workup, DriveWorkup):
        return
    track, geometry = workup.storage.track, drive.geometry
    if track.formatted_track_bytes > track.raw_track_bytes:
        words = {"sectors": str(geometry.sectors), "formatted": f"{track.formatted_track_bytes:,}"}
        yield scene.mistake(SENSE_18, "geometry", "sectors", **words, raw=f"{int(track.raw_track_bytes):,}")
    if drive.park is not None and drive.park < geometry.cylinders and drive.kind == "fixed-disk":
        yield scene.mistake(SENSE_19, "park", park=str(drive.park), last=str(geometry.cylinders - 1))
    tracks = geometry.cylinders * geometry.heads
    if drive.accept is not None and drive.accept.flawed_tracks >= tracks:
        words = {"cylinders": f"{geometry.cylinders:,}", "heads": f"{geometry.heads:,}", "tracks": f"{tracks:,}"}
        flawed = f"{drive.accept.flawed_tracks:,}"
        yield scene.mistake(SENSE_27, "accept", "flawed_tracks", **words, flawed=flawed)
    if drive.interleave is not None and drive.interleave >= max(2, geometry.sectors):
        words = {"sectors": str(geometry.sectors), "most": str(max(1, geometry.sectors - 1))}
        yield scene.mistake(SENSE_20, "interleave", **words)
