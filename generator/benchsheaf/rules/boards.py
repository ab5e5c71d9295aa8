"""Whether parts lie on their boards, and weak parts say what is stopped."""

from collections.abc import Iterator, Sequence

from benchsheaf.mistakes import Code, Mistake
from benchsheaf.model.boards import Extent, Part, WeakPart
from benchsheaf.model.cards import Card
from benchsheaf.model.supply import Supply
from benchsheaf.quantities import printed
from benchsheaf.rules.scene import MachineScene, PartScene, Scene

SENSE_07 = Code(
    id="SENSE-07",
    meaning="A part lies beyond the edge of its board.",
    words="{ref} would reach over the edge of the board, which is {x} by {y}. `at` is the middle of the part.",
    example={"ref": "C61", "x": "340 mm", "y": "250 mm"},
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
    yield from _orders(scene, scene.part.weak_parts)


def _over_the_edge(scene: Scene, path: tuple[str | int, ...], size: Extent, parts: Sequence[Part]) -> Iterator[Mistake]:
    for index, part in enumerate(parts):
        if _beyond(part, size):
            yield _edge(scene, (*path, "parts", index, "at"), part.ref, size)


def _edge(scene: Scene, path: tuple[str | int, ...], ref: str, size: Extent) -> Mistake:
    return scene.mistake(SENSE_07, *path, ref=ref, x=printed(size.x_mm, "mm"), y=printed(size.y_mm, "mm"))


def _beyond(part: Part, size: Extent) -> bool:
    spans = ((part.at.x_mm, part.body.x_mm, size.x_mm), (part.at.y_mm, part.body.y_mm, size.y_mm))
    return any(middle - long / 2 < -EDGE_MM or middle + long / 2 > edge + EDGE_MM for middle, long, edge in spans)


def _orders(scene: Scene, weak_parts: Sequence[WeakPart]) -> Iterator[Mistake]:
    for index, weak in enumerate(weak_parts):
        if weak.when == "before-mains" and weak.stop is None:
            yield scene.mistake(SENSE_08, "weak_parts", index, "when")
