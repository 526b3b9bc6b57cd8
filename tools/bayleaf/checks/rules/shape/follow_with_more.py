"""SHAPE-13: step that follows and does something else."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record


def find(record: Record, context: Context) -> Iterator[Finding]:
    """Fields beside follow."""
    for i, step in context.procedures.steps_with(record, "follow"):
        for name in step:
            if name not in ("follow", "cautions", "when"):
                yield RULE.at(
                    record, f"step {i + 1} follows {step['follow']} and has {name}", path=("steps", i, name), key=True
                )


RULE = Rule(
    code="SHAPE-13",
    level="error",
    scope="record",
    title="Step that follows and does something else",
    what="A step that follows another procedure has beside it only cautions and the condition.",
    why="What the followed procedure does stands there; an act here would be done at no known moment of it.",
    mend="Make a step of its own for it.",
    example=Example(
        "procedures/fit-gauge.yaml",
        "  - {follow: relieve-fuel-pressure}",
        "  - {follow: relieve-fuel-pressure, act: key-off}",
    ),
    find=find,
    kinds=("procedures",),
)
