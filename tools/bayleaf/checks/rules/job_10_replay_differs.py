"""JOB-10: job whose replay leads elsewhere."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.rule import Example, Rule
from bayleaf.diagnosis.replay import CODE, MEND, replay
from bayleaf.finding import Finding


def check(context: Context) -> Iterator[Finding]:
    """Every job of the book that says what must be left."""
    yield from replay(context.book)


RULE = Rule(
    code=CODE,
    level="error",
    scope="replay",
    title="Replay that leads elsewhere",
    what=(
        "A job of the book leaves exactly the faults that it expects, no more and no fewer. Jobs are replayed by `bayleaf check --jobs`; "
        "a plain check stays fast."
    ),
    why="A job is the book's own trial: whoever changes a fault, a band or an instrument sees here whose diagnosis it changes.",
    mend=MEND,
    example=Example(
        "faults/fuel-filter-restricted.yaml",
        "nearly-blocked: {like: partly, rail-pressure-primed: low, rail-pressure-idle: low}",
        "nearly-blocked: {like: partly, rail-pressure-primed: high, rail-pressure-idle: low}",
    ),
    check=check,
)
