"""The ids that a record names: with their places, or row by row and far faster without."""

from __future__ import annotations

import re
from collections import defaultdict

from bayleaf.checks.facts.link_table import Leaf, Plan, leaves_of, plan_of
from bayleaf.checks.prose.writing import prose_of
from bayleaf.records import OUTSIDE, Record

_NOT_IDS = {"like", "effect", "felt"}  # fields of a stage that stand among the readings
PROSE = re.compile(r"\[\[([^\[\]|]*)(?:\|([^\[\]]*))?\]\]")


class Link:
    """One id in a record: its field path, the id, the kinds that it may be of (none: any), and how it is written.

    `key`: the id is the field's own name; `prose`: it stands in text, as [[id]].
    """

    __slots__ = ("id", "key", "kinds", "path", "prose")

    def __init__(self, path: tuple, id: str, kinds: tuple[str, ...], key: bool = False, prose: bool = False) -> None:
        self.path, self.id, self.kinds, self.key, self.prose = path, id, kinds, key, prose


def links_of(record: Record, prose: list[tuple[tuple, str]] | None = None) -> list[Link]:
    """Every id that a sound record names in its fields and in its prose; *outside this book*, where a job ends there, is none."""
    found: list[Link] = []
    _walk(record.data, plan_of(record.kind), (), found)
    if b"[[" in record.source.raw or not record.source.raw:
        texts = [(path, text) for path, text in (prose_of(record) if prose is None else prose) if "[[" in text]
        found += [Link(path, match[1], (), prose=True) for path, text in texts for match in PROSE.finditer(text)]
    if record.kind != "jobs":
        return found
    return [link for link in found if link.id != OUTSIDE or link.path[:2] != ("expects", "left")]


def ids_of(record: Record, text: str) -> list[tuple[Leaf, list[str]]]:
    """The ids of `links_of`, without their places and row by row: what most rules need, and far faster. `text`: all its prose.

    What is written like a link and is none (LINK-4) may be among those in text.
    """
    found: dict[Leaf, list[str]] = defaultdict(list)
    _gather(record.data, plan_of(record.kind), found)
    if "[[" in text:
        found[leaves_of(record.kind)[""]] = [part.partition("]]")[0].partition("|")[0] for part in text.split("[[")[1:]]
    named = list(found.items())
    if record.kind == "jobs":
        named = [
            (leaf, [id for id in ids if id != OUTSIDE] if (leaf.top, leaf.last) == ("expects", "*") else ids)
            for leaf, ids in named
        ]
    return named


def _walk(data: dict | list, plan: Plan, path: tuple, found: list[Link]) -> None:
    if data.__class__ is list:
        if plan.items is not None:
            found += [Link((*path, i), id, plan.items.kinds) for i, id in enumerate(data) if id.__class__ is str]
        for i, value in enumerate(data if plan.each is not None else ()):
            if value.__class__ is dict or value.__class__ is list:
                _walk(value, plan.each, (*path, i), found)
        return
    if plan.keys is not None:
        found += [Link((*path, key), key, plan.keys.kinds, True) for key in data if key not in _NOT_IDS]
    for name, leaf in plan.fields:
        value = data.get(name)
        if value.__class__ is str and value != "none":
            found.append(Link((*path, name), value, leaf.kinds))
    for key, value in data.items() if plan.each is not None else ():
        if value.__class__ is dict or value.__class__ is list:
            _walk(value, plan.each, (*path, key), found)
    for name, below in plan.inner:
        value = data.get(name)
        if value.__class__ is dict or value.__class__ is list:
            _walk(value, below, (*path, name), found)


def _gather(data: dict | list, plan: Plan, found: dict[Leaf, list[str]]) -> None:
    """As `_walk`; a test holds the two together."""
    each = plan.each
    if data.__class__ is list:
        if plan.items is not None:
            found[plan.items] += [id for id in data if id.__class__ is str]
        if each is not None:
            for value in data:
                if value.__class__ is dict or value.__class__ is list:
                    _gather(value, each, found)
        return
    if plan.keys is not None:
        found[plan.keys] += data if _NOT_IDS.isdisjoint(data) else [key for key in data if key not in _NOT_IDS]
    for name, leaf in plan.fields:
        if name in data:
            value = data[name]
            if value.__class__ is str and value != "none":
                found[leaf].append(value)
    if each is not None:
        for value in data.values():
            if value.__class__ is dict or value.__class__ is list:
                _gather(value, each, found)
    for name, below in plan.inner:
        if name in data:
            value = data[name]
            if value.__class__ is dict or value.__class__ is list:
                _gather(value, below, found)


def texts_of(data: object) -> list[tuple[tuple, str]]:
    """Every text in a record's data with its path."""
    found: list[tuple[tuple, str]] = []
    todo = [((), data)]
    while todo:
        path, value = todo.pop()
        if isinstance(value, str):
            found.append((path, value))
        elif isinstance(value, dict):
            todo += [((*path, key), inner) for key, inner in value.items()]
        elif isinstance(value, list):
            todo += [((*path, i), inner) for i, inner in enumerate(value)]
    return found
