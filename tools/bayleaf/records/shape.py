"""Shape: does a record fit its schema? A fast gate says yes or no; our own words say why not."""

from __future__ import annotations

import json
from functools import cached_property
from pathlib import Path

import jsonschema_rs

from bayleaf.finding import CouldNotRun, Finding
from bayleaf.records.fields import Fields
from bayleaf.records.places import Schema
from bayleaf.records.record import Record

_COMMON = "common.schema.json#/$defs/"


class Shapes:
    """The schemas of one book, read when first needed; each validator is built once."""

    def __init__(self, folder: Path) -> None:
        if not folder.is_dir():
            raise CouldNotRun(f"no schemas folder at {folder}; name the folder that holds kb/ and schemas/ with --root")
        self.folder = folder
        self._gates: dict[str, jsonschema_rs.Draft202012Validator] = {}
        self._schemas: dict[str, Schema] = {}
        self._fields: dict[str, Fields] = {}

    @cached_property
    def common(self) -> Schema:
        """The definitions that kinds share."""
        shapes: Schema = self._read("common")["$defs"]
        return shapes

    def _read(self, name: str) -> Schema:
        path = self.folder / f"{name}.schema.json"
        try:
            schema: Schema = json.loads(path.read_text(encoding="utf-8").replace(_COMMON, "#/$defs/"))
        except OSError as err:
            raise CouldNotRun(f"{path}: {err.strerror}") from None
        except ValueError as err:
            raise CouldNotRun(f"{path}: not JSON: {err}") from None
        return schema

    def schema(self, kind: str) -> Schema:
        """The schema of a kind with the common definitions carried inside, so that it stands alone."""
        if kind not in self._schemas:
            own = self._read(kind)
            own["$defs"] = {**self.common, **own.get("$defs", {})}
            self._schemas[kind] = own
        return self._schemas[kind]

    def fields(self, kind: str) -> Fields:
        """What the schema of a kind says of its fields."""
        if kind not in self._fields:
            self._fields[kind] = Fields(self.schema(kind))
        return self._fields[kind]

    def findings(self, record: Record) -> list[Finding]:
        """What is wrong with the shape of a file's data; empty for nearly every file."""
        gate = self._gates.get(record.kind)
        if gate is None:
            gate = self._gates[record.kind] = jsonschema_rs.Draft202012Validator(self.schema(record.kind))
        if gate.is_valid(record.data):
            return []
        from bayleaf.records.shape_words import explain  # jsonschema is slow to import and seldom needed

        return explain(record, self.schema(record.kind))
