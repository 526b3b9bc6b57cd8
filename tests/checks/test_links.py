"""The table of links covers every field of the schemas that holds an id, and finds ids in text."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from bayleaf.checks.facts.link_table import LINKS
from bayleaf.checks.facts.links import ids_of, links_of
from bayleaf.checks.facts.rings import rings
from bayleaf.checks.prose.writing import prose_of
from bayleaf.records import KINDS, VOCABULARY_KINDS, Record, book_from_data, load
from tests.checks.small import SCHEMAS

ROOT = Path(__file__).resolve().parents[2]
# Ids that lead nowhere: the names of stages, and the key under which an entry is written.
NO_LINKS = {"faults": {"stages.@", "stages.*.like", "differs.*.@", "differs.*.*.like"}}


def id_fields(kind: str) -> set[str]:
    """Every field path of a schema that refers to the definition `id` or `ids`, written as the table writes it."""
    common = json.loads((SCHEMAS / "common.schema.json").read_text())["$defs"]
    own = json.loads((SCHEMAS / f"{kind}.schema.json").read_text())
    top = {"$ref": own["additionalProperties"]["$ref"]} if kind in VOCABULARY_KINDS else own
    found: set[str] = set()

    def walk(node: dict, path: str, seen: tuple) -> None:
        ref = node.get("$ref", "")
        name = ref.rsplit("/", 1)[-1]
        if name in ("id", "ids", "ids_or_none"):
            found.add(path + ("" if name == "id" else ".*"))
            return
        if ref and ref not in seen:
            walk(common[name] if ref.startswith("common") else own["$defs"][name], path, (*seen, ref))
        for key in ("anyOf", "oneOf", "allOf"):
            for inner in node.get(key, []):
                walk(inner, path, seen)
        for field, inner in node.get("properties", {}).items():
            walk(inner, f"{path}.{field}" if path else field, seen)
        if "propertyNames" in node:
            walk(node["propertyNames"], f"{path}.@", seen)
        if isinstance(node.get("additionalProperties"), dict):
            walk(node["additionalProperties"], f"{path}.*" if path else "*", seen)
        if isinstance(node.get("items"), dict):
            walk(node["items"], f"{path}.*", seen)

    walk(top, "", ())
    return found


@pytest.mark.parametrize("kind", KINDS)
def test_every_field_that_holds_an_id_is_in_the_table(kind):
    table = {"replaced_by"}
    for row in LINKS.get(kind, {}):
        table |= {f"{row}.source", f"{row}.calculator"} if row.rsplit(".", 1)[-1] == "basis" else {row}
    assert id_fields(kind) - NO_LINKS.get(kind, set()) == table


def test_ids_are_found_in_fields_names_and_text():
    book = book_from_data(
        {
            "faults": {
                "f": {
                    "part": "filter",
                    "summary": "See [[one]] and [[two|that]].",
                    "stages": {"a": {"r1": "low"}, "b": {"like": "a", "r2": ["low", "high"]}},
                    "felt_as": "none",
                    "mended_by": ["p", {"words": "By hand."}],
                    "proved_by": {"none": "No way."},
                }
            }
        }
    )
    links = links_of(book.get("f"))
    assert {(link.id, link.key, link.prose) for link in links} == {
        ("filter", False, False),
        ("r1", True, False),
        ("r2", True, False),
        ("p", False, False),
        ("one", False, True),
        ("two", False, True),
    }


@pytest.mark.parametrize("kind", KINDS)
def test_the_ids_without_their_places_are_those_with_their_places(kind):
    for record in load(ROOT).of(kind).values():
        prose = prose_of(record)
        with_places = sorted((link.kinds, link.id) for link in links_of(record, prose))
        assert with_places == sorted(
            (leaf.kinds, id) for leaf, ids in ids_of(record, "\n".join(text for _path, text in prose)) for id in ids
        )


def test_a_ring_is_found_once():
    assert list(rings({"a": ["b"], "b": ["c"], "c": ["a"], "d": ["a", "d"]})) == [["a", "b", "c"], ["d"]]
    assert list(rings({"a": ["b", "c"], "b": ["c"], "c": []})) == []


def test_a_long_chain_needs_no_recursion():
    assert list(rings({str(n): [str(n + 1)] for n in range(50_000)})) == []


def test_a_record_without_text_has_no_links():
    assert (
        links_of(
            Record("terms", "t", {"title": "T", "means": "x"}, book_from_data({"terms": {"t": {}}}).get("t").source)
        )
        == []
    )
