"""SAFE-43: a reading is taken without what makes it valid."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.facts.notes import step_name
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record


def find(record: Record, context: Context) -> Iterator[Finding]:
    walk = context.procedures.walk(record)
    for step in walk.taking:
        reading = context.book.of("readings").get(step.data.get("takes", {}).get("reading"))
        if reading is None or not reading.sound:
            continue
        for state in reading.data["valid_if"]:
            if state in context.procedures.machine.states and not step.stands(state):
                message = f"{step_name(walk, step)} takes {reading.id}, which is valid only with {context.procedures.machine.named(state)}, and nothing has made sure of it"
                yield RULE.at(
                    record,
                    message,
                    f"Inherit the preparation that sets {state}, set it in a step, or name it in needs.",
                    (*step.place, "takes", "reading"),
                )


RULE = Rule(
    code="SAFE-43",
    level="warning",
    scope="record",
    kinds=("procedures",),
    title="Reading without what makes it valid",
    what="The states in a reading's `valid_if` stand when it is taken: from a preparation, from `needs`, or set by a step before.",
    why="A pump that sucks air or a weak battery makes a low reading, and a good pump is thrown away.",
    mend="See to the state in a step, in a preparation or in needs.",
    example=Example("procedures/bay-preparation.yaml", ", sets: [fuel-above-quarter]", ""),
    find=find,
)
