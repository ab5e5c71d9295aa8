"""What a machine says: lanes to scale, the same in words, links both ways, and what an ear may take wrongly."""

import re
import shutil
from collections.abc import Callable
from decimal import Decimal
from html import unescape
from pathlib import Path

import pytest

from benchsheaf.compute.beeps import BeepFigures, ToneFigures
from benchsheaf.drawing.picture import Box, Line, Picture
from benchsheaf.drawing.timeline import common_scale, timeline
from benchsheaf.model.displays import Term
from benchsheaf.model.signals import Beep
from benchsheaf.pages.terms import letters
from benchsheaf.site import Judgement, edition, judgement
from benchsheaf.wording import as_text

MACHINE = "machines/ostervane-bureau-8"
SHEET = f"{MACHINE}/beeps.html"

# The demonstration notes, section 13: short 0.12 s, long 0.60 s, gap 0.18 s; the edges added up by hand.
EDGES = {
    "good": [("0", "0.12"), ("0.30", "0.42"), ("0.60", "1.20")],
    "rom-sum": [("0", "0.60"), ("0.78", "0.90")],
    "pair-0": [("0", "0.60"), ("0.78", "1.38")],
    "pair-1": [("0", "0.12"), ("0.30", "0.42"), ("0.60", "0.72"), ("0.90", "1.02")],
    "picture-card": [("0", "0.12"), ("0.30", "0.90"), ("1.08", "1.20")],
    "keyboard": [("0", "0.60"), ("0.78", "0.90"), ("1.08", "1.68")],
}
TWO_SECONDS = {"wide": 437.0, "phone": 341.0}  # how long two seconds are in the drawings, in pixels

Remade = Callable[[dict[str, str]], Judgement]


@pytest.fixture(scope="module")
def judged(repository: Path) -> Judgement:
    """The machines of the checkout with their figures."""
    return judgement(repository / "machines")


@pytest.fixture
def remade(repository: Path, tmp_path: Path) -> Remade:
    """The machines with files of the first one written anew; an empty text takes a file away.

    Its checks lose the sounds and messages that they point at, so that other ones may stand in their place.
    """

    def made(files: dict[str, str]) -> Judgement:
        folder = tmp_path / "machines"
        shutil.copytree(repository / "machines", folder)
        checks = folder / "ostervane-bureau-8" / "checks.yml"
        pointers = r", (?:beep: [a-z0-9-]+|messages: \[[^]]*\])"
        checks.write_text(re.sub(pointers, "", checks.read_text(encoding="utf-8")), encoding="utf-8")
        for name, text in files.items():
            path = folder / "ostervane-bureau-8" / name
            path.write_text(text, encoding="utf-8") if text else path.unlink()
        return judgement(folder)

    return made


def written(judged: Judgement, address: str) -> str:
    """A page as it would be published."""
    assert judged.mistakes == (), as_text(list(judged.mistakes))
    whole = edition(judged)
    return whole.html(next(page for page in whole.pages if page.address == address))


def plain(markup: str) -> str:
    """What somebody reads of a page, in one line with plain spaces."""
    return re.sub(r"\s+", " ", unescape(re.sub(r"<[^>]+>", "", markup)).replace("\u00a0", " "))


def row(page: str, ident: str) -> str:
    """The row of a list with an id."""
    return next(each for each in page.split("<li ") if each.startswith(f'id="{ident}"')).partition("</li>")[0]


def tones(picture: Picture) -> list[Box]:
    """The blocks of a lane."""
    return [each for each in picture.shapes if isinstance(each, Box) and each.css_class == "tone"]


def ticks(picture: Picture) -> list[Line]:
    """What stands under the line of a lane."""
    return [each for each in picture.shapes if isinstance(each, Line) and each.x1 == each.x2]


@pytest.mark.parametrize("name", EDGES)
def test_a_lane_is_to_scale(judged: Judgement, name: str) -> None:
    """Each tone begins and ends at its second, in both drawings, and all lanes are two seconds long."""
    sounds = judged.workup.machines["ostervane-bureau-8"].sounds
    assert sounds
    figures = next(each for each in sounds.beeps if each.id == name)
    both = timeline(figures, common_scale(sounds.beeps), "as it is heard", "lane")
    for picture in (both.wide, both.phone):
        a_second = TWO_SECONDS[picture.css_class] / 2
        found = [(each.x - 1, each.x - 1 + each.width, each.height) for each in tones(picture)]
        wanted = [(float(start) * a_second, float(end) * a_second, 17) for start, end in EDGES[name]]
        assert [pytest.approx(each, abs=0.01) for each in wanted] == found
        places = [(round((each.x1 - 1) / a_second, 6), each.y2 - each.y1) for each in ticks(picture)]
        assert places == [(0, 8), (0.5, 4), (1, 8), (1.5, 4), (2, 8)]
        edges = ", ".join(f"{start} to {end}\u00a0s" for start, end in EDGES[name])
        assert picture.label.startswith(f"as it is heard: tones from {edges}.")


