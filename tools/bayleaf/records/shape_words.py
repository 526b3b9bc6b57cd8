"""Schema complaints in our own words: jsonschema finds them, no text of its own reaches a user."""

from __future__ import annotations

import re
from collections.abc import Iterable
from typing import Any

import jsonschema

from bayleaf.finding import Finding, reader_level
from bayleaf.nearest import nearest
from bayleaf.records.places import Path, Schema
from bayleaf.records.record import Record

Complaint = Any  # a ValidationError; the types that the library states have a placeholder in every field

_TYPES = {
    "object": "a map of fields",
    "array": "a list",
    "string": "text",
    "number": "a number",
    "integer": "a whole number",
    "boolean": "true or false",
    "null": "nothing",
}


def _pattern(_validator: object, pattern: str, value: object, _schema: Schema) -> Iterable[jsonschema.ValidationError]:
    """As the fast gate reads it: `$` is the very end, not the place before a last line feed."""
    if isinstance(value, str) and not re.search(re.sub(r"\$\Z", r"\\Z", pattern), value):
        yield jsonschema.ValidationError("", validator="pattern")


_Validator: Any = jsonschema.validators.extend(  # type: ignore[no-untyped-call]
    jsonschema.Draft202012Validator, {"pattern": _pattern}
)


def explain(record: Record, schema: Schema) -> list[Finding]:
    """Every shape complaint about a record, each at its exact place, most specific first."""
    validator = _Validator(schema)
    result: dict[Any, Finding] = {}
    for error in validator.iter_errors(record.data):
        for leaf in _leaves(error):
            for code, message, help, path, key in _words(leaf):
                result.setdefault(
                    (code, path, message), record.finding(code, reader_level(code), message, help, path, key)
                )
    if not result:  # the fast gate refused what this one takes: say so rather than let it pass
        result[()] = record.finding(
            "SHAPE-8",
            reader_level("SHAPE-8"),
            "this file does not fit its schema",
            "Compare with a record that passes.",
        )
    return list(result.values())


def _leaves(error: Complaint) -> Iterable[jsonschema.ValidationError]:
    """The complaints of the alternative that came nearest; a wrong type at the top means the wrong alternative."""
    if error.validator not in ("anyOf", "oneOf") or not error.context or _only_required(error):
        yield error
        return
    branches: dict[Any, list[Any]] = {}
    for inner in error.context:
        branches.setdefault(inner.schema_path[0], []).append(inner)
    depth = len(error.path)
    ranked = sorted(branches.values(), key=lambda errors: (_misfit(errors, depth), len(errors)))
    if _misfit(ranked[0], depth) == 2:
        yield error
        return
    for inner in ranked[0]:
        yield from _leaves(inner)


def _misfit(errors: list[Any], depth: int) -> int:
    """0: right alternative, wrong inside; 1: fields missing or unknown; 2: another alternative altogether."""
    top = [e for e in errors if len(e.absolute_path) <= depth or not e.path]
    if any(e.validator in ("type", "const", "enum", "pattern") for e in top):
        return 2
    if any(e.validator in ("anyOf", "oneOf") and not _only_required(e) for e in top):
        return 2
    return 1 if top else 0


def _only_required(error: Complaint) -> bool:
    """An anyOf that only says `at least one of these fields`."""
    return all(set(one) == {"required"} for one in error.validator_value)


