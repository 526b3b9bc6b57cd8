"""SAFE-6: what a step took off, shut or switched on is not put back."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.facts.notes import called, part, spot
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record


def find(record: Record, context: Context) -> Iterator[Finding]:
    walk, machine = context.procedures.walk(record), context.procedures.machine
    for (act, at), since in walk.left.items():
        step = walk.steps[since]
        set_here = {n.what for n in step.notes if n.kind == "set"}
        watched = {s for s in set_here if act in machine.states[s].set_by or (at and s in record.data["leaves"])}
        implied = any(a != act and act in machine.acts_of(a) and (a, at) in walk.left for a in step.own)
        if watched or implied:
            continue  # SAFE-3 or SAFE-7 follows that state; a joint kept open on purpose is declared in leaves
        undo = machine.undo[act]
        message = f"{called(walk, since)} is to {machine.title(act)}{part(at)}, and no later step is to {machine.title(undo)}{part(at)}"
        yield RULE.at(
            record, message, f"Add a step with act: {undo}" + (f", at: {at}." if at else "."), spot(record, step, "act")
        )


RULE = Rule(
    code="SAFE-6",
    level="error",
    scope="record",
    kinds=("procedures",),
    title="Not put back",
    what=(
        "What a step disconnects, clamps, opens, pressurises or switches on, a later step puts back: the same part, by the act "
        "that undoes it. A temporary disconnection for a measurement is fine as long as it ends."
    ),
    why="A hose that stays off is the next fault of the car, and the first one that nobody looks for.",
    mend="Add the step that puts it back, at the same component.",
    example=Example(
        "procedures/look-into-regulator-hose.yaml",
        "\n  - {do: Push the hose on the regulator., act: connect, at: regulator-vacuum-hose}",
        "",
    ),
    find=find,
)
