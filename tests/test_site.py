"""The built site as text: links land, markup is sound, what contributors write stays text, edits lead to data."""

import json
import re
import shutil
from html import unescape
from pathlib import Path
from posixpath import dirname, join, normpath
from urllib.parse import unquote, urlsplit

import html5lib
import pytest

from benchsheaf.site import edition, judgement

LINK = re.compile(r'\b(?:href|src)="([^"]*)"')
ANCHOR = re.compile(r'\sid="([^"]+)"')


def pages(site: Path) -> dict[str, str]:
    """Every page of the built site with its text."""
    return {
        path.relative_to(site).as_posix(): path.read_text(encoding="utf-8") for path in sorted(site.rglob("*.html"))
    }


def test_every_link_leads_somewhere(built_site: Path) -> None:
    """Every link and source of every page is a file of the site, and every fragment a place on its page."""
    texts = pages(built_site)
    lost = []
    for address, text in texts.items():
        for link in map(unescape, LINK.findall(text)):
            parts = urlsplit(link)
            if parts.scheme in ("https", "data"):
                continue
            there = normpath(join(dirname(address), unquote(parts.path))) if parts.path else address
            places = ANCHOR.findall(texts[there]) if parts.fragment and there in texts else [unquote(parts.fragment)]
            if not (built_site / there).exists() or unquote(parts.fragment) not in places:
                lost.append((address, link))
    assert lost == []


def test_the_only_foreign_address_is_the_forge(built_site: Path) -> None:
    """No page names an address elsewhere but the forge in which the data is edited."""
    foreign = {
        urlsplit(link).netloc for text in pages(built_site).values() for link in LINK.findall(text) if "//" in link
    }
    assert foreign == {"forge.example"}


def test_ids_are_single(built_site: Path) -> None:
    """No page gives one id to two things."""
    for address, text in pages(built_site).items():
        ids = ANCHOR.findall(text)
        assert sorted(set(ids)) == sorted(ids), address


def test_pages_are_sound_markup(built_site: Path) -> None:
    """A strict parser finds no error in what we write; the theme's own frame is left out."""
    for address, text in pages(built_site).items():
        body = text[text.index("<article") : text.index("</article>") + len("</article>")]
        parser = html5lib.HTMLParser(strict=False)
        parser.parseFragment(body)
        assert parser.errors == [], (address, parser.errors[:3])


def test_edit_opens_the_data(built_site: Path, repository: Path) -> None:
    """Every sheet links to the data file behind it, below the forge's address."""
    found = 0
    for address, text in pages(built_site).items():
        for link in re.findall(r'href="https://forge\.example/benchsheaf/edit/main/([^"]+)"', text):
            assert (repository / link).is_file(), (address, link)
            found += 1
    assert found >= 9


def test_the_data_is_there_for_programs(built_site: Path, repository: Path) -> None:
    """The index names every data file, and each is there."""
    index = json.loads((built_site / "data" / "index.json").read_text(encoding="utf-8"))
    assert index["format_version"] == 1
    named = [each["data"] for each in index["machines"] + index["parts"]]
    machines = repository / "machines"
    described = [*machines.glob("_parts/*/*.yml"), *(each for each in machines.iterdir() if each.name[0] != "_")]
    assert len(named) == len(described) >= 11
    assert all((built_site / address).is_file() for address in named)


def test_without_rungs_no_word_of_an_outfit_is_lost(repository: Path, tmp_path: Path) -> None:
    """The sheet about the way up is only wanted then; what outfits say stands on the power sheet, links still land."""
    copy = tmp_path / "machines"
    shutil.copytree(repository / "machines", copy)
    outfits = copy / "ostervane-bureau-8" / "outfits.yml"
    kept = [line for line in outfits.read_text(encoding="utf-8").splitlines() if not line.startswith("    before:")]
    outfits.write_text("\n".join(kept) + "\n", encoding="utf-8")
    judged = judgement(copy)
    assert not judged.mistakes
    made = edition(judged)
    texts = {page.address: unescape(re.sub(r"<[^>]+>", "", made.html(page))) for page in made.pages}
    folder = "machines/ostervane-bureau-8"
    assert f"{folder}/ladder.html" not in texts
    assert "is not described yet" in texts[f"{folder}/first-power.html"]
    for words in ("the lid on and the case closed", "PW1-8 and PW1-5", "A rasp once a turn", "One step sound at start"):
        assert words in texts[f"{folder}/power.html"]
    assert list(made.astray()) == []


PAYLOADS = (
    "<script>alert(1)</script>",
    '"><img src=x onerror=alert(1)>',
    "{{ 7 * 7 }}",
    "{% include 'x' %}",
    "[link](javascript:alert(1))",
    "</svg></a><b>",
    "' onmouseover='x",
    "../../etc",
    "&lt;b&gt; &amp;",
)


@pytest.mark.parametrize("payload", PAYLOADS)
def test_text_stays_text(payload: str, repository: Path, tmp_path: Path) -> None:
    """What a contributor writes into names and sentences is shown as text and becomes nothing else."""
    shutil.copytree(repository / "machines", tmp_path / "machines")
    quoted = json.dumps(payload)
    marks = {
        "machines/ostervane-bureau-8/identity.yml": ("name: Ostervane Bureau-8", f"name: {quoted}"),
        "machines/ostervane-bureau-8/boards.yml": ("name: Main board", f"name: {quoted}"),
        "machines/_parts/supplies/sp-96.yml": ("name: Mains fuse", f"name: {quoted}"),
        "machines/_parts/drives/ov-hd14.yml": ("name: OV-HD14", f"name: {quoted}"),
    }
    for file, (find, put) in marks.items():
        path = tmp_path / file
        text = path.read_text(encoding="utf-8")
        assert find in text
        path.write_text(text.replace(find, put, 1), encoding="utf-8")
    judged = judgement(tmp_path / "machines")
    assert judged.mistakes == ()
    whole = edition(judged)
    seen = 0
    for page in whole.pages:
        written = whole.html(page) + page.column()
        tree = html5lib.parseFragment(written, namespaceHTMLElements=False)
        for element in tree.iter():
            assert element.tag not in ("script", "img", "iframe", "object", "embed", "form")
            assert not any(str(name).startswith("on") for name in element.attrib)
            assert not str(element.attrib.get("href", "")).startswith("javascript:")
        seen += payload in "".join(tree.itertext())
    assert seen >= 10
    assert list(whole.astray()) == []
