"""What can be found of the things that machines share, and of the cautions that all share."""

from collections.abc import Iterator
from functools import partial

from benchsheaf import urls
from benchsheaf.model.cards import Card, Keyboard
from benchsheaf.model.drives import Drive
from benchsheaf.model.supply import Supply
from benchsheaf.pages.finding.bench_entries import part_bench_entries
from benchsheaf.pages.finding.board_parts import Place, part_entries
from benchsheaf.pages.finding.decoding_entries import bus_entries, card_entries
from benchsheaf.pages.finding.entry import Entry, in_words
from benchsheaf.pages.finding.handbook_entries import handbook_entries
from benchsheaf.pages.finding.screen_entries import loose_entries
from benchsheaf.pages.finding.term_entries import term_entries
from benchsheaf.pages.finding.volume_entries import volume_entries
from benchsheaf.pages.missing import TITLE as MISSING
from benchsheaf.pages.part_lists import is_drawn
from benchsheaf.pages.printing import binary, figure, quantity, rail_name, words
from benchsheaf.pages.shelf import Desk, Holding


def shared_entries(desk: Desk) -> Iterator[Entry]:
    """Each thing with its parts, its weak parts and its addresses; then the cautions, and what is missing."""
    for kind, slug in sorted(desk.shelf.things):
        if kind in urls.PART_FOLDERS:
            yield from in_words(_thing_entries(desk, kind, slug), desk, (kind, slug))
    for each in desk.shelf.collection.cautions.values():
        way = desk.href(urls.CAUTIONS, each.id)
        yield Entry(kind="Caution", title=each.order.rstrip("."), where="All machines", way=way, text=each.says)
    yield from handbook_entries(desk)
    yield from term_entries(desk)
    yield Entry(kind="Sheet", title=MISSING, where="All machines", way=desk.href(urls.MISSING))


def _thing_entries(desk: Desk, kind: str, slug: str) -> Iterator[Entry]:
    name = desk.shelf.name_of(kind, slug)
    way = partial(desk.thing, kind, slug)
    place = Place(where=f"{kind.capitalize()} {name}", way=way, machines=_holders(desk, kind, slug))
    if kind in ("display", "medium"):
        yield from loose_entries(desk, kind, slug, place)
        return
    thing = None if kind == "bus" else desk.shelf.thing(kind, slug)
    summary = thing.summary if thing else desk.shelf.summary_of(kind, slug)
    yield Entry(
        kind=kind.capitalize(),
        title=name,
        where="",
        way=way(),
        text=f"{summary} {_figures(desk, thing) if thing else ''}".rstrip(),
        machines=place.machines,
        designator=kind != "bus",
    )
    if thing is None:
        yield from bus_entries(place, desk.shelf.collection.buses[slug])
        return
    own = desk.shelf.own_parts(kind, slug)
    yield from part_entries(place, tuple(own.values()), thing.weak_parts, f"{slug}/", own=is_drawn(thing))
    for each in thing.cautions:
        yield place.entry("Caution", each.order.rstrip("."), f"caution-{each.id}", each.says)
    if isinstance(thing, Card):
        yield from card_entries(desk, place, thing)
        for area in thing.areas:
            yield place.entry("Memory area", area.name, "areas", f"from {area.base}, {binary(area.size_bytes)}")
    if isinstance(thing, Drive | Keyboard) and (pins := thing.plug if isinstance(thing, Drive) else thing.lead):
        title = "Its supply plug" if isinstance(thing, Drive) else "Its lead"
        told = ", ".join(f"{pin.pin} {rail_name(pin.rail) if pin.rail else pin.signal}" for pin in pins if not pin.key)
        yield place.entry("Plug", title, "plug", told)
    if isinstance(thing, Drive):
        yield from volume_entries(desk, place, thing)
    yield from part_bench_entries(place.entry, thing)


def _figures(desk: Desk, thing: Holding) -> str:
    """What somebody may remember of a plate: watts of a supply, megabytes and geometry of a drive."""
    if isinstance(thing, Supply):
        rails = ", ".join(f"{rail_name(each.rail)} {quantity(each.most_a, 'A')}" for each in thing.outputs)
        return f"{quantity(thing.together_w, 'W')}, {rails}"
    if isinstance(thing, Drive):
        capacity = desk.shelf.workup.drives[thing.slug].storage.capacity
        shape = thing.geometry
        size = figure(capacity, "capacity_megabytes", 1)
        return f"{size}, {words(thing.kind)}, {shape.cylinders} cylinders {shape.heads} heads {shape.sectors} sectors"
    return ""


def _holders(desk: Desk, kind: str, slug: str) -> tuple[str, ...]:
    """The slugs of the machines that point at a thing."""
    held = desk.shelf.links.held_by.get((kind, slug), ())
    owners = dict.fromkeys(pointer.thing for pointer in held)
    return tuple(name for owner, name in owners if owner == "machine" and (owner, name) in desk.shelf.things)
