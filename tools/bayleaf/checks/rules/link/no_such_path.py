"""LINK-8: path that no car with the fault can have."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.messages import either, mean
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record


def find(record: Record, context: Context) -> Iterator[Finding]:
    """By the systems that the fault names, else those with a path through its part, and by what a car may have beside them."""
    named = record.data.get("elsewhere", {}).get("normal_on", [])
    systems = context.claims.systems(record.id) if named else []
    known = set().union(*(context.claims.paths(s) for s in systems))
    for i, name in enumerate(named if known else ()):
        if name not in known:
            help = mean(
                name,
                known,
                f"It may be {either(sorted(context.layout.named(systems)))}, or a path of a system of another family.",
            )
            yield RULE.at(
                record, f"no car with {either(systems)} has a path {name}", help, ("elsewhere", "normal_on", i)
            )


RULE = Rule(
    code="LINK-8",
    level="error",
    scope="record",
    title="Path that no such car has",
    what="A fault names paths by names that one of its systems gives to a path, or a system of another family, which a car may have beside it.",
    why="Readings on a path that does not exist are never made normal, so the fault stays silent about them.",
    mend="Take the name of a path as the system writes it.",
    example=Example(
        "faults/high-pressure-pump-worn.yaml",
        "felt_as:",
        "elsewhere: {normal_on: [feet], because: The feed is not touched.}\nfelt_as:",
    ),
    find=find,
    kinds=("faults",),
)
