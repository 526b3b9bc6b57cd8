"""What the schema of a kind says of its fields, made ready for walking: ids, prose, bases, numbers, and the word none."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any, Generic, NamedTuple, TypeVar

from bayleaf.records.places import Empty, Path, Place, Schema, read

T = TypeVar("T")


class Spot(NamedTuple, Generic[T]):
    """What lies at a place of a record: `about` is what the schema says of it; `name`: it is the name of an entry of a map."""

    path: Path
    value: Any
    about: T
    name: bool = False


class Plan(Generic[T]):
    """The part of a tree of places that leads to one sort of field; a known field that leads to none is kept as None."""

    __slots__ = ("about", "each", "fields", "names")

    def __init__(
        self, about: T | None, names: T | None, fields: dict[str, Plan[T] | None], each: Plan[T] | None
    ) -> None:
        self.about, self.names, self.fields, self.each = about, names, fields, each


class Fields:
    """The plans of one kind; None where it has no such field."""

    __slots__ = ("bases", "ids", "none", "numbers", "prose")

    def __init__(self, schema: Schema | None = None) -> None:
        place = Place() if schema is None else read(schema)
        self.ids = _pruned(place, lambda p: p.ids, lambda p: p.names)
        self.prose = _pruned(place, lambda p: p.prose or None)
        self.bases = _pruned(place, lambda p: p.basis or None)
        self.numbers = _pruned(place, lambda p: p.numbers)
        self.none: Plan[Empty] | None = _pruned(place, lambda p: p.empty)

    def empty(self, data: object) -> None:
        """Put the empty list or map where a record says none instead of one."""
        if self.none is not None:
            _empty(data, self.none)


def _nothing(_place: Place) -> None:
    return None


def _pruned(
    place: Place, about: Callable[[Place], T | None], names: Callable[[Place], T | None] = _nothing
) -> Plan[T] | None:
    fields = {name: _pruned(inner, about, names) for name, inner in place.fields.items()}
    each = _pruned(place.each, about, names) if place.each is not None else None
    plan = Plan(about(place), names(place), fields, each)
    return plan if each or any(fields.values()) or plan.about is not None or plan.names is not None else None


def spots(data: object, plan: Plan[T] | None) -> list[Spot[T]]:
    """Everything in a record's data that a plan leads to, in the order in which it stands there."""
    result: list[Spot[T]] = []
    if plan is not None:
        _walk(data, plan, (), result)
    return result


def _walk(value: object, plan: Plan[T], path: Path, found: list[Spot[T]]) -> None:
    if plan.about is not None:
        found.append(Spot(path, value, plan.about))
    each = plan.each
    if isinstance(value, dict):
        fields, names = plan.fields, plan.names
        for key, inner in value.items():
            if names is not None and key not in fields:
                found.append(Spot((*path, key), key, names, True))
            below = fields.get(key, each)
            if below is not None:
                _walk(inner, below, (*path, key), found)
    elif isinstance(value, list) and each is not None:
        for i, item in enumerate(value):
            _walk(item, each, (*path, i), found)


def _empty(value: object, plan: Plan[Empty]) -> None:
    if isinstance(value, dict):
        for key, inner in value.items():
            below = plan.fields.get(key, plan.each)
            if below is None:
                continue
            if inner == "none" and below.about is not None:
                value[key] = below.about()
            else:
                _empty(inner, below)
    elif isinstance(value, list) and plan.each is not None:
        for i, item in enumerate(value):
            if item == "none" and plan.each.about is not None:
                value[i] = plan.each.about()
            else:
                _empty(item, plan.each)


NO_FIELDS = Fields()
