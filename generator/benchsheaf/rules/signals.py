"""Whether clocks have a crystal, memory is refreshed in time, and picture modes can be true."""

from collections.abc import Iterator

from benchsheaf.mistakes import Code, Mistake
from benchsheaf.model.cards import Card
from benchsheaf.model.signals import Feature, View
from benchsheaf.quantities import printed
from benchsheaf.rules.scene import MachineScene, PartScene

SENSE_50 = Code(
    id="SENSE-50",
    meaning="A clock comes from nothing.",
    words="`{clock}` is divided from no other clock, and names no part with a frequency. "
    "Give `of` and `divided_by`, or in `part` a crystal whose `frequency` is described.",
    example={"clock": "master"},
)
SENSE_51 = Code(
    id="SENSE-51",
    meaning="Memory is refreshed more slowly than it may be.",
    words="All {rows} rows take {takes}, and only {within} are allowed. One of these figures is wrong.",
    example={"rows": "256", "takes": "4.27 ms", "within": "4 ms"},
)
SENSE_52 = Code(
    id="SENSE-52",
    meaning="A picture mode has a crystal that gives no dots.",
    words="`{part}` is no crystal with a frequency, so no rate follows from it. Its `frequency` is missing, "
    "or another part is meant.",
    example={"part": "W1"},
)
SENSE_53 = Code(
    id="SENSE-53",
    meaning="More is shown of a picture than there is.",
    words="{shown} {what} are shown of {all}. One of these figures is wrong.",
    example={"shown": "1,100", "what": "dots", "all": "1,050"},
)
SENSE_54 = Code(
    id="SENSE-54",
    meaning="Something reaches over the edge of a front or a back.",
    words="{name} would reach over the edge of {view}, which is {wide} by {high}. "
    "`at` is its left top corner; of several in a row the last one counts too.",
    example={"name": "Red lamp", "view": "Front", "wide": "420 mm", "high": "150 mm"},
)


def signal_mistakes(scene: MachineScene) -> Iterator[Mistake]:
    """Clocks without a head, memory that would forget, fronts and backs that are too small."""
    yield from _beyond_edges(scene)
    for index, clock in enumerate(scene.machine.clocks):
        if clock.of is None and scene.workup.clocks[index].frequency_hz is None:
            yield scene.mistake(SENSE_50, "clocks", index, "part" if clock.part else "id", clock=clock.id)
    memory, figures = scene.machine.memory, scene.workup.refresh
    if memory and memory.refresh and figures and not figures.holds:
        words = {"takes": printed(figures.all_rows_s, "s", 2, "up"), "within": printed(memory.refresh.within_s, "s")}
        yield scene.mistake(SENSE_51, "memory", "refresh", "every", rows=f"{memory.refresh.rows:,}", **words)


def _beyond_edges(scene: MachineScene) -> Iterator[Mistake]:
    for index, view in enumerate(scene.machine.views):
        for number, feature in enumerate(view.features):
            if not _lies_on(feature, view):
                words = {"wide": printed(view.size.x_mm, "mm"), "high": printed(view.size.y_mm, "mm")}
                path = ("views", index, "features", number, "at")
                yield scene.mistake(SENSE_54, *path, name=feature.name, view=view.name, **words)


def _lies_on(feature: Feature, view: View) -> bool:
    """Whether the first and the last of a feature lie within a view."""
    more = (feature.count or 1) - 1
    step = (feature.step.x_mm, feature.step.y_mm) if feature.step else (0, 0)
    lasts = feature.at.x_mm + step[0] * more, feature.at.y_mm + step[1] * more
    firsts = feature.at.x_mm, feature.at.y_mm
    sizes = (feature.body.x_mm, view.size.x_mm), (feature.body.y_mm, view.size.y_mm)
    return all(
        0 <= place <= whole - body
        for places in (firsts, lasts)
        for place, (body, whole) in zip(places, sizes, strict=True)
    )


def mode_mistakes(scene: PartScene) -> Iterator[Mistake]:
    """The picture modes of a card; nothing for other kinds."""
    if not isinstance(scene.part, Card):
        return
    frequencies = {part.ref: part.frequency_hz for part in scene.part.parts}
    for index, mode in enumerate(scene.part.modes):
        if frequencies.get(mode.crystal) is None:
            yield scene.mistake(SENSE_52, "modes", index, "crystal", part=mode.crystal)
        for name, what, shown, whole in (
            ("shown_dots", "dots", mode.shown_dots, mode.dots),
            ("shown_lines", "lines", mode.shown_lines, mode.lines),
        ):
            if shown is not None and shown > whole:
                told = {"shown": f"{shown:,}", "what": what, "all": f"{whole:,}"}
                yield scene.mistake(SENSE_53, "modes", index, name, **told)
