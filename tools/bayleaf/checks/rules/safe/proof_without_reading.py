"""SAFE-15: a step proves a state without the reading that proves it."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record


def find(record: Record, context: Context) -> Iterator[Finding]:
    for i, step in context.procedures.steps_with(record, "proves"):
        taken = step.get("takes", {}).get("reading")
        for n, state in enumerate(step["proves"]):
            proof = (
                context.procedures.machine.states[state].proof.get("reading")
                if state in context.procedures.machine.states
                else taken
            )
            if taken is None or (proof and taken != proof):
                message = f"step {i + 1} proves {state} and takes {taken or 'no reading'}"
                help = (
                    f"Write takes: {{reading: {proof}, instrument: …}}."
                    if proof
                    else "Name the reading that proves it in takes."
                )
                yield RULE.at(record, message, help, ("steps", i, "proves", n))
    for i, step in context.procedures.steps_with(record, "sets"):
        for n, state in enumerate(step["sets"]):
            if state in context.procedures.machine.states and context.procedures.machine.states[state].proof:
                message = f"step {i + 1} sets {state}, which only a reading can prove"
                yield RULE.at(
                    record, message, "Write it in proves, with the reading in takes.", ("steps", i, "sets", n)
                )


RULE = Rule(
    code="SAFE-15",
    level="error",
    scope="record",
    kinds=("procedures",),
    title="Proof without its reading",
    what="A step that proves a state takes the reading by which the state is proved; such a state is never simply set.",
    why="A zero that nobody read proves nothing.",
    mend="Take the reading in the same step.",
    example=Example(
        "procedures/take-gauge-off.yaml",
        "    takes: {reading: rail-pressure-relieved, instrument: fuel-pressure-gauge}\n    when: after-relief\n",
        "    when: after-relief\n",
    ),
    find=find,
)
