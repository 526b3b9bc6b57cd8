"""The schemas themselves: lawful, described to the last property, and closed against unknown fields.

Source of "lawful": the 2020-12 metaschema that the jsonschema library carries. That every property has a
description and examples is this project's own demand; the field reference of the site is made of them.
"""

from __future__ import annotations

import json
from collections.abc import Iterable, Iterator
from pathlib import Path

import jsonschema_rs
import pytest
import yaml
from jsonschema import Draft202012Validator, ValidationError
from referencing import Registry, Resource
from referencing.jsonschema import DRAFT202012

HERE = Path(__file__).parent
FOLDER = HERE.parents[1] / "schemas"
SCHEMAS = {path.name: json.loads(path.read_text(encoding="utf-8")) for path in sorted(FOLDER.glob("*.schema.json"))}
REGISTRY = Registry().with_resources(
    (name, Resource.from_contents(schema, default_specification=DRAFT202012)) for name, schema in SCHEMAS.items()
)
RECORDS = set(
    [
        "systems",
        "components",
        "equipment",
        "readings",
        "procedures",
        "faults",
        "symptoms",
        "codes",
        "calculators",
        "vehicles",
        "jobs",
    ]
)
VOCABULARY = set(
    [
        "quantities",
        "conditions",
        "variables",
        "effects",
        "histories",
        "states",
        "acts",
        "hazards",
        "cautions",
        "fuels",
        "sources",
        "terms",
        "tasks",
    ]
)
# Each keyword needs a complaint in plain words, so the set is kept small.
KEYWORDS = set(
    [
        "$schema",
        "$ref",
        "$defs",
        "title",
        "description",
        "examples",
        "type",
        "const",
        "enum",
        "required",
        "properties",
        "additionalProperties",
        "propertyNames",
        "patternProperties",
        "items",
        "minItems",
        "uniqueItems",
        "pattern",
        "minLength",
        "maxLength",
        "minimum",
        "maximum",
        "exclusiveMinimum",
        "anyOf",
        "oneOf",
        "minProperties",
    ]
)
ONE = ("additionalProperties", "propertyNames", "items")
SEVERAL = ("anyOf", "oneOf")
NAMED = ("properties", "patternProperties", "$defs")
GOOD = sorted((HERE / "good").glob("*.yaml"))
BAD = sorted((HERE / "bad").glob("*.yaml"))


def parts(schema: dict, pointer: str = "") -> Iterator[tuple[str, dict]]:
    """The schema and every schema inside it, each with its JSON pointer."""
    yield pointer, schema
    for word in ONE:
        if isinstance(schema.get(word), dict):
            yield from parts(schema[word], f"{pointer}/{word}")
    for word in SEVERAL:
        for number, inner in enumerate(schema.get(word, [])):
            yield from parts(inner, f"{pointer}/{word}/{number}")
    for word in NAMED:
        for name, inner in schema.get(word, {}).items():
            yield from parts(inner, f"{pointer}/{word}/{name}")


ALL = [(name, pointer, part) for name, schema in SCHEMAS.items() for pointer, part in parts(schema)]
PROPERTIES = [
    (name, f"{pointer}/properties/{key}", inner)
    for name, pointer, part in ALL
    for key, inner in part.get("properties", {}).items()
]


def validator(reference: str) -> Draft202012Validator:
    return Draft202012Validator({"$ref": reference}, registry=REGISTRY)


def kind_of(path: Path) -> str:
    return path.stem.split("-")[0]


def leaves(errors: Iterable[ValidationError]) -> Iterator[ValidationError]:
    """The errors, those of *a list or none* replaced by what is wrong with the list."""
    for error in errors:
        if error.validator == "anyOf" and {"$ref": "common.schema.json#/$defs/none"} in error.validator_value:
            yield from leaves(inner for inner in error.context if inner.schema_path[0] == 0)
        else:
            yield error


def slips(path: Path) -> list[str]:
    """What is wrong in a file, each as ``place: keyword``; the place is dotted, ``file`` for the whole."""
    data = yaml.safe_load(path.read_text(encoding="utf-8"))
    found = validator(f"{kind_of(path)}.schema.json").iter_errors(data)
    return [
        f"{'.'.join(str(key) for key in error.absolute_path) or 'file'}: {error.validator}" for error in leaves(found)
    ]


def test_there_is_one_schema_a_kind_and_one_for_what_they_share():
    assert {name.removesuffix(".schema.json") for name in SCHEMAS} == RECORDS | VOCABULARY | {"common"}


@pytest.mark.parametrize("name", SCHEMAS)
def test_a_schema_is_lawful(name):
    Draft202012Validator.check_schema(SCHEMAS[name])
    assert SCHEMAS[name]["$schema"] == "https://json-schema.org/draft/2020-12/schema"


def test_only_keywords_with_a_complaint_of_our_own_are_used():
    assert {word for _, _, part in ALL for word in part} <= KEYWORDS


