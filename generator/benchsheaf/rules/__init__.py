"""What needs figures to be judged: rules of the bench that no schema can say."""

from collections.abc import Iterator

from benchsheaf.mistakes import Mistake
from benchsheaf.rules.boards import board_mistakes
from benchsheaf.rules.drives import drive_mistakes
from benchsheaf.rules.entries import entry_mistakes
from benchsheaf.rules.kinds import kind_mistakes
from benchsheaf.rules.memory import memory_mistakes
from benchsheaf.rules.mentions import mention_mistakes
from benchsheaf.rules.outfits import outfit_mistakes
from benchsheaf.rules.rails import rail_mistakes
from benchsheaf.rules.scene import MachineScene, PartScene
from benchsheaf.rules.signals import mode_mistakes, signal_mistakes
from benchsheaf.rules.sounds import sound_mistakes


def machine_mistakes(scene: MachineScene) -> Iterator[Mistake]:
    """All rules that a machine is judged by."""
    yield from rail_mistakes(scene)
    yield from board_mistakes(scene)
    yield from memory_mistakes(scene)
    yield from outfit_mistakes(scene)
    yield from entry_mistakes(scene)
    yield from kind_mistakes(scene)
    yield from signal_mistakes(scene)
    yield from sound_mistakes(scene)


def part_mistakes(scene: PartScene) -> Iterator[Mistake]:
    """All rules that a shared part is judged by."""
    yield from drive_mistakes(scene)
    yield from mode_mistakes(scene)
    yield from board_mistakes(scene)
    yield from entry_mistakes(scene)
    yield from kind_mistakes(scene)


__all__ = ["MachineScene", "PartScene", "machine_mistakes", "mention_mistakes", "part_mistakes"]
