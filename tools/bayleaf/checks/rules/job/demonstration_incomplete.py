"""JOB-1: job of the book that does not say where it leads."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.facts.job_fields import DEMONSTRATION
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record


def find(record: Record, _context: Context) -> Iterator[Finding]:
    """Jobs of the book itself; a shop's own are JOB-2."""
    for name in DEMONSTRATION if record.file.startswith("kb/") else ():
        if name not in record.data:
            yield RULE.at(record, f"the job has no {name}")


RULE = Rule(
    code="JOB-1",
    level="error",
    scope="record",
    title="Job of the book that does not say where it leads",
    what="A job in kb/jobs says that it is invented, what the true cause is and what a replay must leave.",
    why="It is there to prove the book: the replay is compared with it.",
    mend="Write invented: true, true_cause and expects.",
    example=Example("jobs/parks-van-no-power.yaml", "true_cause: [fuel-filter-restricted]\n", ""),
    find=find,
    kinds=("jobs",),
)
