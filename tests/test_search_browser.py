"""The look-up as a visitor uses it: from a folder and from the web, by keyboard, with nothing asked for too early."""

import json
import shutil
import unicodedata
from collections.abc import Callable, Iterable, Iterator
from functools import partial
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path
from random import Random
from threading import Thread
from typing import Any

import pytest
import yaml
from playwright.sync_api import Browser, Dialog, Locator, Page, Request, expect

from benchsheaf.pages.finding import Entry, shard_files
from benchsheaf.pages.finding.spelling import UNITS, words

pytestmark = pytest.mark.browser

MACHINE = "machines/ostervane-bureau-8"
CASES = Path(__file__).parent / "cases" / "finding" / "words.yml"


class Visitor:
    """Somebody at a built site, with every request and every complaint of the browser."""

    def __init__(self, page: Page, root: str) -> None:
        self.page = page
        self.root = root
        self.asked: list[str] = []
        self.complaints: list[str] = []
        page.on("request", self._asked)
        page.on("pageerror", lambda error: self.complaints.append(str(error)))
        page.on("dialog", self._startled)

    def _startled(self, dialog: Dialog) -> None:
        self.complaints.append(dialog.message)
        dialog.dismiss()

    def _asked(self, request: Request) -> None:
        self.asked.append(request.url.removeprefix(self.root))

    def open(self, address: str = "index.html") -> "Visitor":
        """Go to a page of the site."""
        self.page.goto(self.root + address)
        return self

    @property
    def field(self) -> Locator:
        """The field in the bar."""
        return self.page.locator(".lookup-bar input")

    @property
    def told(self) -> Locator:
        """What the look-up says about its results."""
        return self.page.locator(".lookup-bar [role=status]")

    @property
    def options(self) -> Locator:
        """The results under the field in the bar."""
        return self.page.locator(".lookup-bar [role=option]")

    def look_up(self, text: str) -> list[str]:
        """Type a text; kind and title of each result, once they are there."""
        self.page.evaluate("document.querySelector('.lookup-bar [role=status]').textContent = ''")
        self.field.fill(text)
        expect(self.told).not_to_be_empty()
        return [
            f"{each.locator('.found-kind').inner_text()}: {each.locator('.found-title').inner_text()}"
            for each in self.options.all()
        ]

    def data_asked(self) -> list[str]:
        """What of the look-up was asked for, without the field's own script."""
        return [url for url in self.asked if url.startswith("search/") or url.endswith("finding.js")]


@pytest.fixture
def arrive(chromium: Browser) -> Iterator[Callable[..., Visitor]]:
    """Visitors with a window of some size, at a folder or an address."""
    contexts = []

    def visitor(root: Path | str, width: int = 1280, **more: Any) -> Visitor:
        context = chromium.new_context(viewport={"width": width, "height": 800}, **more)
        contexts.append(context)
        return Visitor(context.new_page(), f"{root.as_uri()}/" if isinstance(root, Path) else root)

    yield visitor
    for context in contexts:
        context.close()


@pytest.fixture
def visitor(arrive: Callable[..., Visitor], built_site: Path) -> Visitor:
    """A visitor on the first page of the site, opened as a file."""
    return arrive(built_site).open()


@pytest.fixture
def other_data(built_site: Path, tmp_path: Path) -> Callable[[Iterable[Entry]], Path]:
    """The built site with other things to find in it."""

    def site(entries: Iterable[Entry], names: dict[str, str] | None = None) -> Path:
        folder = tmp_path / "site"
        shutil.copytree(built_site, folder)
        shutil.rmtree(folder / "search")
        for address, content in shard_files(entries, names or {}).items():
            (folder / address).parent.mkdir(exist_ok=True)
            (folder / address).write_bytes(content)
        return folder

    return site


def in_script(visitor: Visitor, texts: list[str]) -> list[list[str]]:
    """The words of some texts, as the script that travels with the site makes them."""
    visitor.field.focus()
    visitor.page.wait_for_function("() => Boolean(window.benchsheafSearch)")
    found: list[list[str]] = visitor.page.evaluate("texts => texts.map(window.benchsheafSearch.words)", texts)
    return found


def test_script_and_build_agree_on_cases(visitor: Visitor) -> None:
    """The script makes the same words of every case, and of every unit."""
    cases = yaml.safe_load(CASES.read_text(encoding="utf-8"))
    assert in_script(visitor, [case["text"] for case in cases]) == [case["words"] for case in cases]
    spelled = [f"10 {unit} 10{unit} 10-{unit}" for unit in UNITS]
    assert in_script(visitor, spelled) == [list(words(text)) for text in spelled]