def _words(error: Complaint) -> Iterable[tuple[str, str, str, Path, bool]]:
    """(code, message, help, path, point at the field name?) for one complaint."""
    path, value, limit, schema = tuple(error.absolute_path), error.instance, error.validator_value, error.schema
    name = _name(path)
    match error.validator:
        case "additionalProperties":
            known = list(schema.get("properties", {}))
            for field in sorted(set(value) - set(known)):
                yield ("SHAPE-1", f"unknown field {field}", _mean(field, known), (*path, field), True)
        case "required":
            for field in [f for f in limit if f not in value]:
                about = schema.get("properties", {}).get(field, {}).get("description", "")
                yield "SHAPE-2", f"{name} lacks the field {field}", _sentence(about) or f"Add {field}.", path, True
        case "minProperties":
            yield (
                "SHAPE-2",
                f"{name} is an empty map",
                "Fill it in; where the field may be empty, write none.",
                path,
                False,
            )
        case "type":
            kinds = [_TYPES[k] for k in ([limit] if isinstance(limit, str) else limit)]
            yield "SHAPE-3", f"{name} is {_a(value)}", f"It must be {_or(kinds)}.", path, False
        case "enum" | "const":
            allowed = [_shown(v) for v in (limit if error.validator == "enum" else [limit])]
            yield "SHAPE-4", f"{name} is {_shown(value)}, which is not allowed", _mean(str(value), allowed), path, False
        case "pattern":
            about = _sentence(schema.get("description", ""))
            if "propertyNames" in error.absolute_schema_path:
                yield (
                    "SHAPE-5",
                    f"the name {_shown(value)} is not spelled as it must be",
                    about or _ID_WORDS,
                    (*path, value),
                    True,
                )
            else:
                yield (
                    "SHAPE-5",
                    f"{name} is {_shown(value)}, which is not spelled as it must be",
                    about or "Compare with a record that passes.",
                    path,
                    False,
                )
        case "minLength" | "maxLength" | "minItems" | "maxItems" | "uniqueItems":
            yield (
                "SHAPE-6",
                f"{name} {_SIZE[error.validator].format(limit) if limit != 1 else _SIZE_ONE[error.validator]}",
                _sentence(schema.get("description", "")) or _RESIZE[error.validator],
                path,
                False,
            )
        case "minimum" | "maximum" | "exclusiveMinimum" | "exclusiveMaximum":
            yield "SHAPE-7", f"{name} is {_shown(value)}", f"It must be {_BOUND[error.validator]} {limit}.", path, False
        case "anyOf" | "oneOf" if _only_required(error) or (error.validator == "oneOf" and not error.context):
            fields = _choices(limit)
            given = [f for f in fields if isinstance(value, dict) and f in value]
            said = f"has {' and '.join(given)} together" if len(given) > 1 else f"lacks {_or(fields)}"
            yield (
                "SHAPE-8",
                f"{name} {said}",
                f"Give {'one' if error.validator == 'oneOf' else 'at least one'} of {', '.join(fields)}.",
                path,
                True,
            )
        case _:
            yield "SHAPE-8", f"{name} has none of the shapes it may have", _shapes(limit, schema), path, False


_SIZE = {
    "minLength": "is shorter than {}",
    "maxLength": "is longer than {} characters",
    "minItems": "has fewer than {} entries",
    "maxItems": "has more than {} entries",
    "uniqueItems": "names the same thing twice",
}
_SIZE_ONE = {**_SIZE, "minItems": "is an empty list", "minLength": "is empty"}
_RESIZE = {
    "minLength": "Say more.",
    "maxLength": "Say it shorter.",
    "minItems": "Add what is missing.",
    "maxItems": "Keep the first ones.",
    "uniqueItems": "Name it once.",
}
_ID_WORDS = "Use lower-case letters, digits and single hyphens."
_BOUND = {"minimum": "at least", "maximum": "at most", "exclusiveMinimum": "more than", "exclusiveMaximum": "less than"}


def _choices(alternatives: list[Schema]) -> list[str]:
    """The fields that tell alternatives apart: those not required by all of them."""
    wanted = [one.get("required", []) for one in alternatives]
    shared = set.intersection(*map(set, wanted)) if wanted else set()
    return list(dict.fromkeys(f for fields in wanted for f in fields if f not in shared))


def _name(path: Path) -> str:
    fields = [str(p) if isinstance(p, str) else f"entry {p + 1}" for p in path]
    return " / ".join(fields) if fields else "the record"


def _a(value: object) -> str:
    kind = {dict: "object", list: "array", str: "string", bool: "boolean", int: "number", float: "number"}.get(
        type(value), "null"
    )
    return _TYPES[kind] if isinstance(value, dict | list) or value is None else f"{_TYPES[kind]} ({_shown(value)})"


def _shown(value: object) -> str:
    text = re.sub(r"\s", " ", str(value)) if not isinstance(value, bool) else str(value).lower()
    return text if len(text) <= 60 else text[:57] + "…"


def _or(words: list[str]) -> str:
    return " or ".join(words)


def _sentence(text: str) -> str:
    return text.split("\n", maxsplit=1)[0].strip()


def _mean(word: str, known: list[str]) -> str:
    near = nearest(word, known)
    if near:
        return f"Did you mean {near}?"
    return f"It may be: {', '.join(known[:24])}." if known else "Delete it."


def _shapes(alternatives: object, schema: Schema) -> str:
    about = _sentence(schema.get("description", ""))
    if not isinstance(alternatives, list):
        return about or "Compare with a record that passes."
    message = []
    for one in alternatives:
        if "const" in one:
            message.append(f"the word {one['const']}")
        elif "required" in one:
            message.append(f"a map with {' and '.join(one['required'])}")
        elif isinstance(one.get("type"), str):
            message.append(_TYPES[one["type"]])
    return about or (f"It may be {_or(message)}." if message else "Compare with a record that passes.")
