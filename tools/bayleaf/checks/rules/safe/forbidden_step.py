"""SAFE-4: a step does what a standing state forbids."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.facts.notes import called, noted, part, spot, step_name
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record
from bayleaf.safety.machine import Machine
from bayleaf.safety.steps import Note, WalkStep


def find(record: Record, context: Context) -> Iterator[Finding]:
    walk, machine = context.procedures.walk(record), context.procedures.machine
    said = set()
    for step, note in noted(context.procedures, record, "forbidden", "under-way"):
        state, act = machine.named(note.what), machine.title(note.other)
        if (step.number, note.what) in said or (
            note.other in step.acts and _implied(machine, note.other, step, note.what)
        ):
            continue
        said.add((step.number, note.what))
        if note.kind == "forbidden":
            message = f"{step_name(walk, step)} is to {act}, forbidden while {state} stands{part(note.at)}, which it does since {called(walk, note.since)}"
        else:
            message = f"{step_name(walk, step)} begins {state}, which forbids to {act}, and that still goes on since {called(walk, note.since)}"
        yield RULE.at(record, message, _help(machine, note), spot(record, step, "act", "when"))


def _implied(machine: Machine, act: str, step: WalkStep, state: str) -> bool:
    """Whether another forbidden act of the step brings this one with it, so that it is said once."""
    return any(a != act and act in machine.acts_of(a) for a in step.acts & machine.states[state].forbids)


def _help(machine: Machine, note: Note) -> str:
    ended = " or ".join(sorted(machine.states[note.what].ended_by))
    if note.kind == "under-way":
        return f"Put the step with act: {machine.undo[note.other]} before it."
    return f"End the state first (act: {ended})." if ended else "Take off first what was fitted."


RULE = Rule(
    code="SAFE-4",
    level="error",
    scope="record",
    kinds=("procedures",),
    title="Step that a standing state forbids",
    what=(
        "Each state says which acts it forbids. No step does one of them while the state stands, neither by its act nor by "
        "its condition, and no state begins while an act that it forbids still goes on."
    ),
    why="An open fuel joint and a key that is turned make a fire; a gauge on the rail does not belong on the road.",
    mend="End the state first, or move the step.",
    example=Example(
        "procedures/fit-gauge.yaml",
        "  - {do: Look at the joint with a lamp., act: leak-check, at: fuel-test-port, cautions: [fuel-jet, stop-at-any-leak]}\n",
        "  - {do: Crank the engine., act: crank}\n"
        "  - {do: Look at the joint with a lamp., act: leak-check, at: fuel-test-port, cautions: [fuel-jet, stop-at-any-leak]}\n",
    ),
    find=find,
)