def test_script_and_build_agree_on_every_character(visitor: Visitor) -> None:
    """Every character of the basic plane, alone and between letters, comes out the same.

    Beyond that plane two editions of the standard may sort an old script's signs differently.
    """
    known = [chr(code) for code in range(0x10000) if unicodedata.category(chr(code)) not in ("Cn", "Co", "Cs")]
    assert len(known) > 50_000
    texts = [f"a{sign}1 {sign}" for sign in known]
    found = in_script(visitor, texts)
    differ = [(text, mine) for text, mine in zip(texts, found, strict=True) if mine != list(words(text))]
    assert differ == []


def test_script_and_build_agree_on_any_mixture(visitor: Visitor) -> None:
    """Signs that mean something to the look-up, thrown together, come out the same."""
    throw = Random(1985)
    pieces = [*"0159\n.,+-−–/%° \u00a0()'’_éİςK½", "C6", "kΩ", "µF", "V", "uF", "bit", "ab", "KiB", "12", "1,000"]
    texts = ["".join(throw.choices(pieces, k=throw.randint(1, 9))) for _ in range(20_000)]
    found = in_script(visitor, texts)
    differ = [(text, mine, words(text)) for text, mine in zip(texts, found, strict=True) if mine != list(words(text))]
    assert differ == []


# What is asked for, and a result that must be among the first three. The facts are from the notes of the demonstration.
ASKED = (
    ("C61", "Weak part: C61"),
    ("c61", "Weak part: C61"),
    ("C 61", "Weak part: C61"),
    ("C52", "Part: C52"),
    ("10 uF 16 V", "Weak part: C61"),
    ("10 µF 16 V", "Weak part: C61"),
    ("10uF 16V", "Weak part: C61"),
    ("0.22 µF", "Weak part: CX1"),
    ("-12 V", "Rail: −12\u00a0V"),
    ("−12 V", "Rail: −12\u00a0V"),
    ("12 V", "Rail: +12\u00a0V"),
    ("STORE E0", "Memory bank: Bank E0"),
    ("bank e0", "Memory bank: Bank E0"),
    ("SP-96", "Supply: SP-96"),
    ("sp96", "Supply: SP-96"),
    ("sp 96", "Supply: SP-96"),
    ("ov-hd", "Drive: OV-HD14"),
    ("bureau 8", "Machine: Ostervane Bureau-8"),
    ("040000", "Memory area: Store E0 and O0"),
    ("S1-3", "Switch: S1-3"),
    ("squeals when warm", "Weak part: CO1, CO2"),
    ("supply squealing", "Weak part: CO1, CO2"),
    ("resistance ground", "Section: Resistance to ground"),
    ("lithum cell", "Caution: Never charge a lithium primary cell"),
    ("weak parts", "Sheet: Boards and weak parts"),
    ("UNIT-01", "Mistake: UNIT-01"),
    ("add a machine", "Manual: Add a machine"),
    ("white wire", "Rail: +12\u00a0V"),
    ("1,5 kΩ", "Rail: −12\u00a0V"),
)


def test_what_is_asked_for_is_found(visitor: Visitor) -> None:
    """A name, a value, a sign, an address or a complaint brings its place under the first three."""
    missed = {asked: first for asked, wanted in ASKED if wanted not in (first := visitor.look_up(asked)[:3])}
    assert missed == {}
    assert visitor.complaints == []


def test_a_minus_is_never_a_not(visitor: Visitor) -> None:
    """The negative rail is not the positive one, and no word is taken away by a sign before it."""
    assert "Rail: +12\u00a0V" not in visitor.look_up("-12 V")
    assert "Rail: −12\u00a0V" not in visitor.look_up("+12 V")
    assert visitor.look_up("bead -tantalum") == visitor.look_up("bead tantalum")


def test_nothing_found_is_said(visitor: Visitor) -> None:
    """Where there is nothing, the field says so and what to try; where there is some, that it is not all."""
    assert visitor.look_up("xyzzy") == []
    expect(visitor.told).to_have_text(
        "Nothing found for “xyzzy”. Try fewer words, a name as it stands on the board (C61), a value with its unit "
        "(10 µF), or the badge."
    )
    assert visitor.field.get_attribute("aria-expanded") == "false"
    assert visitor.look_up("my grandmother says it squeals when warm")[0] == "Weak part: CO1, CO2"
    expect(visitor.told).to_contain_text("Nothing has all of these words")
    visitor.field.fill("")
    expect(visitor.page.locator(".lookup-bar .lookup-panel")).to_be_hidden()


