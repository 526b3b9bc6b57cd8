"""What a mutation operator is, and small tools that change a record's data."""

from __future__ import annotations

import copy
from collections.abc import Callable, Iterator
from dataclasses import dataclass

from bayleaf.checks.context import Context
from bayleaf.records import Record

# What must happen to an operator's mutants, said beforehand.
CAUGHT = "caught"  # every one, without exception
MOSTLY = "mostly"  # at least the stated share; `why` says what the others are
BLIND = "blind"  # a blind spot in principle; `why` is the reason


@dataclass(frozen=True)
class Mutant:
    """One record with one slip in it. `what` says what was changed."""

    kind: str
    id: str
    path: tuple
    what: str
    data: dict
    text: bytes | None = None  # the whole file, for slips that the reader must see


@dataclass(frozen=True)
class Operator:
    """One way to go wrong. `make` yields the mutants of one record; `kinds` are the kinds that it can touch."""

    name: str
    expects: str
    why: str
    make: Callable[[Record, Context], Iterator[Mutant]]
    kinds: tuple[str, ...] = ()
    least: float = 1.0


OPERATORS: list[Operator] = []


def operator(name: str, expects: str, why: str, *kinds: str, least: float = 1.0) -> Callable:
    """Enter a function as an operator."""

    def enter(function: Callable) -> Callable:
        OPERATORS.append(Operator(name, expects, why, function, kinds, least))
        return function

    return enter


def at(data: object, path: tuple) -> object:
    """What lies at a path."""
    for step in path:
        data = data[step]
    return data


def changed(record: Record, path: tuple, value: object, what: str) -> Mutant:
    """A mutant with another value at a path."""
    data = copy.deepcopy(record.data)
    at(data, path[:-1])[path[-1]] = value
    return Mutant(record.kind, record.id, path, what, data)


def without(record: Record, path: tuple, what: str) -> Mutant:
    """A mutant in which a field or an entry is missing; an emptied list becomes the word none."""
    data = copy.deepcopy(record.data)
    del at(data, path[:-1])[path[-1]]
    if len(path) > 1 and at(data, path[:-1]) in ([], {}):
        at(data, path[:-2])[path[-2]] = "none"
    return Mutant(record.kind, record.id, path, what, data)


def renamed(record: Record, path: tuple, name: str, what: str) -> Mutant:
    """A mutant in which a field has another name and stands where it stood."""
    data = copy.deepcopy(record.data)
    above = at(data, path[:-1])
    items = [(name if key == path[-1] else key, value) for key, value in above.items()]
    above.clear()
    above.update(items)
    return Mutant(record.kind, record.id, path, what, data)


def steps_changed(record: Record, steps: list, path: tuple, what: str) -> Mutant:
    """A mutant with other steps."""
    return Mutant(record.kind, record.id, path, what, {**record.data, "steps": steps})
