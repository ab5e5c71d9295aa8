"""A figure that a text asks for by name is the one that the notes have."""

from decimal import Decimal
from pathlib import Path

import pytest

from benchsheaf.compute.named_figures import Named, Unnamed, named_figure
from benchsheaf.compute.workup import sheaf_of
from benchsheaf.site import Judgement, judgement

MACHINE = "machine", "ostervane-bureau-8"
# Typed from the notes of the demonstration machine and of what it holds: sections 2 to 5 and shared parts 1, 3 and 4.
WANTED = [
    (MACHINE, "rails.+5 V.to_ground.no_power_below_ohm", "18"),
    (MACHINE, "rails.-12 V.to_ground.usual.low_ohm", "1500"),
    (MACHINE, "rails.\u221212 V.to_ground.usual.low_ohm", "1500"),
    (MACHINE, "clocks.processor.frequency_hz", "6000000"),
    (("supply", "sp-96"), "reservoir.wait_minutes", "4"),
    (("supply", "sp-96"), "parts.FS1.blows_a", "2.5"),
    (("card", "ov-tx2"), "modes.letters-80.line_rate_hz", "20000"),
    (("drive", "ov-hd14"), "ready_in_s", "15"),
    (("drive", "ov-hd14"), "draws.+12 V.start_a", "3.30"),
]


@pytest.fixture(scope="module")
def judged(repository: Path) -> Judgement:
    """The demonstration, read and computed."""
    return judgement(repository / "machines")


@pytest.mark.parametrize("thing,path,wanted", WANTED, ids=lambda each: str(each))
def test_a_path_leads_to_the_figure_of_the_notes(
    judged: Judgement, thing: tuple[str, str], path: str, wanted: str
) -> None:
    """By names of fields and items, never by places in a list, from the thing's own facts and figures."""
    found = named_figure(path, sheaf_of(*thing, judged.collection, judged.workup))
    assert isinstance(found, Named)
    assert Decimal(str(found.value)) == Decimal(wanted)


@pytest.mark.parametrize(
    "path,before,wanted",
    [
        ("rails.+24 V.window", "rails", "+24 V.window"),  # no such item
        ("rails.0.nominal_v", "rails", "0.nominal_v"),  # a place in a list is no name
        ("rails", "rails", ""),  # many figures, not one
        ("rails.+5 V.nominal_v.real", "rails.+5 V.nominal_v", "real"),  # a number has nothing inside
        ("__class__.__name__", "", "__class__.__name__"),  # nothing of the program can be asked for
        ("", "", ""),
    ],
)
def test_a_path_that_leads_to_no_figure_says_how_far_it_led(
    judged: Judgement, path: str, before: str, wanted: str
) -> None:
    """What is not there, is many, or is no fact at all, is told and never raised."""
    found = named_figure(path, sheaf_of(*MACHINE, judged.collection, judged.workup))
    assert isinstance(found, Unnamed)
    assert (found.before, found.wanted) == (before, wanted)