def test_the_line_with_the_hit_is_shown(visitor: Visitor) -> None:
    """A result tells where it is, and the line of its text round the words that were asked for."""
    visitor.look_up("b18")
    only = visitor.options.first
    assert only.locator(".found-where").inner_text() == "Bus L-bus"
    assert only.locator(".found-line mark").all_inner_texts() == ["b18"]
    # Row b of the bus, contact 18, in the notes of the machine.
    assert "b18 RESET" in only.locator(".found-line").inner_text()
    visitor.look_up("10uf 16v")
    assert visitor.options.first.locator("mark").all_inner_texts()[:2] == ["10\u00a0µF", "16\u00a0V"]


def test_keyboard_alone(visitor: Visitor) -> None:
    """From a slash to the place without a hand on anything else, and out again."""
    page = visitor.page
    page.keyboard.press("/")
    expect(visitor.field).to_be_focused()
    page.keyboard.type("1/2 s")
    expect(visitor.field).to_have_value("1/2 s")
    page.keyboard.press("Control+A")
    page.keyboard.type("sp-96")
    expect(visitor.options.first).to_contain_text("SP-96")
    assert visitor.field.get_attribute("aria-expanded") == "true"
    page.keyboard.press("ArrowDown")
    page.keyboard.press("ArrowDown")
    second = visitor.options.nth(1)
    assert visitor.field.get_attribute("aria-activedescendant") == second.get_attribute("id")
    assert second.get_attribute("aria-selected") == "true"
    page.keyboard.press("ArrowUp")
    page.keyboard.press("ArrowUp")
    expect(visitor.options.last).to_have_attribute("aria-selected", "true")
    page.keyboard.press("Escape")
    expect(visitor.options.first).to_be_hidden()
    expect(visitor.field).to_have_value("sp-96")
    expect(visitor.field).to_be_focused()
    page.keyboard.press("ArrowDown")
    page.keyboard.press("Enter")
    page.wait_for_url("**/parts/supplies/sp-96.html")


def test_enter_takes_the_first(visitor: Visitor) -> None:
    """Who types and presses Enter at once comes to the first result, and the part is lit."""
    visitor.field.focus()
    visitor.page.keyboard.type("C61")
    visitor.page.keyboard.press("Enter")
    visitor.page.wait_for_url(f"**/{MACHINE}/boards.html#C61")
    expect(visitor.page.locator("li#C61")).to_have_class("chosen")


def test_home_looks_up_a_name(visitor: Visitor) -> None:
    """The row of names on home has a field and a button that does the same."""
    visitor.page.locator(".lookup-home input").fill("ov-hd14")
    expect(visitor.page.locator(".lookup-home [role=option]").first).to_contain_text("OV-HD14")
    visitor.page.get_by_role("button", name="Look up").click()
    visitor.page.wait_for_url("**/parts/drives/ov-hd14.html")


def test_nothing_is_asked_for_before_it_is_used(visitor: Visitor) -> None:
    """No byte of the data before the field has the focus, then the manifest, then only what a question needs."""
    visitor.page.wait_for_load_state("load")
    assert visitor.data_asked() == []
    visitor.field.focus()
    visitor.page.wait_for_function("window.benchsheafSearch && window.benchsheafSearch.prepared()")
    assert visitor.data_asked() == ["assets/benchsheaf/finding.js", "search/manifest.js"]
    visitor.look_up("C61")
    asked = visitor.data_asked()[2:]
    assert len(asked) == len(set(asked)) == 2
    assert sorted(url.partition("-")[0] for url in asked) == ["search/entries", "search/words"]
    visitor.look_up("C61")
    assert visitor.data_asked()[2:] == asked


def test_many_machines_cost_a_question_no_more(
    arrive: Callable[..., Visitor], other_data: Callable[..., Path], built_site: Path
) -> None:
    """With sixty machines a part's name still loads one piece of words and what it shows."""
    entries = [
        Entry(kind="Part", title=f"C{n}", where=f"Machine {m}", way=f"index.html#{m}", text=f"Bead of {n * m} µF")
        for m in range(60)
        for n in range(100)
    ]
    folder = other_data(entries)
    assert len(list((folder / "search").iterdir())) > 15
    visitor = arrive(folder).open()
    assert visitor.look_up("C61") == ["Part: C61"] * 12
    expect(visitor.told).to_have_text("The first 12 of 60: one more word makes them fewer.")
    assert len([url for url in visitor.data_asked() if "words" in url]) == 1
    assert len([url for url in visitor.data_asked() if "entries" in url]) <= 2


