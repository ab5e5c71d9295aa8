"""Whether parts lie on their boards and drives, and weak parts say what is stopped."""

from collections.abc import Iterator, Sequence
from dataclasses import replace
from decimal import Decimal

from benchsheaf.mistakes import Code, Mistake
from benchsheaf.model.boards import Extent, Part, WeakPart
from benchsheaf.model.cards import Card
from benchsheaf.model.displays import Display
from benchsheaf.model.drives import Drive, DrivePart
from benchsheaf.model.supply import Supply
from benchsheaf.quantities import printed
from benchsheaf.rules.scene import MachineScene, PartScene, Scene

SENSE_07 = Code(
    id="SENSE-07",
    meaning="A part lies beyond the edge of its board or drive.",
    words="{ref} would reach over the edge of the {what}, which is {x} by {y}. `at` is the middle of the part.",
    example={"ref": "C61", "what": "board", "x": "340 mm", "y": "250 mm"},
)
SENSE_08 = Code(
    id="SENSE-08",
    meaning="A weak part must be changed before mains, and nothing says what is stopped.",
    words="What is found bad before mains stops the work: add `stop:` with what is stopped and until when.",
)

EDGE_MM = 3  # connectors and sockets stand over the edge by a little


def board_mistakes(scene: MachineScene | PartScene) -> Iterator[Mistake]:
    """Parts against their boards, weak parts against their orders."""
    if isinstance(scene, MachineScene):
        for index, board in enumerate(scene.machine.boards):
            yield from _over_the_edge(scene, ("boards", index), board.size, board.parts)
            for row, written in enumerate(board.rows):
                beyond = [part for part in written.parts() if _beyond(part, board.size)]
                if beyond:
                    yield _edge(scene, ("boards", index, "rows", row, "at"), beyond[0].ref, board.size)
        yield from _orders(scene, scene.machine.weak_parts)
        return
    if isinstance(scene.part, Supply | Card) and scene.part.size:
        yield from _over_the_edge(scene, (), scene.part.size, scene.part.parts)
    if isinstance(scene.part, Drive) and scene.part.body:
        box = scene.part.body
        yield from _over_the_edge(scene, (), Extent(x_mm=box.x_mm, y_mm=box.y_mm), scene.part.parts)
    if not isinstance(scene.part, Display):
        yield from _orders(scene, scene.part.weak_parts)


def _over_the_edge(
    scene: Scene, path: tuple[str | int, ...], size: Extent, parts: Sequence[Part | DrivePart]
) -> Iterator[Mistake]:
    for index, part in enumerate(parts):
        if _beyond(part, size):
            yield _edge(scene, (*path, "parts", index, "at"), part.ref, size)


def _edge(scene: Scene, path: tuple[str | int, ...], ref: str, size: Extent) -> Mistake:
    what = "drive" if isinstance(scene, PartScene) and isinstance(scene.part, Drive) else "board"
    words = {"x": printed(size.x_mm, "mm"), "y": printed(size.y_mm, "mm")}
    made = scene.mistake(SENSE_07, *path, ref=ref, what=what, **words)
    # Where many parts lie beyond, it is the board that has lost a digit.
    holder = path[: path.index("parts" if "parts" in path else "rows")]
    return replace(made, about=("edge", scene.conformed.entry.kind, scene.conformed.entry.slug, *map(str, holder)))


def _beyond(part: Part | DrivePart, size: Extent) -> bool:
    """Whether a part reaches over the edge; one of which only the spot is known has no size."""
    if part.at is None:
        return False
    wide, deep = (part.body.x_mm, part.body.y_mm) if part.body else (Decimal(0), Decimal(0))
    spans = ((part.at.x_mm, wide, size.x_mm), (part.at.y_mm, deep, size.y_mm))
    return any(middle - long / 2 < -EDGE_MM or middle + long / 2 > edge + EDGE_MM for middle, long, edge in spans)


def _orders(scene: Scene, weak_parts: Sequence[WeakPart]) -> Iterator[Mistake]:
    for index, weak in enumerate(weak_parts):
        if weak.when == "before-mains" and weak.stop is None:
            yield scene.mistake(SENSE_08, "weak_parts", index, "when")
