"""BASIS-2: invented number outside vehicles and jobs."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.messages import field
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record

_SIGNS = (b"invented",)


def find(record: Record, context: Context) -> Iterator[Finding]:
    """Every basis of a record of another kind."""
    if record.kind in ("vehicles", "jobs") or not context.texts.may_hold(record, _SIGNS):
        return
    for path, basis in context.references.bases(record):
        if "invented" in basis:
            yield RULE.at(record, f"{field(record, path[:-1])} is invented", path=path)


RULE = Rule(
    code="BASIS-2",
    level="error",
    scope="record",
    title="Invented number outside vehicles and jobs",
    what="Only vehicles and jobs of the demonstration hold invented numbers.",
    why="Everywhere else a reader may take the number for real and judge a car by it.",
    mend="Name a source, or practice where it is common practice; else leave the number out.",
    example=Example(
        "systems/port-injection-return.yaml",
        "rail-pressure-idle: {min: 27, max: 56, unit: psi, means: spread, basis: {practice: true}}",
        "rail-pressure-idle: {min: 27, max: 56, unit: psi, means: spread, basis: {invented: true}}",
    ),
    find=find,
)