def test_from_the_web(arrive: Callable[..., Visitor], built_site: Path) -> None:
    """The same from a server, and nothing is asked of any other."""

    class Quiet(SimpleHTTPRequestHandler):
        def log_message(self, *words: object) -> None:
            """Say nothing."""

    server = ThreadingHTTPServer(("127.0.0.1", 0), partial(Quiet, directory=str(built_site)))
    Thread(target=server.serve_forever, daemon=True).start()
    try:
        visitor = arrive(f"http://127.0.0.1:{server.server_port}/").open(f"{MACHINE}/power.html")
        assert visitor.data_asked() == []
        assert "Rail: −12\u00a0V" in visitor.look_up("-12 V")
        assert [url for url in visitor.asked if url.startswith("http")] == []
        visitor.page.keyboard.press("Enter")
        visitor.page.wait_for_url("**/power.html#rail-minus-12")
        assert visitor.complaints == []
    finally:
        server.shutdown()
        server.server_close()


PAYLOADS = (
    "<script>alert(1)</script>",
    '"><img src=x onerror=alert(1)>',
    "</script><svg onload=alert(1)>",
    "javascript:alert(1)",
    "${alert(1)} {{ 7 * 7 }} &lt;b&gt;",
    "\u2028alert(1)",
)


def test_what_contributors_write_stays_text(arrive: Callable[..., Visitor], other_data: Callable[..., Path]) -> None:
    """Markup in a title, a text or a place is shown as it was written and becomes nothing else."""
    entries = [
        Entry(kind=f"<i>{k}", title=f"findme {payload}", where=payload, way="index.html", text=f"findme {payload} end")
        for k, payload in enumerate(PAYLOADS)
    ]
    visitor = arrive(other_data(entries)).open()
    visitor.look_up("findme")
    assert visitor.options.count() == len(PAYLOADS)
    shown = {each.locator(".found-title").text_content() for each in visitor.options.all()}
    assert shown == {f"findme {payload}" for payload in PAYLOADS}
    tags = visitor.page.evaluate(
        "() => [...new Set([...document.querySelectorAll('.lookup-bar .lookup-panel *')].map((each) => each.tagName))]"
    )
    assert sorted(tags) == ["A", "DIV", "MARK", "P", "SPAN"]
    ways = [each.get_attribute("href") or "" for each in visitor.options.all()]
    assert all(way.startswith(visitor.root) for way in ways)
    assert visitor.look_up("<img src=x onerror=alert(1)>")
    assert visitor.look_up("<img onerror=xyzzy>") != []
    assert visitor.look_up("<xyzzy>") == []
    expect(visitor.told).to_contain_text("Nothing found for “<xyzzy>”.")
    assert visitor.page.locator(".lookup-bar .lookup-panel :is(script, img, svg)").count() == 0
    assert visitor.complaints == []


def test_order_of_words_is_rank_and_no_filter(arrive: Callable[..., Visitor], other_data: Callable[..., Path]) -> None:
    """What is called so in this order comes first, the whole name before a longer one; another order is still found."""
    sounds = ["long long short", "long short", "short long", "short long short", "short short long", "short"]
    entries = [Entry(kind="Beep", title=each, where="Somewhere", way="index.html") for each in sounds]
    visitor = arrive(other_data(entries)).open()
    found = visitor.look_up("long short")
    assert found[0] == "Beep: long short"
    assert set(found[1:3]) == {"Beep: long long short", "Beep: short long short"}
    assert set(found) == {f"Beep: {each}" for each in sounds[:-1]}
    assert visitor.look_up("short short long")[0] == "Beep: short short long"


def test_a_machine_finds_its_own_first(arrive: Callable[..., Visitor], other_data: Callable[..., Path]) -> None:
    """On a machine's page its own part comes before the same part of others."""
    entries = [
        Entry(kind="Part", title="C61", where=slug, way=f"index.html#{slug}", machines=(slug,))
        for slug in ("another", "ostervane-bureau-8")
    ]
    names = {"another": "Another", "ostervane-bureau-8": "Ostervane Bureau-8"}
    folder = other_data(entries, names)
    visitor = arrive(folder).open(f"{MACHINE}/power.html")
    visitor.look_up("C61")
    assert visitor.options.first.locator(".found-where").inner_text() == "ostervane-bureau-8"
    visitor.open("index.html").look_up("C61")
    assert visitor.options.first.locator(".found-where").inner_text() == "another"
    visitor.look_up("C61 bureau")
    assert visitor.options.count() == 1


