"""DIAG-22: a fault that disturbs nothing, or a reading for diagnosis that observes nothing."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.rule import Example, Rule
from bayleaf.diagnosis.car.car import usable
from bayleaf.diagnosis.faults.spared import disturbed
from bayleaf.diagnosis.faults.stages import is_diagnosis
from bayleaf.finding import Finding
from bayleaf.records import Record, listed


def find(record: Record, context: Context) -> Iterator[Finding]:
    """A fault by itself, by its part and by what it damages; a reading by `observes`."""
    if not usable(record):
        return
    if record.kind == "readings":
        if is_diagnosis(record) and not listed(record.data.get("observes")):
            yield RULE.at(record, "this reading observes nothing, so no fault leaves it healthy", path=("title",))
        elif not is_diagnosis(record) and "observes" in record.data:
            message = "only a reading for diagnosis observes what a fault disturbs"
            yield RULE.at(record, message, "Delete observes, or change purpose.", ("observes",), True)
    elif not disturbed(context.book, record):
        message = f"this fault disturbs nothing: it has no list, and {record.data['part']} carries no variables"
        yield RULE.at(record, message, path=("part",))


RULE = Rule(
    code="DIAG-22",
    level="error",
    scope="record",
    title="Nothing is disturbed or observed",
    what="A fault disturbs variables: its own list, or those that its part carries. A reading for diagnosis observes variables, or the component that it looks at.",
    why="Without them the graph says nothing, and every answer has to be said by hand.",
    mend="Name the variables, in the fault or in the component, or what the reading looks at.",
    example=Example("readings/rail-pressure-primed.yaml", "observes: [fuel-pressure]\n", ""),
    find=find,
    kinds=("faults", "readings"),
)
