"""DIAG-20: the steps last longer than the procedure."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.messages import number
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.quantities import to_si, units
from bayleaf.records import Record


def find(record: Record, context: Context) -> Iterator[Finding]:
    second, lasts = units()["s"].dimension, []
    for i, step in context.procedures.steps_with(record, "lasts"):
        data = step["lasts"]
        if data["unit"] in units() and units()[data["unit"]].dimension == second:
            lasts.append((to_si(data["value"], data["unit"], "none"), i))
    total = sum(t for t, _i in lasts)
    if total > record.data["minutes"] * 60:
        words = f"the steps last {number(total / 60)} minutes, and the procedure takes {number(record.data['minutes'])}"
        yield RULE.at(record, words, path=("steps", max(lasts)[1], "lasts", "value"))


RULE = Rule(
    code="DIAG-20",
    level="error",
    scope="record",
    kinds=("procedures",),
    title="Steps longer than the procedure",
    what="What the steps of a procedure last, taken together, is not more than its `minutes`.",
    why="The order of tests is worked out from the minutes. One of the two figures has slipped.",
    mend="Correct the step or the minutes.",
    example=Example(
        "procedures/measure-primed-pressure.yaml", "lasts: {value: 2, unit: s,", "lasts: {value: 200, unit: s,"
    ),
    find=find,
)
