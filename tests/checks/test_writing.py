"""What is read as prose: nothing is passed over that a schema calls prose."""

from __future__ import annotations

import json

import pytest

from bayleaf.checks.prose.writing import _NO_TEXTS, _TEXTS
from bayleaf.records import KINDS
from tests.checks.small import SCHEMAS


def names_below(kind: str) -> set[str]:
    """The names of all fields of a schema that stand below a field which the reader of prose passes over."""
    common = json.loads((SCHEMAS / "common.schema.json").read_text())["$defs"]
    own = json.loads((SCHEMAS / f"{kind}.schema.json").read_text())
    found: set[str] = set()

    def walk(node: object, below: bool, seen: tuple) -> None:
        if isinstance(node, list):
            for inner in node:
                walk(inner, below, seen)
        if not isinstance(node, dict):
            return
        ref = node.get("$ref", "")
        if ref and (ref, below) not in seen:
            name = ref.rsplit("/", 1)[-1]
            walk(common[name] if ref.startswith("common") else own["$defs"][name], below, (*seen, (ref, below)))
        for field, inner in node.get("properties", {}).items():
            found.update({field} if below else ())
            walk(inner, below or field in _NO_TEXTS, seen)
        for key in ("anyOf", "oneOf", "allOf", "additionalProperties", "items"):
            walk(node.get(key), below, seen)

    walk(own, False, ())
    return found


@pytest.mark.parametrize("kind", KINDS)
def test_no_prose_stands_below_the_fields_that_are_passed_over(kind):
    assert not _NO_TEXTS & _TEXTS
    below = names_below(kind)
    assert not below & _TEXTS


def test_the_walk_through_the_schemas_reaches_what_is_passed_over():
    assert {"source", "place", "practice", "reading", "instrument"} <= names_below("procedures")