def test_references_lead_to_shared_shapes_or_to_shapes_of_the_same_file_and_every_shape_is_used():
    shapes = {f"{name}#/$defs/{shape}" for name, schema in SCHEMAS.items() for shape in schema.get("$defs", {})}
    used = {
        part["$ref"] if not part["$ref"].startswith("#") else name + part["$ref"]
        for name, _, part in ALL
        if "$ref" in part
    }
    assert used == shapes
    local = {name for name, _, part in ALL if part.get("$ref", "").startswith("#")}
    assert "common.schema.json" not in local
    outward = {part["$ref"].split("#")[0] for _, _, part in ALL if not part.get("$ref", "#").startswith("#")}
    assert outward == {"common.schema.json"}


def test_every_property_has_a_description_and_examples():
    bare = [
        name + pointer for name, pointer, part in PROPERTIES if not (part.get("description") and part.get("examples"))
    ]
    assert bare == [] and len(PROPERTIES) > 300


def test_every_shared_shape_has_a_description():
    named = [(name + pointer, part) for name, pointer, part in ALL if pointer.count("/") == 2 and "/$defs/" in pointer]
    assert [where for where, part in named if not part.get("description")] == []


def test_every_example_is_valid_where_it_stands():
    wrong = [
        (name + pointer, example, [error.message for error in errors])
        for name, pointer, part in PROPERTIES
        for example in part["examples"]
        if (errors := list(validator(f"{name}#{pointer}").iter_errors(example)))
    ]
    assert wrong == []


def test_no_object_takes_a_field_that_the_schema_does_not_name():
    # A fault's stage is the one mapping with a fixed word (like) among free ones: its other keys have a shape of their own.
    open_ = [
        name + pointer
        for name, pointer, part in ALL
        if "properties" in part and part.get("additionalProperties") is not False
    ]
    assert open_ == ["faults.schema.json/$defs/stage"]
    assert SCHEMAS["faults.schema.json"]["$defs"]["stage"]["additionalProperties"]["$ref"].endswith("/answers")


def test_every_mapping_says_what_its_keys_and_values_are():
    loose = [
        name + pointer
        for name, pointer, part in ALL
        if part.get("type") == "object"
        and "properties" not in part
        and not (isinstance(part.get("additionalProperties"), dict) and "propertyNames" in part)
    ]
    assert loose == []


def test_every_required_field_can_be_given():
    # One that is required but no property would be refused as unknown.
    lost = [
        (name + pointer, field)
        for name, pointer, part in ALL
        if "properties" in part
        for field in part.get("required", [])
        if field not in part["properties"]
    ]
    assert lost == []


def test_no_kind_names_a_shape_as_the_shared_ones_are_named():
    # So that the shared shapes can be carried inside a kind's schema and it stands alone.
    shared = set(SCHEMAS["common.schema.json"]["$defs"])
    assert [
        name
        for name, schema in SCHEMAS.items()
        if name != "common.schema.json" and shared & set(schema.get("$defs", {}))
    ] == []


@pytest.mark.parametrize("kind", sorted(RECORDS))
def test_a_record_needs_title_summary_and_status(kind):
    assert {"title", "summary", "status"} <= set(SCHEMAS[f"{kind}.schema.json"]["required"])


@pytest.mark.parametrize("kind", sorted(VOCABULARY))
def test_a_list_of_the_vocabulary_is_a_mapping_of_entries_with_titles(kind):
    schema = SCHEMAS[f"{kind}.schema.json"]
    assert schema["additionalProperties"] == {"$ref": "#/$defs/entry"}
    assert schema["propertyNames"] == {"$ref": "common.schema.json#/$defs/id"}
    assert "title" in schema["$defs"]["entry"]["required"]


@pytest.mark.parametrize("character", list("<>&{}[]|\\`"))
def test_a_title_refuses_what_could_become_markup(character):
    title = validator("common.schema.json#/$defs/title")
    assert title.is_valid("Fuel filter") and not title.is_valid(f"Fuel {character} filter")


def test_every_kind_has_a_good_file_and_two_bad_ones():
    good, bad = [kind_of(path) for path in GOOD], [kind_of(path) for path in BAD]
    assert set(good) == RECORDS | VOCABULARY == set(bad)
    assert [kind for kind in sorted(set(bad)) if bad.count(kind) < 2] == []


@pytest.mark.parametrize("path", GOOD, ids=lambda path: path.stem)
def test_a_good_file_is_valid(path):
    assert slips(path) == []


@pytest.mark.parametrize("path", BAD, ids=lambda path: path.stem)
def test_a_bad_file_has_the_slip_that_its_first_line_names_and_no_other(path):
    first = path.read_text(encoding="utf-8").splitlines()[0]
    assert slips(path) == [first.removeprefix("# slip at ")]


@pytest.mark.parametrize("path", GOOD + BAD, ids=lambda path: f"{path.parent.name}-{path.stem}")
def test_the_fast_validator_agrees(path):
    # Two libraries written apart from each other read the same schema the same way.
    registry = jsonschema_rs.Registry([("common.schema.json", SCHEMAS["common.schema.json"])])
    fast = jsonschema_rs.Draft202012Validator(SCHEMAS[f"{kind_of(path)}.schema.json"], registry=registry)
    assert fast.is_valid(yaml.safe_load(path.read_text(encoding="utf-8"))) == (path.parent.name == "good")
