"""SAFE-51: a step does again what was done and not yet undone."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.facts.notes import called, part, spot, step_name
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record
from bayleaf.safety.steps import WalkStep


def find(record: Record, context: Context) -> Iterator[Finding]:
    walk, machine = context.procedures.walk(record), context.procedures.machine
    for step in walk.own:  # a followed procedure does not know what was done before it
        act = step.data.get("act", "")
        since = _goes_on(step, act) if act in machine.undo else None
        if since is None:
            continue
        at = part(step.data.get("at", ""))
        message = f"{step_name(walk, step)} is to {machine.title(act)}{at}, which {called(walk, since)} did, and nothing has undone it since"
        yield RULE.at(
            record, message, f"Put a step with act: {machine.undo[act]} between them.", spot(record, step, "act")
        )


def _goes_on(step: WalkStep, act: str) -> int | None:
    at = step.data.get("at", "")
    return step.doing.get((act, at), step.doing.get((act, "")) if not at else None)


RULE = Rule(
    code="SAFE-51",
    level="error",
    scope="record",
    kinds=("procedures",),
    title="Done twice, undone never",
    what="What was opened, disconnected, clamped or switched on is not opened, disconnected, clamped or switched on again before it was put back.",
    why="Between the two a step has fallen out, and it was the one that made things safe again.",
    mend="Add the step that puts it back between the two.",
    example=Example(
        "procedures/take-gauge-off.yaml",
        "  - {do: Switch the key on., act: key-on}\n",
        "  - {do: Switch the key on., act: key-on}\n  - {do: Switch the key on again., act: key-on}\n",
    ),
    find=find,
)
