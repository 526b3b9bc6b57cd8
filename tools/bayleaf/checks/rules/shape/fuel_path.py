"""SHAPE-9: path of fuel without side or greatest pressure."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record


def find(record: Record, _context: Context) -> Iterator[Finding]:
    """Every path of a system."""
    for i, path in enumerate(record.data["paths"]):
        fuel = path["carries"] == "fuel"
        for name in ("side", "greatest"):
            if fuel and name not in path:
                yield RULE.at(record, f"the path {path['name']} carries fuel and has no {name}", path=("paths", i))
        if not fuel and "side" in path:
            message = f"the path {path['name']} carries {path['carries']} and has a side"
            yield RULE.at(record, message, "Delete side.", ("paths", i, "side"), True)


RULE = Rule(
    code="SHAPE-9",
    level="error",
    scope="record",
    title="Path of fuel without side or greatest pressure",
    what="A path that carries fuel says its side and its greatest credible pressure; no other path has a side.",
    why="Cautions, gauges and hoses are judged by the greatest pressure that a fault can bring, not by the usual one.",
    mend="Write side and greatest with its reason and basis.",
    example=Example("systems/direct-injection.yaml", "    side: low\n", ""),
    find=find,
    kinds=("systems",),
)
