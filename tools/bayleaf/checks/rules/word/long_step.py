"""WORD-2: long sentence in a step."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.prose.writing import sentences, steps_of, words
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record


def find(record: Record, _context: Context) -> Iterator[Finding]:
    """Every sentence of every step."""
    for path, text in steps_of(record):
        most = max((words(s) for s in sentences(text)), default=0) if words(text) > 20 else 0
        if most > 20:
            yield RULE.at(record, f"step {path[1] + 1} has a sentence of {most} words", path=path)


RULE = Rule(
    code="WORD-2",
    level="warning",
    scope="record",
    title="Long sentence in a step",
    what="A sentence of a step has at most 20 words.",
    why="A step is read standing, between two looks at the car.",
    mend="Cut it into two steps, or leave out what the field says already.",
    example=Example(
        "procedures/measure-idle-pressure.yaml",
        "do: Stop the engine.",
        "do: Stop the engine by turning the key all the way back to where it was before you began with this piece of work on the car.",
    ),
    find=find,
    kinds=("procedures",),
    excusable=True,
)
