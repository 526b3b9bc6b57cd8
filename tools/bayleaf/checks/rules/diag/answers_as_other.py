"""DIAG-26: a reading answers as one that does not fit it."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.messages import either
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record


def find(record: Record, context: Context) -> Iterator[Finding]:
    """The answers of both, and whether the way leads back."""
    readings, path = context.book.of("readings"), ("answers_as",)
    other = record.data.get("answers_as")
    if other is None or other not in readings:
        return  # LINK-1 says so
    mine, theirs = context.answers.get(record.id, ()), context.answers.get(other, ())
    if mine and theirs and set(mine) != set(theirs):
        yield RULE.at(record, f"{other} has other answers: {either(list(theirs), 'and')}", path=path)
    way = [record.id]
    while other in readings and other not in way:
        way.append(other)
        other = readings[other].data.get("answers_as")
    if other == record.id:
        yield RULE.at(record, f"answers_as leads in a circle: {' → '.join([*way, other])}", path=path)


RULE = Rule(
    code="DIAG-26",
    level="error",
    scope="record",
    title="Answers as one that does not fit",
    what="A reading answers as another that has the same answers, and the way never leads back to it.",
    why="What a fault says of the other is taken over word for word.",
    mend="Name a reading with the same answers, or say in the faults what this one shows.",
    example=Example(
        "readings/rail-pressure-idle.yaml",
        "observes: [fuel-pressure]",
        "observes: [fuel-pressure]\nanswers_as: fuel-in-regulator-hose",
    ),
    find=find,
    kinds=("readings",),
)
