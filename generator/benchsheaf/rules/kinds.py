"""Whether what a field points at is a part of the kind that it is about."""

from collections.abc import Iterator, Mapping
from functools import cache

from benchsheaf.fields import Field, all_fields, spoken_list
from benchsheaf.mistakes import Code, Mistake
from benchsheaf.model.boards import Board, Part
from benchsheaf.rules.scene import MachineScene, PartScene
from benchsheaf.rules.within import Path, within

SENSE_29 = Code(
    id="SENSE-29",
    meaning="A field points at a part of another kind.",
    words="{ref} has `kind: {kind}`, and a part of kind {wanted} is wanted here. Name another, or mend its kind.",
    example={"ref": "sp-96/CX1", "kind": "paper", "wanted": "`fuse`"},
)


def kind_mistakes(scene: MachineScene | PartScene) -> Iterator[Mistake]:
    """Every pointer for which the schema names kinds of part."""
    record = scene.machine if isinstance(scene, MachineScene) else scene.part
    pointers = [
        (path, name, described)
        for way, described in _ways(_Schema(scene.conformed.kind))
        for path, name in _pointed(record, way, ())
    ]
    kinds = _kinds(record) if pointers else {}
    for path, name, described in pointers:
        kind = kinds.get(name) or _held_kind(scene, name)
        if kind and kind not in described.of_kind:
            wanted = spoken_list(described.of_kind, "or")
            yield scene.mistake(SENSE_29, *path, ref=name, kind=kind, wanted=wanted)


class _Schema:
    """A schema by its identity, so that its ways are found once."""

    def __init__(self, kind: Field) -> None:
        self.kind = kind

    def __hash__(self) -> int:
        return id(self.kind)

    def __eq__(self, other: object) -> bool:
        return isinstance(other, _Schema) and self.kind is other.kind


@cache
def _ways(schema: _Schema) -> tuple[tuple[tuple[str, ...], Field], ...]:
    """The pointers that want parts of some kinds, each with its way of names."""
    every = [(way, described.item or described) for way, described in all_fields(schema.kind)]
    return tuple((way, described) for way, described in every if described.of_kind)


def _pointed(value: object, way: tuple[str, ...], path: Path) -> Iterator[tuple[Path, str]]:
    """What stands at a way of names below a record, wherever lists lie on it."""
    if isinstance(value, tuple):
        for index, each in enumerate(value):
            yield from _pointed(each, way, (*path, index))
    elif isinstance(value, str):
        yield path, value
    elif value is not None:
        yield from _pointed(getattr(value, way[0]), way[1:], (*path, way[0]))


def _kinds(record: object) -> Mapping[str, str]:
    """The kinds of a record's own parts by their designators."""
    kinds = {part.ref: part.kind for _, part in within(record, Part)}
    for _, board in within(record, Board):
        kinds |= {part.ref: part.kind for part in board.all_parts()}
    return kinds


def _held_kind(scene: MachineScene | PartScene, name: str) -> str:
    """The kind of a part of something that the machine holds; nothing where it has none, as a part of a drive."""
    slug, _, ref = name.partition("/")
    if not ref or not isinstance(scene, MachineScene):
        return ""
    holders = [shelf[slug] for shelf in (scene.collection.supplies, scene.collection.cards) if slug in shelf]
    return next((_kinds(holder).get(ref, "") for holder in holders), "")
