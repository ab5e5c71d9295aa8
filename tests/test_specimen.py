"""A description made from the schemas' own examples conforms, builds, computes and appears on a page."""

import json
import re
from collections.abc import Iterator
from html import unescape
from pathlib import Path
from typing import Any

import pytest

from benchsheaf.fields import Field, built_in_schemas, specimen_slug, specimens
from benchsheaf.links.mentions import MENTION
from benchsheaf.site import Edition, edition, judgement
from benchsheaf.wording import as_text
from golden import specimen_folder

ANY_FIGURE = ".{1,40}"
"""In the place of what stands in double brackets a figure is printed."""


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A folder of descriptions that holds the specimen of every kind."""
    return specimen_folder(tmp_path_factory.mktemp("specimen") / "machines")


@pytest.fixture(scope="module")
def whole(folder: Path) -> Edition:
    """The edition made from the specimens."""
    judged = judgement(folder)
    assert judged.mistakes == (), as_text(list(judged.mistakes))
    return edition(judged)


def test_the_specimen_conforms(folder: Path) -> None:
    """Every example fits its own field, and the examples together make a machine without a mistake."""
    mistakes = judgement(folder).mistakes
    assert mistakes == (), as_text(list(mistakes))


def leaves(described: Field, values: Any, path: str) -> Iterator[tuple[str, Field, str]]:
    """Every scalar of a specimen with its field."""
    if isinstance(values, dict):
        for name, inner in values.items():
            yield from leaves(described.fields[name], inner, f"{path}.{name}")
    elif isinstance(values, list) and described.item:
        for inner in values:
            yield from leaves(described.item, inner, f"{path}[]")
    else:
        yield path, described, str(values)


def test_every_text_is_on_a_page(whole: Edition) -> None:
    """What a contributor writes in words stands on some page beside the manual, word for word."""
    told = " ".join(
        re.sub(r"\s+", " ", unescape(re.sub(r"<[^>]+>", " ", whole.html(page))))
        for page in whole.pages
        if not page.address.startswith("manual/")
    )
    lost = [
        path
        for kind, values in specimens(built_in_schemas()).items()
        for path, field, text in leaves(built_in_schemas().kinds[kind], values, kind)
        if field.shape == "text" and not field.allowed and not field.names_item and not field.points_at
        if field.form is None and not re.search(ANY_FIGURE.join(map(re.escape, MENTION.split(text)[::2])), told)
    ]
    assert sorted(set(lost)) == []


def test_every_figure_is_in_the_data(whole: Edition) -> None:
    """Every fact of the specimen stands in the exported data under its own name with its unit."""
    for kind, values in specimens(built_in_schemas()).items():
        if kind in ("cautions", "terms", "practice", "repair"):
            continue
        address = f"data/{'machines' if kind == 'machine' else f'parts/{kind}'}/{specimen_slug(kind)}.json"
        facts = json.loads(whole.files[address])["facts"]
        described = built_in_schemas().kinds[kind]
        assert {inner.key for name, inner in described.fields.items() if name in values} <= set(facts)


def test_every_example_is_given() -> None:
    """Every field that holds a value has a label, a sentence and an example."""
    for kind, values in specimens(built_in_schemas()).items():
        for path, field, _ in leaves(built_in_schemas().kinds[kind], values, kind):
            if not path.endswith("[]"):
                assert field.label, path
                assert field.help.endswith((".", "…", '."')) or field.help[-1] in "?:", (path, field.help)
                assert field.example is not None, path
