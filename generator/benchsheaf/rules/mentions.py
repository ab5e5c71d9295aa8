"""Whether every figure that a text asks for is there."""

from collections.abc import Container, Iterator, Mapping
from dataclasses import replace

from benchsheaf.compute.named_figures import Unnamed, named_figure
from benchsheaf.compute.workup import CollectionWorkup, sheaf_of
from benchsheaf.conformity import Conformed
from benchsheaf.links import Found, Thing, held_kinds, owner_of, whose
from benchsheaf.mistakes import Code, Mistake, nearest_name
from benchsheaf.model.collection import Collection

LINK_06 = Code(
    id="LINK-06",
    meaning="A text asks for a figure that is not there.",
    words="No single figure is called that.{known}",
    example={"known": " After `reservoir` comes one of `stored_energy_j`, `wait_minutes`."},
    shares=("asks for it", "ask for it"),
)
LINK_07 = Code(
    id="LINK-07",
    meaning="A name, an inscription or a reading asks for a figure.",
    words="Names, inscriptions and readings are shown as they are written; figures are asked for in sentences "
    "only. Write it out here.",
)
MOST_NAMES = 8
LABELS = frozenset(
    (
        "ends",
        "kind",
        "mark",
        "name",
        "print",
        "seen",
        "shown",
        "shows",
        "signal",
        "starts",
        "term",
        "test_medium",
        "was",
    )
)
"""Fields whose words are shown as they are, in pictures and headings too."""


def mention_mistakes(
    things: Mapping[Thing, Conformed],
    found: Mapping[Thing, Found],
    records: Collection,
    workup: CollectionWorkup,
    wrong: Container[Thing] = (),
) -> Iterator[Mistake]:
    """The mentions of all texts that lead nowhere; a repair means the figures of its machine.

    `wrong` are things with a mistake of judgement: a figure that these lack may be lacking for that reason.
    """
    for key, conformed in things.items():
        owner = owner_of(key)
        for each in found[key].mentions:
            if each.at[-1] in LABELS:
                place = conformed.entry.place_within(each.at, f"[[{each.path}]]")
                yield LINK_07.at(place, conformed.spoken(each.at), f"[[{each.path}]]")
                continue
            held = held_kinds(owner, found[owner].pointers)
            (kind, slug), rest = whose(each.path, owner, held)
            way = named_figure(rest, sheaf_of(kind, slug, records, workup))
            if isinstance(way, Unnamed) and not (way.absent and (owner in wrong or (kind, slug) in wrong)):
                close, known = _nearest(way, held if rest == " ".join(each.path.split()) else {})
                nearest = f"[[{each.path.removesuffix(rest)}{close}]]" if close else None
                place = conformed.entry.place_within(each.at, f"[[{each.path}]]")
                told = LINK_06.at(place, conformed.spoken(each.at), f"[[{each.path}]]", nearest, known=known)
                # What is missing is the name at which the way ends, whatever was to come after it.
                yield replace(told, about=("figure", kind, slug, way.before, way.wanted.partition(".")[0]))


def _nearest(found: Unnamed, held: Mapping[str, str]) -> tuple[str | None, str]:
    """The path that was meant, as far as that can be guessed; else what may stand where the way ends."""
    step, point, after = found.wanted.partition(".")
    slug, slash, path = found.wanted.partition("/")
    if slash and not found.before and (other := nearest_name(slug, list(held))):
        return f"{other}/{path}", ""
    names = list(found.known)
    close = next((name for name in names if step and name.startswith(step)), None) or nearest_name(step, names)
    before = f"{found.before}." if found.before else ""
    if close:
        return f"{before}{close}{point}{after}", ""
    listed = ", ".join(f"`{name}`" for name in names[:MOST_NAMES])
    more = f" and {len(names) - MOST_NAMES} more" if len(names) > MOST_NAMES else ""
    if not names:
        return None, ""
    return None, (f" After `{found.before}` comes" if before else " It begins with") + f" one of {listed}{more}."
