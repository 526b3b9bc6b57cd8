"""Which fields hold ids, and of which kinds: one table for the checks of links, for what is reachable, and for pages."""

from __future__ import annotations

import re
from collections import defaultdict
from dataclasses import dataclass
from functools import cache

from bayleaf.checks.writing import prose_of
from bayleaf.records import OUTSIDE, Record

# Field path: the kinds that its ids may be of. `*` is every entry or field, `@` is the field's own name,
# a last `basis` stands for the source or calculator that it names.
_LINKS: dict[str, dict[str, str]] = {
    "systems": {
        "shows.@": "readings", "paths.*.through.*": "components", "paths.*.greatest.basis": "", "has.*": "components",
        "bands.@": "readings", "bands.*.basis": "", "bands.*.expected.calculator": "calculators",
        "bands.*.expected.inputs.*.reading": "readings", "mistaken_for.*.system": "systems", "calculators.*": "calculators",
        "brings.cautions.*": "cautions", "brings.acts.*": "acts", "brings.states.*": "states",
    },
    "components": {"mistaken_for.*.component": "components", "part_of": "components"},
    "equipment": {"type": "equipment", "measures.*": "quantities", "basis": ""},
    "readings": {
        "quantity": "quantities", "computed.difference.of": "readings", "computed.difference.less": "readings",
        "computed.quantity": "quantities", "computed.calculator": "calculators", "computed.inputs.*.reading": "readings",
        "at": "components", "between.*": "components", "when": "conditions", "valid_if.*": "states",
    },
    "procedures": {
        "systems.*": "systems", "tasks.*": "tasks", "inherits.*": "procedures", "needs.states.*": "states",
        "needs.has.*": "components", "needs.equipment.*": "equipment", "leaves.*": "states", "ends.*": "states",
        "spoils.*": "readings", "steps.*.follow": "procedures", "steps.*.act": "acts", "steps.*.at": "components",
        "steps.*.when": "conditions", "steps.*.takes.reading": "readings", "steps.*.takes.instrument": "equipment",
        "steps.*.lasts.basis": "", "steps.*.stop_at.basis": "", "steps.*.at_most.basis": "", "steps.*.cautions.*": "cautions",
        "steps.*.sets.*": "states", "steps.*.proves.*": "states", "steps.*.equipment.*": "equipment",
        "results.@": "readings", "calculators.*": "calculators",
    },
    "faults": {
        "part": "components", "systems.*": "systems", "stages.*.@": "readings", "differs.@": "systems",
        "differs.*.*.@": "readings", "because.@": "readings", "felt_as.@": "symptoms", "mended_by.*": "procedures",
        "proved_by": "readings",
    },
    "symptoms": {"first.*": "readings", "prevents.*": "states"},
    "codes": {"first.*": "readings", "symptoms.*": "symptoms", "systems.*": "systems", "basis": ""},
    "calculators": {
        "inputs.*.quantity": "quantities", "constants.*.quantity": "quantities", "constants.*.basis": "",
        "result.*.quantity": "quantities", "basis": "", "checks.*.basis": "",
    },
    "vehicles": {
        "systems.*": "systems", "has.*": "components", "fuel": "fuels", "altitude.basis": "", "bands.@": "readings",
        "bands.*.basis": "",
    },
    "jobs": {
        "vehicle": "vehicles", "car.systems.*": "systems", "car.has.*": "components", "car.fuel": "fuels",
        "maker_bands.@": "readings", "shop.*": "equipment", "felt.*": "symptoms", "readings.*.reading": "readings",
        "readings.*.which": "components", "readings.*.instrument": "equipment", "readings.*.not_met.*": "states",
        "readings.*.repaired": "faults", "true_cause.*": "faults", "expects.left.*": "faults", "expects.next": "readings",
    },
    "quantities": {"plausible.basis": ""},
    "conditions": {"implies.*": "acts states"},
    "states": {
        "set_by.*": "acts", "ended_by.*": "acts", "proved_by.reading": "readings", "requires.*": "states",
        "forbids.*": "acts", "needs.*": "equipment",
    },
    "acts": {"implies.*": "acts", "undone_by": "acts"},
    "hazards": {
        "triggers.*.acts.*": "acts", "triggers.*.greatest_at_least.basis": "", "triggers.*.without.*": "states",
        "triggers.*.with.*": "states", "triggers.*.conditions.*": "conditions", "triggers.*.equipment.*": "equipment",
        "triggers.*.quantities.*": "quantities",
    },
    "cautions": {"hazards.*": "hazards", "basis": ""},
    "fuels": {"ethanol.basis": "", "stoichiometric.basis": "", "density.basis": "", "cautions.*": "cautions"},
    "terms": {"basis": ""},
}  # fmt: skip
_NOT_IDS = {"like"}  # a field of a stage that stands among the readings
PROSE = re.compile(r"\[\[([^\[\]|]*)(?:\|([^\[\]]*))?\]\]")


