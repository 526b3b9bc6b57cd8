"""SAFE-14: a gauge is there, and the joint is opened before it was seen at zero."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.facts.notes import called, spot, step_name
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record
from bayleaf.vocabulary import Acts, States


def find(record: Record, context: Context) -> Iterator[Finding]:
    walk, machine = context.procedures.walk(record), context.procedures.machine
    for step in walk.doing(Acts.OPEN_JOINT):
        fitted = sorted({s for s, _at in step.before if s in machine.states and machine.states[s].connection})
        low = any(p.carries == "fuel" and p.side != "high" for p in step.act_paths)
        if not low or not fitted or step.stood(States.ZERO_SEEN):
            continue
        ended = walk.last("ended", States.ZERO_SEEN, walk.steps.index(step))
        how = f", {called(walk, ended)} ended what was seen before" if ended is not None else ""
        message = f"{step_name(walk, step)} opens a fuel joint with {machine.named(fitted[0])}, and nobody has read zero on it{how}"
        yield RULE.at(
            record,
            message,
            f"Read it after the relief in a step with proves: [{States.ZERO_SEEN}].",
            spot(record, step, "act"),
        )


RULE = Rule(
    code="SAFE-14",
    level="error",
    scope="record",
    kinds=("procedures",),
    title="Zero not read on the gauge",
    what="While a gauge or a sender is fitted, a fuel joint is opened only after it was read at zero, and before anything brings pressure back.",
    why="A relief that somebody believes in is not a relief; with a gauge on the rail there is no reason to believe.",
    mend="Add a step that reads zero and proves it, directly before the joint is opened.",
    example=Example("procedures/take-gauge-off.yaml", "\n    proves: [zero-seen]", ""),
    find=find,
)
