"""DIAG-27: an engine cools in no time."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record
from bayleaf.vocabulary import Acts


def find(record: Record, context: Context) -> Iterator[Finding]:
    if record.data["minutes"].get("waiting", 0):
        return
    for i, step in context.procedures.steps_with(record, "act"):
        if step["act"] == Acts.COOL_DOWN:
            message = f"step {i + 1} lets the engine cool, and the procedure waits for nothing"
            yield RULE.at(record, message, path=("steps", i, "act"))


RULE = Rule(
    code="DIAG-27",
    level="error",
    scope="record",
    kinds=("procedures",),
    title="Cooling that takes no time",
    what="A procedure whose own steps let the engine cool has `waiting` minutes for it.",
    why="A hot engine takes the better part of an hour to cool. Left out, the test looks quick and is put first.",
    mend="Write in minutes what it waits: waiting, beside hands.",
    example=Example("procedures/take-gauge-off.yaml", "minutes: {hands: 10, waiting: 45}", "minutes: {hands: 10}"),
    find=find,
)
