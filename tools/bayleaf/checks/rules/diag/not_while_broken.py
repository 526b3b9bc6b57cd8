"""DIAG-11: a first reading needs what the symptom prevents."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record, listed


def find(record: Record, context: Context) -> Iterator[Finding]:
    prevents = set(listed(record.data["prevents"]))
    for i, id in enumerate(listed(record.data["first"])):
        reading = context.book.of("readings").get(id)
        if reading is None or not reading.sound or not (when := reading.data.get("when")):
            continue
        needs = {*context.procedures.machine.conditions.get(when, ((), ()))[1], *reading.data.get("valid_if", [])}
        hit = sorted(needs & prevents)
        if hit:
            message = f"{id} is read at {when}, which needs {context.procedures.machine.named(hit[0])}, and this symptom prevents that"
            yield RULE.at(record, message, path=("first", i))


RULE = Rule(
    code="DIAG-11",
    level="error",
    scope="record",
    kinds=("symptoms",),
    title="First reading that the symptom prevents",
    what="No first reading of a symptom needs a state that the symptom prevents: an engine that does not start is not read at idle.",
    why="The first line of the page cannot be done, and the reader stops trusting the second.",
    mend="Name readings that can be taken on a car with this symptom.",
    example=Example(
        "symptoms/rough-idle.yaml",
        "first: [fuel-in-regulator-hose]\nprevents: none",
        "first: [rail-pressure-idle]\nprevents: [running]",
    ),
    find=find,
)
