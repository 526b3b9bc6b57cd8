"""LINK-5: circle of records."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.facts.cycles import cycles
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import KINDS, Record

_WAYS = {
    "procedures": (("follow", "steps"), ("inherits", "inherits")),
    "components": (("part_of", "part_of"),),
    "equipment": (("type", "type"),),
    "acts": (("implies", "implies"),),
    "readings": (("computed", "computed"),),
}


def find(context: Context) -> Iterator[Finding]:
    """One cycle is reported once, at its first record."""
    for kind in KINDS:
        records = context.book.of(kind)
        for way, top in (*_WAYS.get(kind, ()), ("replaced_by", "replaced_by")):
            edges = {
                id: _edges(context, record, way, top)
                for id, record in records.items()
                if record.sound and top in record.data
            }
            for cycle in cycles(edges):
                link = next(
                    link
                    for link in context.references.links(records[cycle[0]])
                    if link.path[0] == top and link.id == cycle[1 % len(cycle)] and not link.prose
                )
                yield RULE.at(
                    records[cycle[0]], f"{way} leads in a circle: {' → '.join([*cycle, cycle[0]])}", path=link.path
                )


def _edges(context: Context, record: Record, way: str, top: str) -> list[str]:
    there = [(leaf, ids) for leaf, ids in context.references.ids(record) if leaf.top == top]
    return [
        id
        for leaf, ids in there
        for id in ids
        if (leaf.last == "follow" if way == "follow" else leaf.last != "calculator")
    ]


RULE = Rule(
    code="LINK-5",
    level="error",
    scope="book",
    title="Circle of records",
    what=(
        "What follows, inherits, replaces, is part of, is of the type of, implies or is computed from another "
        "never comes back to itself."
    ),
    why="A circle has no beginning: a procedure would never end, and a value would never be found.",
    mend="Take one of the links in the ring out.",
    example=Example(
        "procedures/relieve-fuel-pressure.yaml",
        "  - {do: Switch the key off., act: key-off}\n",
        "  - {follow: fit-gauge}\n",
    ),
    find=find,
)
