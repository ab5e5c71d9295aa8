"""What can be found of displays and media: the rates one locks to, its plug, its cautions; the drives one goes into."""

from collections.abc import Iterator

from benchsheaf.model.displays import Display, Medium
from benchsheaf.pages.finding.bench_entries import part_bench_entries
from benchsheaf.pages.finding.board_parts import Place
from benchsheaf.pages.finding.entry import Entry
from benchsheaf.pages.printing import span
from benchsheaf.pages.shelf import Desk


def loose_entries(desk: Desk, kind: str, slug: str, place: Place) -> Iterator[Entry]:
    """Everything to find of a display or a medium; nothing for other kinds."""
    if kind == "display":
        yield from _display(desk.shelf.collection.displays[slug], place)
    elif kind == "medium":
        yield from _medium(desk, desk.shelf.collection.media[slug], place)


def _display(display: Display, place: Place) -> Iterator[Entry]:
    rates = f"locks at {span(display.line, 'Hz')} by line, {span(display.frame, 'Hz')} by frame"
    yield _itself(place, "Display", display.name, f"{display.summary} {rates}")
    if display.wrong_rate:
        yield place.entry("Section", f"{display.name} at a wrong rate", "rates", display.wrong_rate)
    if display.plug:
        told = (" ".join(filter(None, (pin.pin, pin.rail or pin.signal, pin.colour))) for pin in display.plug)
        yield place.entry("Plug", "Picture plug", "plug", ", ".join(told))
    for each in display.cautions:
        yield place.entry("Caution", each.order.rstrip("."), f"caution-{each.id}", each.says)
    yield from part_bench_entries(place.entry, display)


def _medium(desk: Desk, medium: Medium, place: Place) -> Iterator[Entry]:
    drives = ", ".join(desk.shelf.name_of("drive", each) for each in medium.drives)
    text = " ".join(filter(None, (medium.summary, f"goes into {drives}.", medium.note)))
    yield _itself(place, "Medium", medium.name, text)
    if medium.test_medium:
        yield place.entry("Medium", medium.test_medium, "", f"test medium of {medium.name} for {drives}", named=True)


def _itself(place: Place, kind: str, title: str, text: str) -> Entry:
    """The thing with its page; where it is goes without saying."""
    return Entry(
        kind=kind, title=title, where="", way=place.way(""), text=text, machines=place.machines, designator=True
    )
