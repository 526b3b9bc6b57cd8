"""JOB-10: job whose replay leads elsewhere."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding


def find(context: Context) -> Iterator[Finding]:
    """Every job of the book that says what must be left."""
    from bayleaf.diagnosis.jobs.replay import replay  # a check without jobs does not wait for it

    for job, said in replay(context.book):
        yield RULE.at(job, said, path=("expects", "left"))


RULE = Rule(
    code="JOB-10",
    level="error",
    scope="replay",
    title="Replay that leads elsewhere",
    what=(
        "A job of the book leaves exactly the faults that it expects, no more and no fewer. Jobs are replayed by `bayleaf check --jobs`; "
        "a plain check stays fast."
    ),
    why="A job is the book's own trial: whoever changes a fault, a band or an instrument sees here whose diagnosis it changes.",
    mend="Look at what cleared the missing fault, or at what should have cleared the one too many; then mend fault or job.",
    example=Example(
        "faults/fuel-filter-restricted.yaml",
        "nearly-blocked: {like: partly, rail-pressure-primed: low, rail-pressure-idle: low}",
        "nearly-blocked: {like: partly, rail-pressure-primed: high, rail-pressure-idle: low}",
    ),
    find=find,
)
