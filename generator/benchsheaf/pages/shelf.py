"""What all pages draw from: the records, their figures, who holds what, and the links made so far."""

from collections.abc import Callable, Mapping
from collections.abc import Collection as Names
from dataclasses import dataclass, field
from typing import TypeVar, cast

from benchsheaf import urls
from benchsheaf.compute.named_figures import Named, named_figure
from benchsheaf.compute.workup import CollectionWorkup, sheaf_of
from benchsheaf.conformity import Conformed
from benchsheaf.fields import Absence
from benchsheaf.links import Links, Thing, owner_of, whose
from benchsheaf.markup import Markup, Templates, escaped, templates
from benchsheaf.model.boards import Part
from benchsheaf.model.cards import Bus, Card, Keyboard
from benchsheaf.model.collection import Collection
from benchsheaf.model.displays import Display, Medium
from benchsheaf.model.drives import Drive, DrivePart
from benchsheaf.model.machine import Machine
from benchsheaf.model.supply import Supply
from benchsheaf.pages import telling
from benchsheaf.pages.printing import FILTERS, TEMPLATES, own_form

Made = TypeVar("Made")
Holding = Supply | Drive | Card | Keyboard
HOLDING = ("supply", "drive", "card", "keyboard")
TELLERS = ("machine", "repair", *urls.PART_FOLDERS)
"""Kinds whose texts may name designators and figures."""


@dataclass(frozen=True, kw_only=True, slots=True)
class Shelf:
    """Everything that a page may say."""

    collection: Collection
    workup: CollectionWorkup
    links: Links
    things: Mapping[Thing, Conformed]
    edit_base: str | None = None
    trail: urls.Trail = field(default_factory=urls.Trail)
    press: Templates = field(default_factory=lambda: templates(TEMPLATES, filters=FILTERS))
    _holding: dict[Thing, list[Thing]] = field(default_factory=dict, repr=False, compare=False)
    _kept: dict[str, tuple[object, object]] = field(default_factory=dict, repr=False, compare=False)
    cut: telling.Cut = field(default_factory=telling.Cut, repr=False, compare=False)

    def desk(self, here: str, machine: Machine | None = None, own: Thing | None = None) -> "Desk":
        """Where one page is written; `own` is the thing that it is about, where that is no machine."""
        return Desk(shelf=self, here=here, machine=machine, own=("machine", machine.slug) if machine else own)

    def kept(self, kind: str, key: object, made: Callable[[], Made]) -> Made:
        """What was made last of a kind, if its key is the same; otherwise it is made now.

        Pages that want the same thing come one after the other, so one of each kind is enough to keep.
        """
        if kind not in self._kept or self._kept[kind][0] != key:
            self._kept[kind] = key, made()
        return cast(Made, self._kept[kind][1])

    def absences(self, thing: Thing) -> list[Absence]:
        """What is asked for and is not told of a thing."""
        return self.things[thing].absences

    def held_by(self, holder: Thing) -> list[Thing]:
        """All shared things that a thing points at, in any outfit."""
        if not self._holding:
            for thing, pointers in sorted(self.links.held_by.items()):
                for owner in dict.fromkeys(pointer.thing for pointer in pointers):
                    if thing in self.things:
                        self._holding.setdefault(owner, []).append(thing)
        return self._holding.get(holder, [])

    def told_of(self, teller: Thing) -> Mapping[str, str]:
        """The kinds of what the texts of a thing may speak of, by slug: what it holds, and itself if it is shared."""
        kind, slug = teller
        own = {slug: kind} if kind in urls.PART_FOLDERS else {}
        return {name: held for held, name in self.held_by(teller)} | own

    def refs_of(self, thing: Thing) -> Names[str]:
        """All designators that a thing declares."""
        kind, slug = thing
        if kind == "machine":
            return self.kept("designators", slug, lambda: _designators(self.collection.machines[slug]))
        return self.own_parts(kind, slug) if kind in HOLDING else ()

    def contacts_of(self, slug: str) -> Mapping[tuple[str, str], str]:
        """The place of each contact of a machine's plugs, by the plug's designator and the contact, on its sheet."""
        return self.kept("contacts", slug, lambda: _contacts(self.collection.machines[slug]))

    def figure(self, teller: Thing, path: str) -> str | None:
        """A figure in print, as a text of a thing asks for it; None if there is none."""
        (kind, slug), rest = whose(path, teller, self.told_of(teller))
        found = named_figure(rest, sheaf_of(kind, slug, self.collection, self.workup))
        return own_form(found.record, found.name) if isinstance(found, Named) else None

    def edit_path(self, thing: Thing, key: str) -> str:
        """The data file that holds a key of a thing, below the data folder; the thing's first file if none does."""
        return self.things[thing].entry.file_of(key).partition("/")[2]

    def thing(self, kind: str, slug: str) -> Holding:
        """Something shared that may have weak parts.

        Errors: KeyError if there is none; links have seen to that.
        """
        shelves: Mapping[str, Mapping[str, Holding]] = {
            "supply": self.collection.supplies,
            "drive": self.collection.drives,
            "card": self.collection.cards,
            "keyboard": self.collection.keyboards,
        }
        return shelves[kind][slug]

    def parts_of(self, kind: str, slug: str) -> tuple[Part, ...]:
        """The board parts of a supply or a card; other kinds have none."""
        if kind not in ("supply", "card"):
            return ()
        thing = self.thing(kind, slug)
        return thing.parts if isinstance(thing, Supply | Card) else ()

    def own_parts(self, kind: str, slug: str) -> Mapping[str, Part] | Mapping[str, DrivePart]:
        """The parts of something shared by their designators, of whatever kind it is."""
        thing = self.thing(kind, slug)
        if isinstance(thing, Drive):
            return {part.ref: part for part in thing.parts}
        return {part.ref: part for part in self.parts_of(kind, slug)}

    def summary_of(self, kind: str, slug: str) -> str:
        """The sentence that says what something shared is."""
        collection = self.collection
        if kind in ("bus", "display", "medium"):
            shelves: Mapping[str, Mapping[str, Bus | Display | Medium]] = {
                "bus": collection.buses,
                "display": collection.displays,
                "medium": collection.media,
            }
            return shelves[kind][slug].summary
        return self.thing(kind, slug).summary

    def name_of(self, kind: str, slug: str) -> str:
        """The name on a plate."""
        return self.things[kind, slug].name


