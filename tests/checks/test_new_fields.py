"""A field that only a schema knows is checked like any other: what it names, what it measures, what it says."""

from __future__ import annotations

import json
import shutil
from pathlib import Path

import pytest

from bayleaf.checks import check
from bayleaf.pages.building.uses import Uses
from bayleaf.records import Book, load
from tests.checks.small import SCHEMAS, SMALL

COMMON = "common.schema.json#/$defs/"
ID = {"$ref": f"{COMMON}id"}
AMOUNT = {"$ref": f"{COMMON}value_with_basis"}
LINES = "{value: 8, unit: %s, basis: {practice: true}}"


def book_with(root: Path, schema: dict, value: str) -> Book:
    """The small book under schemas in which a component may have a field `added`; the fuel filter has it."""
    shutil.copytree(SMALL, root / "kb")
    shutil.copytree(SCHEMAS, root / "schemas")
    path = root / "schemas" / "components.schema.json"
    whole = json.loads(path.read_text(encoding="utf-8"))
    whole["properties"]["added"] = schema
    path.write_text(json.dumps(whole), encoding="utf-8")
    record = root / "kb" / "components" / "fuel-filter.yaml"
    record.write_text(record.read_text(encoding="utf-8") + f"added: {value}\n", encoding="utf-8")
    return load(root)


def said(book: Book) -> set[str]:
    """The codes of what is found in the new field."""
    return {f.code for f in check(book) if f.file.endswith("fuel-filter.yaml") and f.path[:1] == ("added",)}


@pytest.mark.parametrize(
    ("schema", "good", "bad", "code"),
    [
        ({**ID, "x-kinds": ["components"]}, "fuel-rail", "fuel-rial", "LINK-1"),
        ({**ID, "x-kinds": ["components"]}, "fuel-rail", "vacuum-gauge", "LINK-2"),
        (ID, "vacuum-gauge", "vacuum-guage", "LINK-1"),
        ({"$ref": f"{COMMON}ids", "x-kinds": ["equipment"]}, "[multimeter]", "[multimeter, mulitmeter]", "LINK-1"),
        (
            {
                "type": "object",
                "propertyNames": {**ID, "x-kinds": ["readings"]},
                "additionalProperties": {"$ref": f"{COMMON}prose"},
            },
            "{rail-pressure-idle: It drops.}",
            "{rail-pressure-idel: It drops.}",
            "LINK-1",
        ),
        ({"$ref": f"{COMMON}prose"}, "See the [[fuel-rail]].", "See the [[fuel-rial]].", "LINK-1"),
        ({"$ref": f"{COMMON}texts"}, "[Turn it by hand.]", "[Turn it by by hand.]", "WORD-10"),
        ({**AMOUNT, "x-quantity": ["rail-pressure"]}, LINES % "psi", LINES % "psig", "UNIT-1"),
        (AMOUNT, LINES % "psi", LINES % "furlongs", "UNIT-1"),
        ({**AMOUNT, "x-quantity": ["rail-pressure"]}, LINES % "psi", LINES.replace("8", "8000") % "psi", "UNIT-2"),
        (
            {"$ref": f"{COMMON}basis"},
            "{source: unit-guide, place: table B.8}",
            "{source: unit-guidex, place: table B.8}",
            "LINK-1",
        ),
    ],
)
def test_a_new_field_is_checked(tmp_path, schema, good, bad, code):
    assert said(book_with(tmp_path / "good", schema, good)) == set()
    assert code in said(book_with(tmp_path / "bad", schema, bad))


def test_a_new_field_that_names_no_record_is_left_alone(tmp_path):
    assert said(book_with(tmp_path, {**ID, "x-kinds": []}, "first-stage")) == set()


def test_the_word_none_is_the_empty_list_in_a_new_field(tmp_path):
    book = book_with(tmp_path, {"$ref": f"{COMMON}ids_or_none", "x-kinds": ["equipment"]}, "none")
    assert book.get("fuel-filter").data["added"] == [] and said(book) == set()


def test_a_page_shows_who_names_its_record_in_a_new_field_and_not_who_has_a_word_like_its_id(tmp_path):
    book = book_with(tmp_path / "id", {**ID, "x-kinds": ["equipment"]}, "multimeter")
    assert "fuel-filter" in {record.id for record in Uses(book).referrers["multimeter"]}
    book = book_with(tmp_path / "word", {"type": "string"}, "multimeter")
    assert "fuel-filter" not in {record.id for record in Uses(book).referrers.get("multimeter", [])}
