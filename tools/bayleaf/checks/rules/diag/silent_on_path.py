"""DIAG-5: what a fault reaches and does not speak of, counted."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.rule import Example, Rule
from bayleaf.diagnosis.faults.matrix import matrix_of
from bayleaf.finding import Finding
from bayleaf.records import Record

FAULTS = 4  # how many are named in one line


def find(context: Context) -> Iterator[Finding]:
    """System by system, over the stages of the faults that it can have."""
    for record in context.book.of("systems").values():
        if record.sound:
            yield from _system(record, context)


def _system(record: Record, context: Context) -> Iterator[Finding]:
    matrix = matrix_of(context.book, context.claims.car(record.id))
    silent: Counter[str] = Counter()
    for mask in matrix.silent.values():
        silent.update(row.fault for row in matrix.rows_in(mask))
    if silent:
        most = ", ".join(f"{fault} {count}" for fault, count in silent.most_common(FAULTS))
        cells = len(matrix.rows) * len(matrix.healthy)
        message = f"{silent.total()} of {cells} answers are open, because something reaches them and no fault says what they show; most with {most}"
        yield RULE.at(record, message, path=("title",))


RULE = Rule(
    code="DIAG-5",
    level="advice",
    scope="replay",
    title="Reached and unsaid",
    what="For each system, how many answers are open: something that the fault disturbs reaches them, or they cannot be taken, and the fault does not say what they show. It is counted when jobs are replayed.",
    why="Silence proves nothing about what a disturbed variable reaches: such a fault is never cleared by that reading. It is counted and never demanded, because a guess would be worse.",
    mend="Where it is known, say what the reading shows, a list where it may be either. Where it is not, leave it.",
    example=Example("faults/regulator-hose-off.yaml", "    rail-pressure-idle: high\n", ""),
    find=find,
    excusable=True,
)
