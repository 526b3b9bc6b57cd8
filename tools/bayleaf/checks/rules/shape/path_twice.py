"""SHAPE-10: two paths of one name."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record


def find(record: Record, _context: Context) -> Iterator[Finding]:
    """The later of the two is named."""
    seen: set[str] = set()
    for i, path in enumerate(record.data["paths"]):
        if path["name"] in seen:
            yield RULE.at(record, f"two paths are called {path['name']}", path=("paths", i, "name"))
        seen.add(path["name"])


RULE = Rule(
    code="SHAPE-10",
    level="error",
    scope="record",
    title="Two paths of one name",
    what="The paths of a system have names of their own.",
    why="Pages and messages name a path by its name, and would mean both.",
    mend="Give one of the two another name.",
    example=Example("systems/port-injection-return.yaml", "name: return\n", "name: supply\n"),
    find=find,
    kinds=("systems",),
)
