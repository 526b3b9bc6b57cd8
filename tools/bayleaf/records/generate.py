"""The types of records as Python has them, made from the schemas: `python -m bayleaf.records.generate` writes types.py.

As everywhere past the reader, the word none is the empty list or map, and the alternatives of a place are one type.
"""

from __future__ import annotations

import re
from keyword import iskeyword
from pathlib import Path

from bayleaf.records.kinds import KIND, Kind
from bayleaf.records.places import Schema
from bayleaf.records.shape import Shapes

TARGET = Path(__file__).with_name("types.py")
_SIMPLE = {"string": "str", "number": "float", "integer": "int", "boolean": "bool"}
_WIDEST = 120
_HEAD = '''"""What a sound record holds, by kind. Made from the schemas by bayleaf.records.generate; change those."""

from __future__ import annotations

from typing import Literal, NotRequired, TypedDict
'''


class _Types:
    """The types of one kind; those of shapes that kinds share are made once."""

    def __init__(self, kind: Kind, schema: Schema, common: Schema, made: dict[str, str]) -> None:
        self.kind, self.schema, self.common, self.made = kind, schema, common, made

    def type(self, schema: Schema, name: str, about: str) -> str:
        """The type of a place; a map with fields of its own becomes a class of this name, which says what it is about."""
        schema, name = self.resolved(schema, name)
        about = schema.get("description", about)
        if "const" in schema or "enum" in schema:
            message = schema["enum"] if "enum" in schema else [schema["const"]]
            return f"Literal[{', '.join(map(_literal, message))}]"
        shapes = [
            self.resolved(one, name) for way in ("anyOf", "oneOf") for one in schema.get(way, ()) if _is_shape(one)
        ]
        if isinstance(schema.get("additionalProperties"), dict):  # also a fault's stage: one field among free names
            return f"dict[str, {self.type(schema['additionalProperties'], name, about)}]"
        if "properties" in schema:
            return self.map([schema], name, about)
        if schema.get("type") == "array":
            return f"list[{self.type(schema['items'], name, about)}]"
        if not shapes:
            return _SIMPLE[schema["type"]]
        plain = [self.type(shape, its, about) for shape, its in shapes if "properties" not in shape]
        maps = [shape for shape, _name in shapes if "properties" in shape]
        types = [one for one in plain if one != _NONE] + ([self.map(maps, name, about)] if maps else [])
        return " | ".join(dict.fromkeys(types))

    def map(self, shapes: list[Schema], name: str, about: str) -> str:
        """The name of the class of a map, which is made where it is new."""
        if name not in self.made:
            self.made[name] = ""  # keeps its place before what it holds
            fields = {field: inner for shape in shapes for field, inner in shape["properties"].items()}
            lines = {}
            for field in fields:
                types = [
                    self.type(
                        s["properties"][field], name + _camel(field), s["properties"][field].get("description", about)
                    )
                    for s in shapes
                    if field in s["properties"]
                ]
                one = " | ".join(dict.fromkeys(types))
                needed = all(field in shape.get("required", ()) for shape in shapes)
                lines[field] = one if needed else f"NotRequired[{one}]"
            self.made[name] = _class(name, about, lines)
        return name

    def resolved(self, schema: Schema, name: str) -> tuple[Schema, str]:
        """A schema without its references, and the name of its type: that of the shape it refers to."""
        while "$ref" in schema:
            _home, _, shape = schema["$ref"].rpartition("#/$defs/")
            shared = shape in self.common
            schema = (self.common if shared else self.schema["$defs"])[shape]
            name = (
                _camel(shape)
                if shared
                else self.kind.singular.capitalize()
                + ("" if shape == "entry" and self.kind.vocabulary else _camel(shape))
            )
        return schema, name


_NONE = 'Literal["none"]'


def types(schemas: Path) -> str:
    """The text of types.py."""
    shapes, result = Shapes(schemas), {}  # type: ignore[var-annotated]
    for kind in KIND.values():
        schema = shapes.schema(kind.name)
        top = schema if "properties" in schema else schema["additionalProperties"]
        _Types(kind, schema, shapes.common, result).type(top, kind.singular.capitalize(), schema["description"])
    return "\n\n".join([_HEAD, *result.values()])


def _class(name: str, about: str, fields: dict[str, str]) -> str:
    if any(iskeyword(field) for field in fields):
        quoted = {field: f"'{kind}'" if '"' in kind else f'"{kind}"' for field, kind in fields.items()}
        lines = ["    {\n", *(f'        "{field}": {kind},\n' for field, kind in quoted.items()), "    },\n"]
        return f'{name} = TypedDict(\n    "{name}",\n{"".join(lines)})\n'
    lines = [line for field, kind in fields.items() for line in _wrapped(f"{field}: {kind}", 4)]
    return f'class {name}(TypedDict):\n    """{about.strip()}"""\n\n' + "\n".join(lines) + "\n"


def _wrapped(text: str, indent: int) -> list[str]:
    """A field or type on one line; where it does not fit, what its brackets hold below, as the formatter has it."""
    space = " " * indent
    if indent + len(text) <= _WIDEST:
        return [space + text]
    head, bracket, rest = text.partition("[")
    if '"' in head:  # words of a list
        return [f"{space}{word}," for word in text.split(", ")]
    return [space + head + bracket, *_wrapped(rest[:-1], indent + 4), f"{space}]"]


def _camel(name: str) -> str:
    return "".join(part.capitalize() for part in re.split(r"[_-]", name))


def _literal(word: object) -> str:
    return f'"{word}"' if isinstance(word, str) else repr(word)


def _is_shape(schema: Schema) -> bool:
    """Whether an alternative is a shape and not only a demand for some of the fields."""
    return set(schema) != {"required"}


if __name__ == "__main__":
    TARGET.write_text(types(Path(__file__).resolve().parents[3] / "schemas"), encoding="utf-8")