def lane_of(*tones_heard: tuple[str, str, int]) -> BeepFigures:
    """A code of tones by their edges and pitches."""
    made = tuple(
        ToneFigures(tone="t", start_s=Decimal(start), end_s=Decimal(end), pitch_hz=Decimal(pitch))
        for start, end, pitch in tones_heard
    )
    return BeepFigures(id="b", lasts_s=made[-1].end_s, tones=made)


def test_a_scale_ends_at_the_next_half_second() -> None:
    """The longest code decides; one that ends at a half second needs no more."""
    for lasts, extent in (("0.1", "0.5"), ("0.5", "0.5"), ("0.51", "1"), ("1.68", "2"), ("7.2", "7.5")):
        assert common_scale([lane_of(("0", "0.1", 750)), lane_of(("0", lasts, 750))]).extent_s == Decimal(extent)


def test_a_long_code_has_no_more_ticks_than_an_eye_can_tell_apart() -> None:
    """A minute of sound has a tick every two seconds and not a hundred and twenty."""
    figures = lane_of(("0", "60", 750))
    for picture in (timeline(figures, common_scale([figures]), "long", "lane").wide,):
        assert len(ticks(picture)) == 31


def test_a_higher_tone_stands_higher() -> None:
    """With two pitches the blocks of the higher one are raised, and all have one height."""
    figures = lane_of(("0", "0.1", 500), ("0.2", "0.3", 1600))
    low, high = tones(timeline(figures, common_scale([figures]), "low high", "lane").phone)
    assert high.y < low.y
    assert high.height == low.height == 17


@pytest.mark.parametrize(
    "names,heard",
    [
        (["long", "short"], "long short"),
        (["long", "long"], "long long"),
        (["short"], "short"),
        (["short"] * 4, "four short"),
        (["short"] * 12, " ".join(["short"] * 12)),
        (["long-high", "low"], "long high, low"),
    ],
)
def test_a_code_is_called_as_an_ear_hears_it(names: list[str], heard: str) -> None:
    """In words, never in letters; like tones are counted as long as an ear counts them."""
    assert Beep(id="b", tones=tuple(names), means="M").heard == heard


def test_the_sheet_says_all_in_words(judged: Judgement) -> None:
    """The times in one sentence, each code in words with its length, the good one with mark and word."""
    page = written(judged, SHEET)
    assert "Short is 0.12 s, long 0.60 s, the gap 0.18 s, the tone 750 Hz." in plain(page)
    assert "All but the good one are repeated after 1.5 s of silence." in plain(page)
    assert plain(row(page, "beep-good")).split(">", 1)[1].strip().startswith("short short long 1.20 s Good:")
    assert 'class="mark good"' in row(page, "beep-good")
    assert page.count('class="mark good"') == 1
    assert "four short 1.02 s" in plain(row(page, "beep-pair-1"))
    assert "Normal while OV-TX2 is not fitted." in plain(row(page, "beep-picture-card"))


def test_what_an_ear_may_confuse_is_said(judged: Judgement) -> None:
    """The three of the first machine, each with what to do about it."""
    told = plain(written(judged, SHEET))
    assert "short short long and short long short: the same tones in another order, and each lasts 1.20 s." in told
    assert (
        "long short is how long short long begins. Decide only when the silence is longer than the gap of 0.18 s."
        in told
    )
    assert "long short is how short long short ends. If you listened late, wait until it comes again." in told


def test_sounds_messages_and_chips_lead_to_each_other(judged: Judgement) -> None:
    """From a sound to its messages and banks, from a message to its sounds and to its chips, and from there back."""
    page = written(judged, SHEET)
    sound, message = row(page, "beep-pair-1"), row(page, "message-store")
    assert 'href="#message-store"' in sound
    assert 'href="memory.html#bank-e1"' in sound
    assert 'href="#beep-pair-1"' in message
    assert 'href="memory.html#codes"' in message
    assert 'href="boards.html#N20"' in row(page, "beep-rom-sum")
    assert 'href="finding.html"' in page.partition('id="sounds"')[2].partition("</section>")[0]
    assert "Normal while OV-HD14 or OV-DK1 is not fitted." in plain(row(page, "message-disk-slow"))
    memory = written(judged, f"{MACHINE}/memory.html")
    codes = memory.partition('id="codes"')[2].partition("</section>")[0]
    assert 'href="beeps.html#message-store"' in codes
    assert "STORE O1 84O1bits 2 and 7N73 and N78" in plain(codes)
    assert "CHECKBIT E1E1parityN69" in plain(codes)


OTHER_SOUNDS = """\
tones:
  - {id: high, lasts: 0.12 s, pitch: 1600 Hz}
  - {id: long-low, lasts: 0.50 s, pitch: 500 Hz}
beeps:
  - {id: good, tones: [high], means: All is well., good: yes}
  - {id: again, tones: [high], again: 1.5 s, means: The test goes round.}
  - {id: rom, tones: [long-low, high], gap: 0.15 s, again: 1.5 s, means: Start ROM.}
  - {id: store, tones: [high, high, high], gap: 0.3 s, again: 2 s, means: Store., banks: [e0]}
  - {id: slow, tones: [high, high, high], gap: 0.6 s, again: 2 s, means: "Store, the slow way."}
messages:
  - {id: bad, shows: Bad bank b, means: A chip., tokens: [bank], with_beeps: [store]}
"""


