"""Records mirror the schemas: what differs is told as the very line that mends it."""

import shutil
from pathlib import Path
from typing import Any

import pytest

from benchsheaf.fields import KINDS, built_in_schemas, read_schemas
from benchsheaf.model.building import mirror_gaps
from benchsheaf.model.collection import RECORDS
from expected import written


@pytest.mark.parametrize("kind", KINDS)
def test_a_record_mirrors_its_schema(kind: str) -> None:
    """Every field of every kind, down to the last item of a list, has its place in a record, and no record has more."""
    assert mirror_gaps(RECORDS[kind], built_in_schemas().kinds[kind]) == []


def test_every_kind_of_description_has_a_record() -> None:
    """A kind without a record would be read and never reach a page."""
    assert set(RECORDS) == set(KINDS) == set(built_in_schemas().kinds)


@pytest.mark.parametrize("case", written("cases/model/mirror.yml"), ids=lambda case: case["why"])
def test_a_change_of_a_schema_is_told_as_the_line_to_write(
    repository: Path, tmp_path: Path, case: dict[str, Any]
) -> None:
    """Whoever adds, takes out or changes a field reads in the test what to write in the record."""
    folder = tmp_path / "schemas"
    shutil.copytree(repository / "schemas", folder)
    file = folder / "_supply.yml"
    text = file.read_text(encoding="utf-8")
    assert case["before"] in text
    file.write_text(text.replace(case["before"], case["after"], 1), encoding="utf-8")
    assert mirror_gaps(RECORDS["supply"], read_schemas(folder).kinds["supply"]) == case["told"]
