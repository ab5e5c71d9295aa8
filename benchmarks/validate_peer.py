"""Every description of a folder read by PyYAML's loader in C and measured by Cerberus under the plain schemas."""

import json
import sys
from pathlib import Path
from typing import Any

import yaml
from cerberus import Validator

GUESSED = {"on": True, "off": False, "yes": True, "no": False}
"""What the loader makes of some keys."""


def as_loaded(pairs: list[tuple[str, Any]]) -> dict[Any, Any]:
    """A mapping of the schemas under the keys that the loader will give."""
    return {GUESSED.get(key, key): value for key, value in pairs}


if __name__ == "__main__":
    root = Path(sys.argv[1])
    plain = json.loads(Path(sys.argv[2]).read_text("utf-8"), object_pairs_hook=as_loaded)
    validators: dict[str, Any] = {}
    documents: dict[Path, tuple[str, dict[str, Any]]] = {}
    for path in sorted(root.rglob("*.yml")):
        place = path.relative_to(root).parts
        if place[0] == "_parts":
            kind, thing = plain["folders"][place[1]], path
        elif place[0] == "_shared":
            kind, thing = path.stem, path
        else:
            kind, thing = ("machine", root / place[0]) if len(place) == 2 else ("repair", path)
        _, document = documents.setdefault(thing, (kind, {}))
        document.update(yaml.load(path.read_bytes(), Loader=yaml.CSafeLoader))
    for kind, document in documents.values():
        if kind not in validators:
            validators[kind] = Validator(plain["kinds"][kind])
        if not validators[kind].validate(document, normalize=False):
            sys.exit(f"{kind}: {validators[kind].errors}")