def test_slips_are_forgiven_at_last(arrive: Callable[..., Visitor], other_data: Callable[..., Path]) -> None:
    """One slip in a word is forgiven where nothing has the word itself; a number is never another one."""
    entries = [Entry(kind="Part", title=each, where="Here", way="index.html") for each in ("capacitor", "C61", "C62")]
    visitor = arrive(other_data(entries)).open()
    for slip in ("capacitro", "capaciter", "capacito", "capaccitor", "cpacitor"):
        assert visitor.look_up(slip) == ["Part: capacitor"], slip
    assert visitor.look_up("C63") == []
    assert visitor.look_up("C6") == ["Part: C61", "Part: C62"]


def test_a_torn_folder_is_told(arrive: Callable[..., Visitor], other_data: Callable[..., Path]) -> None:
    """A piece that is missing, or of another build, is said in words and never mixed in."""
    folder = other_data([Entry(kind="Part", title="C61", where="Here", way="index.html")])
    piece = folder / "search" / "words-0.js"
    whole = piece.read_text(encoding="utf-8")
    stamp = whole.split('"')[1]
    piece.write_text(whole.replace(stamp, "00000000"), encoding="utf-8")
    visitor = arrive(folder).open()
    assert visitor.look_up("C61") == []
    expect(visitor.told).to_have_text("The site has been published anew. Load this page again.")
    piece.unlink()
    visitor.open()
    assert visitor.look_up("C61") == []
    expect(visitor.told).to_have_text("search/words-0.js cannot be opened. Is the whole folder here?")
    piece.write_text(whole, encoding="utf-8")
    assert visitor.look_up("c61") == ["Part: C61"]


def test_without_scripts_there_is_no_field(arrive: Callable[..., Visitor], built_site: Path) -> None:
    """A field that could find nothing is not shown, neither in the bar nor on home, nor on paper."""
    visitor = arrive(built_site, java_script_enabled=False).open()
    assert visitor.page.locator(".lookup").count() == 2
    for each in visitor.page.locator(".lookup").all():
        expect(each).to_be_hidden()
    visitor = arrive(built_site).open()
    visitor.page.emulate_media(media="print")
    for each in visitor.page.locator(".lookup").all():
        expect(each).to_be_hidden()


@pytest.mark.parametrize("width", [360, 320])
def test_on_a_phone_the_field_opens_over_the_bar(arrive: Callable[..., Visitor], built_site: Path, width: int) -> None:
    """The glass opens the field over the whole width; results fit the screen; Escape closes both."""
    visitor = arrive(built_site, width).open(f"{MACHINE}/boards.html")
    expect(visitor.field).to_be_hidden()
    glass = visitor.page.get_by_role("button", name="Search")
    box = glass.bounding_box()
    assert box is not None
    assert min(box["width"], box["height"]) >= 44
    glass.click()
    expect(visitor.field).to_be_focused()
    assert glass.get_attribute("aria-expanded") == "true"
    visitor.look_up("-12 V")
    assert visitor.page.evaluate("document.documentElement.scrollWidth") == width
    row = visitor.options.first.bounding_box()
    assert row is not None
    assert (row["x"], row["width"]) == (0, width)
    assert row["height"] >= 44
    visitor.page.keyboard.press("Escape")
    visitor.page.keyboard.press("Escape")
    expect(visitor.field).to_be_hidden()
    expect(glass).to_be_focused()


def test_the_list_is_told_to_those_who_do_not_see_it(visitor: Visitor) -> None:
    """Field, list and rows have the roles and names that a screen reader needs, and the state that goes with them."""
    field = visitor.page.get_by_role("combobox", name="Search", exact=True)
    assert field.get_attribute("aria-expanded") == "false"
    visitor.look_up("C61")
    listed = visitor.page.get_by_role("listbox", name="What was found")
    expect(listed).to_be_visible()
    assert field.get_attribute("aria-controls") == listed.get_attribute("id")
    assert listed.locator("> *").count() == listed.get_by_role("option").count() == 1
    assert listed.get_by_role("option").get_attribute("tabindex") == "-1"
    expect(visitor.page.get_by_role("status").first).to_have_text("1 found.")
    visitor.page.keyboard.press("Tab")
    expect(listed).to_be_hidden()
    assert json.loads(field.get_attribute("aria-expanded") or "null") is False
