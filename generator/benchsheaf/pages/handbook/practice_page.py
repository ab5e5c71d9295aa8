"""What a workshop goes by, topic by topic, as the collection tells it."""

from benchsheaf.model.practice import Fact
from benchsheaf.pages.handbook.cautions import BURNS, PLUG_OUT, TRAINED
from benchsheaf.pages.handbook.shape import Content, Point, Section
from benchsheaf.pages.printing import words
from benchsheaf.pages.shelf import Desk

# What can hurt comes first; the names of the topics are those of the schema.
TOPICS = {
    "stop": "When to stop",
    "hazards": "What can hurt",
    "static": "Static charge",
    "cold-resistance": "Resistance without power",
    "power-up": "First power",
    "tantalum": "Tantalum beads",
    "electrolytic": "Electrolytic capacitors",
    "measuring": "Measuring",
    "memory-and-logic": "Memory and logic",
    "keyboard": "Keyboards",
    "drives": "Drives",
}


def practice(desk: Desk) -> Content:
    """Every fact under its topic, with its mark."""
    collection = desk.shelf.collection
    sources = " ".join(
        f"{words(each.kind).capitalize()}: {desk.worded(each.note)}" for each in collection.practice_sources
    )
    sections = [
        Section(
            anchor=topic,
            title=title,
            points=[_point(desk, fact) for fact in collection.practice if fact.topic == topic],
        )
        for topic, title in TOPICS.items()
        if any(fact.topic == topic for fact in collection.practice)
    ]
    last = Section(anchor="sources", title="Where this is from", told=(sources,)) if sources else None
    return Content(
        cautions=(PLUG_OUT, TRAINED, BURNS),
        long=True,
        answer="These hold in general. What a machine's own sheet says wins, and a maker's figure wins over both.",
        sections=[*sections, last] if last else sections,
    )


def _point(desk: Desk, fact: Fact) -> Point:
    mark = words(fact.mark).capitalize()
    seen = f"; {desk.worded(fact.seen)}" if fact.seen else ""
    return Point(
        anchor=f"practice-{fact.id}",
        title="",
        told=desk.told(fact.says),
        plain=desk.worded(fact.says),
        mark=f"{mark}{seen}.",
    )
