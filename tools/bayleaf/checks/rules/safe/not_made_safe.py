"""SAFE-5: something is opened that was not made safe, or no longer is."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.facts.notes import called, noted, spot, step_name
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record


def find(record: Record, context: Context) -> Iterator[Finding]:
    walk, machine = context.procedures.walk(record), context.procedures.machine
    for step, note in noted(context.procedures, record, "lacks"):
        index = next(i for i, s in enumerate(walk.steps) if s is step)
        ended = walk.last("ended", note.other, index + 1)
        how = f"{called(walk, ended)} ended it" if ended is not None else "no step made it so"
        message = f"{step_name(walk, step)} begins {machine.named(note.what)}, and {machine.named(note.other)} does not stand: {how}"
        yield RULE.at(record, message, _help(context, note.other), spot(record, step, "act", "sets"))


def _help(context: Context, state: str) -> str:
    makers = (
        sorted(context.procedures.machine.states[state].set_by) if state in context.procedures.machine.states else []
    )
    if makers:
        return f"Put a step with act: {makers[0]} before it, and nothing after it that ends it."
    followed = context.procedures.makers(state)
    return (
        f"Follow {followed[0]} before it, and let nothing come between that ends it."
        if followed
        else "Put the step that sets it before this one."
    )


RULE = Rule(
    code="SAFE-5",
    level="error",
    scope="record",
    kinds=("procedures",),
    title="Opened without being made safe",
    what=(
        "A fuel joint is opened only while the pressure is relieved and engine and exhaust are cool. Each of these states ends "
        "with certain acts: relief is gone as soon as the key turns, the pump runs or the engine cools down after the relief."
    ),
    why="Most burns at a fuel joint happen to people who did relieve the pressure, and then turned the key once more.",
    mend="Make it safe again directly before the step: cool first, relieve last.",
    example=Example(
        "procedures/fit-gauge.yaml",
        "  - {do: Take the cap off the test port.,",
        "  - {do: Switch the key on., act: key-on}\n  - {do: Switch the key off., act: key-off}\n  - {do: Take the cap off the test port.,",
    ),
    find=find,
)
