"""SHAPE-12: normal answer missing or out of place."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record


def find(record: Record, _context: Context) -> Iterator[Finding]:
    """By answers and purpose."""
    wants = "answers" in record.data and record.data.get("purpose", "diagnosis") == "diagnosis"
    if wants and "normal" not in record.data:
        yield RULE.at(record, "the question has no normal answer", path=("answers",))
    elif not wants and "normal" in record.data:
        yield RULE.at(record, "only a question for diagnosis has a normal answer", "Delete normal.", ("normal",), True)


RULE = Rule(
    code="SHAPE-12",
    level="error",
    scope="record",
    title="Normal answer missing or out of place",
    what="A question that is taken for diagnosis says which answer is normal; no other reading does.",
    why="Without it no fault can say that the answer is as it should be.",
    mend="Write normal with one of the answers, or another purpose.",
    example=Example("readings/fuel-in-regulator-hose.yaml", "normal: dry\n", ""),
    find=find,
    kinds=("readings",),
)
