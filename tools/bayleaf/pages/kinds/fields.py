"""The field reference: every kind of record, field by field, from its schema."""

from __future__ import annotations

import json
from collections.abc import Iterator, Mapping
from typing import Any

from bayleaf.pages.building.blocks import heading, para, table
from bayleaf.pages.building.frame import crumbs
from bayleaf.pages.building.index import index_page
from bayleaf.pages.building.inline import EMPTY, inline, lines, link, small, strong
from bayleaf.pages.building.page import page
from bayleaf.pages.building.text import Markup, text
from bayleaf.pages.building.view import KIND_TITLES

Schema = Mapping[str, Any]  # JSON, as JSON Schema 2020-12 lays it out
TYPES = {
    "object": "a map",
    "array": "a list",
    "string": "text",
    "number": "a number",
    "integer": "a whole number",
    "boolean": "true or false",
}


def field_pages(schemas: Mapping[str, Schema]) -> dict[str, str]:
    """Path to text of the page of each kind and of their index; `schemas` is kind to schema, `common` among them."""
    kinds = [kind for kind in KIND_TITLES if kind in schemas]
    rows = [(link(f"fields/{kind}.md", KIND_TITLES[kind]), str(schemas[kind].get("description", ""))) for kind in kinds]
    about = "Every kind of record and every field it may have, from the schemas."
    files = {f"fields/{kind}.md": _kind_page(kind, schemas) for kind in kinds}
    return files | {"fields/index.md": index_page("fields", about, table(("Kind", "What it is"), rows))}


def _kind_page(kind: str, schemas: Mapping[str, Schema]) -> str:
    rows = [
        (_name(path, needed), _type(schema, schemas[kind], schemas), _about(schema, schemas[kind], schemas))
        for path, schema, needed in _fields(schemas[kind], schemas[kind], schemas, ())
    ]
    title = f"Fields of {KIND_TITLES[kind].lower()}"
    return page(
        f"fields/{kind}.md",
        title,
        crumbs("fields"),
        heading(1, "top", title),
        para(str(schemas[kind].get("description", "")), css="bl-lead"),
        table(("Field", "Takes", "Meaning"), rows, css="bl-fields"),
        para(small("Bold fields are required.")),
    )


def _name(path: tuple[str, ...], needed: bool) -> Markup:
    shown = text(" / ".join(path))
    return strong(shown) if needed else shown


def _fields(
    schema: Schema, whole: Schema, schemas: Mapping[str, Schema], above: tuple[str, ...]
) -> Iterator[tuple[tuple, Schema, bool]]:
    """(path, schema of the field, required) of every field, those inside lists and maps too; shared shapes once a field."""
    schema = _resolved(schema, whole, schemas)
    if len(above) > 6:
        return
    for name, inner in dict(schema.get("properties", {})).items():
        yield (*above, name), inner, name in schema.get("required", [])
        if name != "basis" and name != "exceptions":
            yield from _fields(inner, whole, schemas, (*above, name))
    for shape in [*schema.get("anyOf", []), *schema.get("oneOf", [])]:
        if "required" not in shape or "properties" in shape:
            yield from _fields(shape, whole, schemas, above)
    for name, label in (("items", "each"), ("additionalProperties", "by name")):
        if isinstance(schema.get(name), dict):
            yield from _fields(schema[name], whole, schemas, (*above, label))


def _resolved(schema: Schema, whole: Schema, schemas: Mapping[str, Schema]) -> Schema:
    """The schema that a `$ref` leads to, with the words of the place that refers."""
    seen = 0
    while "$ref" in schema and seen < 8:
        file, _, name = str(schema["$ref"]).partition("#/$defs/")
        home = schemas.get(file.removesuffix(".schema.json"), {}) if file else whole
        schema = {**dict(home.get("$defs", {})).get(name, {}), **{k: v for k, v in schema.items() if k != "$ref"}}
        seen += 1
    return schema


def _type(schema: Schema, whole: Schema, schemas: Mapping[str, Schema]) -> Markup:
    schema = _resolved(schema, whole, schemas)
    if "enum" in schema:
        return text(" or ".join(str(v) for v in schema["enum"]))
    if "const" in schema:
        return text(
            json.dumps(schema["const"]) if not isinstance(schema["const"], str) else f"the word {schema['const']}"
        )
    shapes = [
        _type(shape, whole, schemas)
        for shape in [*schema.get("anyOf", []), *schema.get("oneOf", [])]
        if "required" not in shape or "type" in shape
    ]
    if shapes:
        return Markup(" or ".join(dict.fromkeys(shapes)))
    return text(TYPES.get(str(schema.get("type")), ""))


def _about(schema: Schema, whole: Schema, schemas: Mapping[str, Schema]) -> Markup:
    schema = _resolved(schema, whole, schemas)
    examples = [small("e.g. ", json.dumps(e, ensure_ascii=False)) for e in list(schema.get("examples", []))[:1]]
    return lines([inline(str(schema.get("description", ""))), *examples]) or EMPTY
