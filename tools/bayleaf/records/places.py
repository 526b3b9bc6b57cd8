"""A schema as one tree of places: what it says of each field, its alternatives laid together.

Beside what JSON Schema knows, a schema says of a field, in words that start with `x-`:

    x-kinds     the kinds of record that an id here may name; "any"; an empty list: it names nothing outside the record
    x-words     words that stand among the ids and are none
    x-prose     whether it is text in sentences
    x-unit      it is the unit of the numbers beside it
    x-quantity  what numbers with a unit measure, here and below; an empty list: a number that the unit is not of
    x-role      what they are, where their names do not tell: band, width, reading
    x-basis     it says where numbers come from: those beside it and below it, unless `x-covers` is false

What stands at a field comes before what stands at the shape that it refers to.
"""

from __future__ import annotations

from typing import Any, NamedTuple

Path = tuple[str | int, ...]
Schema = dict[str, Any]
Empty = type[list[object]] | type[dict[str, object]]
Quantity = list[str] | dict[str, str] | str | None
_ALTERNATIVES = ("anyOf", "oneOf", "allOf")


class Ids(NamedTuple):
    """Ids that may stand at a place: the first and the last field of its path, and the kinds that they may be of (none: any)."""

    top: str
    last: str
    kinds: tuple[str, ...]
    words: tuple[str, ...] = ()


class Numbers:
    """Numbers beside one unit: their fields, what they measure, and how many steps above each thing that explains them is.

    `name`: the step of the path that is a name given by the record, not a field. `bases`: (depth, field) of each basis
    that covers them, nearest first.
    """

    def __init__(
        self, unit: str, role: str, quantity: Quantity, name: int | None, bases: tuple[tuple[int, str], ...]
    ) -> None:
        self.unit, self.role, self.quantity, self.name, self.bases = unit, role, quantity, name, bases
        self.fields: dict[str, None] = {}


class Place:
    """One place in the records of a kind. `each` is any entry of a list, and any entry of a map that has no field of its own."""

    def __init__(self) -> None:
        self.fields: dict[str, Place] = {}
        self.each: Place | None = None
        self.names: Ids | None = None
        self.ids: Ids | None = None
        self.prose = self.basis = self.none = False
        self.holds: set[str] = set()
        self.numbers: Numbers | None = None

    @property
    def empty(self) -> Empty | None:
        """What the word none stands for here: the empty list or map; None where it is a word like others."""
        if not self.none:
            return None
        return list if "array" in self.holds else dict if "object" in self.holds else None


class _Where(NamedTuple):
    """What the maps above say about a place."""

    path: tuple[str, ...] = ()
    quantity: Quantity = None
    name: int | None = None
    bases: tuple[tuple[int, str], ...] = ()


def read(schema: Schema) -> Place:
    """The places of one record of a kind; `schema` carries its definitions. Of a vocabulary: of one entry."""
    top = schema if "properties" in schema else schema["additionalProperties"]
    place = Place()
    _Reader(schema.get("$defs", {})).fill(place, top, {}, _Where())
    return place


class _Reader:
    def __init__(self, shapes: dict[str, Schema]) -> None:
        self.shapes = shapes

    def resolved(self, schema: Schema, said: Schema) -> tuple[Schema, Schema]:
        """(the shape that a schema is or refers to, what is said of the field), the nearest to the field first."""
        said = {**_said(schema), **said}
        while "$ref" in schema:
            schema = self.shapes[schema["$ref"].rsplit("/", 1)[-1]]
            said = {**_said(schema), **said}
        return schema, said

    def fill(self, place: Place, schema: Schema, said: Schema, where: _Where) -> None:
        schema, said = self.resolved(schema, said)
        kind = schema.get("type")
        if isinstance(kind, str):
            place.holds.add(kind)
        place.none = place.none or schema.get("const") == "none"
        place.basis = place.basis or bool(said.get("x-basis"))
        if kind == "string":
            place.prose = place.prose or bool(said.get("x-prose"))
            place.ids = _ids(said, where.path) or place.ids
        elif kind == "array" and "items" in schema:
            place.each = place.each or Place()
            self.fill(place.each, schema["items"], said, where._replace(path=(*where.path, "*")))
        elif kind == "object":
            self.map(place, schema, said, where)
        for way in _ALTERNATIVES:
            for one in schema.get(way, ()):
                self.fill(place, one, said, where)

    def map(self, place: Place, schema: Schema, said: Schema, where: _Where) -> None:
        """The fields of a map, and its entries by name."""
        fields = {name: (inner, self.resolved(inner, {})) for name, inner in schema.get("properties", {}).items()}
        depth = len(where.path)
        covering = [
            name for name, (_inner, (_shape, its)) in fields.items() if its.get("x-basis") and its.get("x-covers", True)
        ]
        below = where._replace(
            quantity=said.get("x-quantity", where.quantity),
            bases=(*((depth, name) for name in covering), *where.bases),
        )
        for name, (_inner, (_shape, its)) in fields.items():
            if its.get("x-unit") and place.numbers is None:
                place.numbers = Numbers(name, said.get("x-role", ""), below.quantity, below.name, below.bases)
        if place.numbers is not None:
            place.numbers.fields |= {
                name: None
                for name, (_inner, (shape, its)) in fields.items()
                if shape.get("type") == "number" and its.get("x-quantity") != []
            }
        for name, (inner, _resolved) in fields.items():
            self.fill(place.fields.setdefault(name, Place()), inner, {}, below._replace(path=(*where.path, name)))
        if "propertyNames" in schema:
            place.names = _ids(self.resolved(schema["propertyNames"], {})[1], (*where.path, "@")) or place.names
        if isinstance(schema.get("additionalProperties"), dict):
            place.each = place.each or Place()
            self.fill(
                place.each, schema["additionalProperties"], {}, below._replace(path=(*where.path, "*"), name=depth)
            )


def _said(schema: Schema) -> Schema:
    return {word: value for word, value in schema.items() if word.startswith("x-")}


def _ids(said: Schema, path: tuple[str, ...]) -> Ids | None:
    kinds = said.get("x-kinds", [])
    if not kinds:
        return None
    return Ids(
        path[0] if path else "",
        path[-1] if path else "",
        () if kinds == "any" else tuple(kinds),
        tuple(said.get("x-words", ())),
    )
