"""SAFE-20: a state needs equipment that the step which begins it does not use."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.facts.notes import noted, spot, step_name
from bayleaf.checks.messages import either
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record


def find(record: Record, context: Context) -> Iterator[Finding]:
    walk, machine = context.procedures.walk(record), context.procedures.machine
    wanting = {id for id, state in machine.states.items() if state.needs}
    for step, note in noted(context.procedures, record, "set", of=wanting):
        needs = machine.states[note.what].needs
        at_hand = context.procedures.hazards.used_in(step.data)
        if not at_hand & set(needs):
            message = f"{step_name(walk, step)} begins {machine.named(note.what)}, and the step uses no {either(needs)}"
            yield RULE.at(
                record,
                message,
                f"Add {needs[0]} to needs: equipment and to the step.",
                spot(record, step, "sets", "act"),
            )


RULE = Rule(
    code="SAFE-20",
    level="error",
    scope="record",
    kinds=("procedures",),
    title="State without its equipment",
    what="A state may need equipment: fuel is led only into a closed, vented and bonded container, and a jumper has a fuse and a switch. The step that begins the state names it.",
    why="Where the right container is not on the list, the nearest bucket is used.",
    mend="Add the equipment that the state needs.",
    example=Example(
        "procedures/measure-volume.yaml",
        "    equipment: [bonded-container]\n    cautions: [fuel-in-container, stop-at-the-mark]",
        "    cautions: [fuel-in-container, stop-at-the-mark]",
    ),
    find=find,
)
