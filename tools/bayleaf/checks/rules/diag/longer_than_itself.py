"""DIAG-20: the steps last longer than the procedure waits."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.messages import number
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.quantities import to_si, units
from bayleaf.records import Record
from bayleaf.vocabulary import Acts

_MINUTE = 60  # seconds


def find(record: Record, context: Context) -> Iterator[Finding]:
    second = units()["s"].dimension
    waited: list[tuple[float, int]] = []
    driven: list[tuple[float, int]] = []
    for i, step in context.procedures.steps_with(record, "lasts"):
        data = step["lasts"]
        if data["unit"] in units() and units()[data["unit"]].dimension == second:
            # Whoever drives does not wait.
            (driven if step.get("act") == Acts.DRIVE else waited).append(
                (to_si(data["value"], data["unit"], "none"), i)
            )
    minutes = record.data["minutes"]
    for kind, spans, given in (("waiting", waited, minutes.get("waiting", 0)), ("hands", driven, minutes["hands"])):
        total = sum(t for t, _i in spans)
        # Whole minutes: a few seconds of cranking are no waiting.
        if total // _MINUTE > given:
            message = f"the steps last {number(total / _MINUTE)} minutes, and minutes / {kind} is {given}"
            yield RULE.at(record, message, path=("steps", max(spans)[1], "lasts", "value"))


RULE = Rule(
    code="DIAG-20",
    level="error",
    scope="record",
    kinds=("procedures",),
    title="Steps longer than the procedure",
    what=(
        "What the steps of a procedure last, taken together, is not more than its `waiting` minutes; what its drives "
        "last is not more than its `hands` minutes. Each is taken in whole minutes."
    ),
    why="The order of tests is worked out from the minutes. One of the two figures has slipped.",
    mend="Correct the step or the minutes.",
    example=Example(
        "procedures/measure-primed-pressure.yaml", "lasts: {value: 2, unit: s,", "lasts: {value: 200, unit: s,"
    ),
    find=find,
)
