"""LINK-8: path that none of the systems has."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.answers import fault_systems
from bayleaf.checks.context import Context
from bayleaf.checks.rule import Example, Rule
from bayleaf.checks.words import either, mean
from bayleaf.finding import Finding
from bayleaf.records import Record, listed, mapped


def check(record: Record, context: Context) -> Iterator[Finding]:
    """By the systems that the fault names, else those with a path through its part."""
    named = listed(mapped(record.data.get("elsewhere")).get("normal_on"))
    systems = fault_systems(record, context) if named else []
    known = {p["name"] for s in systems for p in listed(context.book.of("systems")[s].data.get("paths"))}
    for i, name in enumerate(named if known else ()):
        if name not in known:
            help = mean(name, known, f"It may be {either(sorted(known))}.")
            yield RULE.at(record, f"none of {either(systems, 'and')} has a path {name}", help, ("elsewhere", "normal_on", i))


RULE = Rule(
    code="LINK-8",
    level="error",
    scope="record",
    title="Path that none of the systems has",
    what="A fault names paths by names that at least one of its systems gives to a path.",
    why="Readings on a path that does not exist are never made normal, so the fault stays silent about them.",
    mend="Take the name of a path as the system writes it.",
    example=Example(
        "faults/high-pressure-pump-worn.yaml",
        "felt_as:",
        "elsewhere: {normal_on: [feet], because: The feed is not touched.}\nfelt_as:",
    ),
    check=check,
    kinds=("faults",),
)
