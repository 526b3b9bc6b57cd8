"""LINK-5: circle of records."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.links import Link
from bayleaf.checks.rings import rings
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import KINDS, Record

_WAYS = {
    "procedures": (("follow", "steps"), ("inherits", "inherits")), "components": (("part_of", "part_of"),),
    "equipment": (("type", "type"),), "acts": (("implies", "implies"),), "readings": (("computed", "computed"),),
}  # fmt: skip


def check(context: Context) -> Iterator[Finding]:
    """One ring is reported once, at its first record."""
    for kind in KINDS:
        records = context.book.of(kind)
        for way, top in (*_WAYS.get(kind, ()), ("replaced_by", "replaced_by")):
            edges = {id: _edges(context, record, way, top) for id, record in records.items() if record.sound}
            for ring in rings({id: [e.id for e in out] for id, out in edges.items()}):
                link = next(e for e in edges[ring[0]] if e.id == ring[1 % len(ring)])
                yield RULE.at(records[ring[0]], f"{way} leads in a circle: {' → '.join([*ring, ring[0]])}", path=link.path)


def _edges(context: Context, record: Record, way: str, top: str) -> list[Link]:
    found = [link for link in context.links(record) if link.path[0] == top and not link.prose]
    return [link for link in found if link.path[-1] == "follow"] if way == "follow" else [e for e in found if e.path[-1] != "calculator"]


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
    check=check,
)
