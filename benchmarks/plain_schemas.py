"""Our schemas in the vocabulary that Cerberus has by itself, for documents whose values a YAML loader has guessed."""

import argparse
import json
from pathlib import Path
from typing import Any

import yaml

from benchsheaf.fields import FORMS, Field, built_in_schemas
from benchsheaf.links import FOLDERS

# A loader makes a number, a yes or a date of some texts, so a text may be any of them.
TEXT = ["string", "number", "boolean", "date"]
TYPES: dict[str, Any] = {"text": TEXT, "integer": "integer", "boolean": "boolean", "quantity": "string"}


def plain_rules(described: Field) -> dict[str, Any]:
    """One field. Left out, as there is no such rule: units and their bounds, `above`, `at_least`."""
    rules: dict[str, Any] = {"type": TYPES.get(described.shape, "list" if described.shape == "list" else "dict")}
    if described.required:
        rules["required"] = True
    if described.allowed:
        rules["allowed"] = [yaml.safe_load(word) for word in described.allowed]
    if described.shape == "integer":
        rules |= {"min": int(described.least)} if described.least is not None else {}
        rules |= {"max": int(described.most)} if described.most is not None else {}
    if described.form:
        rules["regex"] = f"^{FORMS[described.form][0].pattern}$"
    if described.shortest:
        rules["minlength"] = described.shortest
    if described.needs:
        rules["dependencies"] = list(described.needs)
    if described.shape == "record":
        rules["schema"] = {name: plain_rules(inner) for name, inner in described.fields.items()}
    if described.item:
        rules["schema"] = plain_rules(described.item)
    return rules


def write_plain_schemas(path: Path) -> None:
    """One file with the schema of every kind, and the kind of what lies in each folder of parts."""
    kinds = {
        kind: {name: plain_rules(inner) for name, inner in described.fields.items()}
        for kind, described in built_in_schemas().kinds.items()
    }
    path.write_text(
        json.dumps({"kinds": kinds, "folders": {folder: kind for kind, folder in FOLDERS.items()}}), "utf-8"
    )


if __name__ == "__main__":
    asked = argparse.ArgumentParser(description=__doc__)
    asked.add_argument("file", type=Path)
    write_plain_schemas(asked.parse_args().file)