@dataclass(frozen=True, kw_only=True, slots=True)
class Desk:
    """One page in the making: it knows where it is, so that links lead away from there."""

    shelf: Shelf
    here: str
    machine: Machine | None
    own: Thing | None = None

    def href(self, there: str, fragment: str = "") -> str:
        """A link to an address of the site."""
        return self.shelf.trail.href(self.here, there, fragment)

    def sheet(self, name: str, fragment: str = "", slug: str | None = None) -> str:
        """A link to a sheet of this machine, or of another."""
        owner = slug or (self.machine.slug if self.machine else "")
        return self.href(urls.sheet(owner, name), fragment)

    def repair(self, slug: str) -> str:
        """A link to one repair record."""
        return self.href(urls.repair(slug))

    def thing(self, kind: str, slug: str, fragment: str = "") -> str:
        """A link to the page of something shared, or of a machine."""
        return self.sheet("glance", fragment, slug) if kind == "machine" else self.href(urls.part(kind, slug), fragment)

    def part(self, name: str, *, brief: bool = False) -> Markup:
        """A part's designator as a link to where it lies: `C61` on this machine, `sp-96/CX1` on what it holds.

        `brief` leaves out whose part it is, where that is said already.
        """
        slug, _, ref = name.rpartition("/")
        if not slug:
            return _mono_link(self.sheet("boards", name), ref)
        kind = self.kind_of(slug)
        link = _mono_link(self.thing(kind, slug, ref), ref)
        return (
            link if brief else Markup(f'{link} of <span class="plate">{escaped(self.shelf.name_of(kind, slug))}</span>')
        )

    def told(self, text: str, of: Thing | None = None, *, at: str = "") -> Markup:
        """A contributor's text inside a sentence: its designators are links, its figures are printed.

        `of` is the thing whose text it is, if that is not the page's own; `at` the designator at whose place the text
        stands already.
        """
        return telling.told(self._pieces(text, of or self.own, at), self.href)

    def told_paragraphs(self, text: str, of: Thing | None = None, *, at: str = "") -> Markup:
        """The same in paragraphs, one for each stretch between blank lines."""
        blocks = [self.told(block.strip(), of, at=at) for block in text.split("\n\n") if block.strip()]
        return Markup("".join([f"<p>{block}</p>" for block in blocks]))

    def worded(self, text: str, of: Thing | None = None) -> str:
        """The same without links, for what is looked through or stands inside a link already."""
        if "[[" not in text:
            return text  # as most texts are
        return telling.worded(text, self._figure(of or self.own))

    def _pieces(self, text: str, teller: Thing | None, at: str) -> telling.Pieces:
        """A text cut where a designator stands; nothing at the place of `at`."""

        def way(token: str) -> telling.Lead | None:
            return self._lead(teller, token) if teller and teller[0] in TELLERS and token != at else None

        return self.shelf.cut.of((text, teller, at), lambda: telling.pieces(text, way, self._figure(teller)))

    def _figure(self, teller: Thing | None) -> telling.Figure:
        """What figures mean in the texts of a thing."""
        return lambda path: self.shelf.figure(owner_of(teller), path) if teller and teller[0] in TELLERS else None

    def _lead(self, teller: Thing, token: str) -> telling.Lead | None:
        """Where a token of a thing's text leads, if it is a designator, or a contact of a plug of a machine."""
        teller = owner_of(teller)
        slug, _, ref = token.rpartition("/")
        kind = self.shelf.told_of(teller).get(slug) if slug else None
        if slug and not kind:
            return None
        thing = (kind, slug) if kind else teller
        if len(ref) > 1 and ref in self.shelf.refs_of(thing):
            there = urls.sheet(thing[1], "boards") if thing[0] == "machine" else urls.part(*thing)
            return telling.Lead(token, there, ref)
        plug, _, contact = ref.rpartition("-")
        if not plug or thing[0] != "machine":
            return None
        place = self.shelf.contacts_of(thing[1]).get((plug, contact))
        return telling.Lead(token, urls.sheet(thing[1], "power"), place) if place else None

    def kind_of(self, slug: str) -> str:
        """What kind of thing a machine holds under a slug."""
        return next(kind for kind in urls.PART_FOLDERS if (kind, slug) in self.shelf.things)

    def printed(self, template: str, **context: object) -> str:
        """A template filled for this page."""
        return self.shelf.press.rendered(template, desk=self, **context)


def _designators(machine: Machine) -> frozenset[str]:
    return frozenset().union(*(board.refs for board in machine.boards))


def _contacts(machine: Machine) -> dict[tuple[str, str], str]:
    return {
        (plug.part, pin.pin): f"plug-{plug.id}"
        for plug in reversed(machine.connectors)
        if plug.part
        for row in plug.rows
        for pin in row.pins
    }


def _mono_link(href: str, ref: str) -> Markup:
    return Markup(f'<a class="mono" href="{escaped(href)}">{escaped(ref)}</a>')
