"""A record to fill in, made from the schema of its kind."""

from __future__ import annotations

import json
import re
from collections.abc import Mapping

from bayleaf.records.places import Schema

_PLAIN = re.compile(r"[A-Za-z][A-Za-z0-9-]*(?: [A-Za-z0-9-]+)*\Z")  # text that YAML reads as text without quotes
_WORDS_OF_YAML = {"true", "false", "null", "yes", "no", "on", "off", "y", "n"}
_WIDEST = 118
_USUAL = {"readings": {"at"}}  # fields that the shape leaves free and a rule asks of nearly every record


def template(schema: Schema, kind: str, drafted: Mapping[str, list[str]]) -> list[str]:
    """The lines of a record: each field with what it is for; a field that may be left out is a comment."""
    needed = {*schema.get("required", []), *_USUAL.get(kind, ())}
    for choice in ("oneOf", "anyOf"):  # of fields that stand for one another, the first
        needed |= set(schema.get(choice, [{}])[0].get("required", []))
    said = [f"# yaml-language-server: $schema=../../schemas/{kind}.schema.json"]
    for name, field in schema["properties"].items():
        said += ["", *_comment(field["description"])]
        if name in drafted:
            said += drafted[name]
        else:
            lines = [f"{name}: {one_line(field['examples'][0])}"]
            said += lines if name in needed else [f"# {line}" for line in lines]
    return said


def _comment(text: str) -> list[str]:
    lines: list[str] = []
    line = "#"
    for word in text.split():
        if len(line) + len(word) + 1 > _WIDEST:
            lines, line = [*lines, line], "#"
        line += f" {word}"
    return [*lines, line]


def one_line(value: object) -> str:
    """A value on one line, in a form that the strict reader takes for what it is."""
    if isinstance(value, dict):
        return "{" + ", ".join(f"{one_line(key)}: {one_line(item)}" for key, item in value.items()) + "}"
    if isinstance(value, list):
        return f"[{', '.join(map(one_line, value))}]"
    if isinstance(value, str) and _PLAIN.match(value) and value.lower() not in _WORDS_OF_YAML:
        return value
    return json.dumps(value, ensure_ascii=False)
