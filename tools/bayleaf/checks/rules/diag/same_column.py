"""DIAG-7: two readings with the same column."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.messages import either
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding


def find(context: Context) -> Iterator[Finding]:
    said: set[tuple[str, ...]] = set()
    for system, record in context.book.of("systems").items():
        for group in context.claims.isolation(system).same if record.sound else ():
            readings = context.book.of("readings")
            if group not in said and len({context.claims.healthy(system, r) for r in group}) == 1:
                said.add(group)
                message = f"on {system} this reading says of every fault what {either(group[:-1], 'and')} says too"
                yield RULE.at(readings[group[-1]], message, path=("title",))


RULE = Rule(
    code="DIAG-7",
    level="warning",
    scope="replay",
    title="Two readings with the same column",
    what="On one system two readings show the same answers in every stage of every fault.",
    why="Whoever has taken one of them learns nothing from the other, so either the book knows too little or one of them is superfluous.",
    mend="Say in the faults where they differ, or leave one out.",
    excusable=True,
    example=Example(
        "faults/high-pressure-pump-worn.yaml",
        "worn: {high-side-pressure-idle: [normal, low],",
        "worn: {high-side-pressure-idle: low,",
    ),
    find=find,
)