@dataclass(slots=True)
class Link:
    """One id in a record: its field path, the id, the kinds that it may be of (none: any), and how it is written."""

    path: tuple
    id: str
    kinds: tuple[str, ...]
    key: bool = False  # the id is the field's own name
    prose: bool = False  # it stands in text, as [[id]]


@dataclass(frozen=True, slots=True, eq=False)
class Leaf:
    """One row of the table for a kind: its first and its last field, and the kinds that its ids may be of (none: any)."""

    top: str
    last: str
    kinds: tuple[str, ...]


@dataclass(slots=True)
class _Plan:
    """A node of the table, ready for walking. `keys`, `items`: the row of the ids that are its field names, its entries."""

    keys: Leaf | None
    items: Leaf | None
    fields: tuple[tuple[str, Leaf], ...]
    inner: tuple[tuple[str, _Plan], ...]
    each: _Plan | None


@cache
def leaves_of(kind: str) -> dict[str, Leaf]:
    """Every row of the table for a kind, and last the one of the ids in text, which has no field."""
    rows: dict[str, str] = {}
    for row, kinds in {"replaced_by": kind, **_LINKS.get(kind, {})}.items():
        rows |= {f"{row}.source": "sources", f"{row}.calculator": "calculators"} if row.split(".")[-1] == "basis" else {row: kinds}
    return {row: Leaf(row.split(".")[0], row.split(".")[-1], tuple(kinds.split())) for row, kinds in (*rows.items(), ("", ""))}


@cache
def _plan(kind: str) -> _Plan:
    """The table of one kind as a tree by field; the last field of a row holds its leaf."""
    tree: dict = {}
    for row, leaf in leaves_of(kind).items():
        *above, last = row.split(".")
        node = tree
        for step in above:
            node = node.setdefault(step, {})
        node.setdefault("=", {})[last] = leaf
    return _planned(tree)


def _planned(node: dict) -> _Plan:
    leaves = dict(node.get("=", ()))
    inner = {step: _planned(below) for step, below in node.items() if step != "="}
    each = inner.pop("*", None)
    return _Plan(leaves.pop("@", None), leaves.pop("*", None), tuple(leaves.items()), tuple(inner.items()), each)


def links_of(record: Record, prose: list[tuple[tuple, str]] | None = None) -> list[Link]:
    """Every id that a sound record names in its fields and in its prose; *outside this book*, where a job ends there, is none."""
    found: list[Link] = []
    _walk(record.data, _plan(record.kind), (), found)
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
    _gather(record.data, _plan(record.kind), found)
    if "[[" in text:
        found[leaves_of(record.kind)[""]] = [part.partition("]]")[0].partition("|")[0] for part in text.split("[[")[1:]]
    named = list(found.items())
    if record.kind == "jobs":
        named = [(leaf, [id for id in ids if id != OUTSIDE] if (leaf.top, leaf.last) == ("expects", "*") else ids) for leaf, ids in named]
    return named


def _walk(data: dict | list, plan: _Plan, path: tuple, found: list[Link]) -> None:
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


def _gather(data: dict | list, plan: _Plan, found: dict[Leaf, list[str]]) -> None:
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
