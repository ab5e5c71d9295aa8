"""Every kind of page for whoever cannot see colours, uses no mouse, or has the page read aloud."""

import re
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Browser, Page

pytestmark = pytest.mark.browser

# What the theme brings with it and we cannot mend from outside: rule → why. Nothing is on this list today.
OF_THE_THEME: dict[str, str] = {}
WIDE = 1280, 900


def page_kinds(site: Path) -> list[str]:
    """One page of each kind: of a sheet, of a part of each sort, of a chapter of the manual, and each that is single.

    Of several the longest is taken, as it holds the most.
    """
    kinds: dict[str, Path] = {}
    for path in sorted(site.rglob("*.html")):
        address = path.relative_to(site).as_posix()
        kind = re.sub(r"^(machines)/[^/]+/(repairs/)?", r"\1/\2", address)
        kind = re.sub(r"^(parts/[^/]+|machines/repairs|manual/sections)/[^/]+$", r"\1", kind)
        if kind not in kinds or path.stat().st_size > kinds[kind].stat().st_size:
            kinds[kind] = path
    return [path.relative_to(site).as_posix() for path in kinds.values()]


@pytest.fixture(params=["light", "dark"])
def page(request: pytest.FixtureRequest, chromium: Browser) -> Iterator[Page]:
    """A wide window in one of the two schemes."""
    context = chromium.new_context(viewport={"width": WIDE[0], "height": WIDE[1]}, color_scheme=request.param)
    yield context.new_page()
    context.close()


def test_axe_finds_nothing_of_ours(page: Page, built_site: Path) -> None:
    """The rules of axe-core, which are those of WCAG 2 and common practice, are kept on a page of every kind."""
    found: list[str] = []
    kinds = page_kinds(built_site)
    assert len(kinds) > 15
    for address in kinds:
        page.goto(f"{built_site.as_uri()}/{address}")
        found += [f"{address}: {each}" for each in _violations(Axe().run(page).response)]
    assert found == []


def _violations(response: dict[str, Any]) -> Iterator[str]:
    for rule in response["violations"]:
        for node in rule["nodes"]:
            if rule["id"] not in OF_THE_THEME:
                yield f"{rule['id']}: {node['html'][:160]}"


REACHED = """() => {
  const all = [...document.querySelectorAll('a[href], button, input, select, summary, [tabindex="0"]')];
  const wanted = all.filter(each => each.type !== 'radio' || each.checked);
  return wanted.filter(each => each.checkVisibility({visibilityProperty: true}) && each.tabIndex >= 0 && !each.disabled)
    .length;
}"""
WHERE = """() => {
  const here = document.activeElement;
  window.met = window.met || new Set();
  const again = here === document.body || window.met.has(here);
  window.met.add(here);
  const ringed = each => each && getComputedStyle(each).outlineStyle !== 'none'
    && parseFloat(getComputedStyle(each).outlineWidth) >= 2;
  return {again, shown: ringed(here) || ringed(here.parentElement), html: here.outerHTML};
}"""


def test_all_is_reached_by_the_keyboard(page: Page, built_site: Path) -> None:
    """From the top of a page the tab key alone visits whatever can be pressed, and each is ringed while it is on."""
    for address in ("index.html", "machines/ostervane-bureau-8/index.html"):
        page.goto(f"{built_site.as_uri()}/{address}")
        count = page.evaluate(REACHED)
        visited = 0
        bare = []
        for _ in range(count + 5):
            page.keyboard.press("Tab")
            here = page.evaluate(WHERE)
            if here["again"]:
                break
            visited += 1
            if not here["shown"]:
                bare.append(here["html"][:120])
        assert bare == []
        assert visited >= count > 10