def test_what_codes_have_not_in_common_stands_at_each(remade: Remade) -> None:
    """Two pitches, gaps and pauses: the sentence says what holds for all, each lane the rest; once is not again."""
    page = written(remade({"sounds.yml": OTHER_SOUNDS}), SHEET)
    told = plain(page)
    assert "High is 0.12 s at 1,600 Hz, long low 0.50 s at 500 Hz." in told
    assert "high 0.12 s, once" in plain(row(page, "beep-good"))
    assert "high 0.12 s, again after 1.5 s of silence" in plain(row(page, "beep-again"))
    assert "long low, high 0.77 s, gap 0.15 s, again after 1.5 s of silence" in plain(row(page, "beep-rom"))
    assert "The higher a block stands, the higher is its tone." in told
    assert "high and high: the same tones in the same order." in told
    assert "three high and three high: the same tones in the same order." in told
    assert "Nothing heard?" not in told


def test_messages_alone_make_the_sheet(remade: Remade) -> None:
    """A machine that has no loudspeaker and shows messages has the sheet, and its sounds are asked for as a fact."""
    text = "messages:\n  - {id: slow, shows: DISK SLOW, means: The disk is slow.}\nsilence: It has no loudspeaker.\n"
    judged = remade({"sounds.yml": text})
    page = written(judged, SHEET)
    assert "DISK SLOW" in plain(row(page, "message-slow"))
    assert "It has no loudspeaker." in plain(page)
    assert 'id="sounds"' not in page
    missing = plain(written(judged, f"{MACHINE}/missing.html"))
    assert "Beeps" in missing
    assert "Beeps and messages" not in missing.partition("Sheets")[2].partition("What is missing")[0]


def test_a_machine_without_banks_names_none(remade: Remade, repository: Path) -> None:
    """Messages that name a bank of a machine without memory are told, one by one, at their own lines."""
    folder = repository / MACHINE
    texts = {name: (folder / name).read_text(encoding="utf-8") for name in ("sounds.yml", "outfits.yml")}
    texts["outfits.yml"] = re.sub(r"\n    fill: [a-z0-9-]+", "", texts["outfits.yml"])
    sounds = re.sub(r"\n    banks: \[[^]]+\]", "", texts["sounds.yml"])
    texts["sounds.yml"] = re.sub(r"\n    examples:(\n      - \{[^}]+\})+", "", sounds)
    told = remade(texts | {"memory.yml": ""}).mistakes
    lines = texts["sounds.yml"].split("\n")
    wanted = [number for number, line in enumerate(lines, 1) if "tokens: [bank" in line]
    assert [(each.code.id, each.place.line) for each in told] == [("SENSE-44", line) for line in wanted]
    assert len(wanted) == 2


def test_tones_without_a_code_are_told(remade: Remade) -> None:
    """What would stand on no page does not vanish in silence."""
    text = "tones:\n  - {id: short, lasts: 0.12 s, pitch: 750 Hz}\nsilence: The supply.\n"
    told = remade({"sounds.yml": text}).mistakes
    assert [(each.code.id, each.path, each.place.line) for each in told] == [
        ("SENSE-47", "tones", 2),
        ("SENSE-47", "silence", 3),
    ]


def term(word: str, ident: str) -> Term:
    """A word of the trade."""
    return Term(id=ident, term=word, means="M.")


def test_words_stand_in_the_order_of_the_alphabet() -> None:
    """Capitals do not count; what begins with no letter of the alphabet stands together, and each letter once."""
    found = letters(
        [term("rail", "r"), term("Émigré", "e"), term("ESR", "x"), term("Ripple", "p"), term("2-wire", "two")]
    )
    assert [(each.letter, each.anchor, [one.id for one in each.terms]) for each in found] == [
        ("0–9", "letter-others", ["two", "e"]),
        ("E", "letter-e", ["x"]),
        ("R", "letter-r", ["r", "p"]),
    ]


def test_every_word_is_on_its_page_and_home_leads_there(judged: Judgement) -> None:
    """Some forty words, each at its own place under its letter."""
    page = written(judged, "terms.html")
    terms = judged.collection.terms
    assert len(terms) >= 40
    for ident, each in terms.items():
        assert f'id="term-{ident}"' in page
        assert each.means in plain(page)
    assert 'href="terms.html"' in written(judged, "index.html")


def test_without_words_there_is_no_page_of_them(repository: Path, tmp_path: Path) -> None:
    """A collection that explains none links to none."""
    folder = tmp_path / "machines"
    shutil.copytree(repository / "machines", folder)
    (folder / "_shared" / "terms.yml").unlink()
    judged = judgement(folder)
    assert "terms.html" not in {page.address for page in edition(judged).pages}
    assert "terms.html" not in written(judged, "index.html")
