"""SAFE-2: a caution stands after the step that it guards."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.facts.notes import called
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record


def find(record: Record, context: Context) -> Iterator[Finding]:
    walk = context.procedures.walk(record)
    for met in context.procedures.unguarded(record):
        guards = context.procedures.guards(met.hazard)
        late = next((i for i, s in enumerate(walk.steps) if i > met.index and guards & set(s.cautions)), None)
        if late is None:
            continue
        caution = min(guards & set(walk.steps[late].cautions))
        step = walk.steps[late]
        path = (
            (*step.place, "cautions", step.cautions.index(caution))
            if step.source == record.id
            else (*step.place, "follow")
        )
        why = context.procedures.hazards.why(walk, met)
        message = f"the caution {caution} comes with {called(walk, late)}, but {called(walk, met.index)} already meets its hazard, because {why}"
        yield RULE.at(record, message, f"Move it to {called(walk, met.index)} or before.", path)


RULE = Rule(
    code="SAFE-2",
    level="error",
    scope="record",
    kinds=("procedures",),
    title="Caution after the step that it guards",
    what="A caution is shown before the first step that meets its hazard.",
    why="People read a step, do it, and then read on; a warning that follows is a report of an accident.",
    mend="Move the caution to the first step that needs it.",
    example=Example(
        "procedures/fit-gauge.yaml",
        "at: fuel-test-port, cautions: [fuel-jet, pressure-not-seen]}\n  - {do: Screw the gauge on the test port., act: close-joint, at: fuel-test-port, equipment: [fuel-pressure-gauge], cautions: [fuel-jet],",
        "at: fuel-test-port, cautions: [fuel-jet]}\n  - {do: Screw the gauge on the test port., act: close-joint, at: fuel-test-port, equipment: [fuel-pressure-gauge], cautions: [fuel-jet, pressure-not-seen],",
    ),
    find=find,
)
