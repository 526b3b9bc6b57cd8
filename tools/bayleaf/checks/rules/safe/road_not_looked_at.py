"""SAFE-47: a temporary joint that saw the road is not looked at again."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.facts.notes import spot, step_name
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record
from bayleaf.vocabulary import Acts


def find(record: Record, context: Context) -> Iterator[Finding]:
    walk, machine = context.procedures.walk(record), context.procedures.machine
    driven = [
        i
        for i, s in enumerate(walk.steps)
        if Acts.DRIVE in s.acts and any(st in machine.states and machine.states[st].connection for st in s.had | s.has)
    ]
    if not driven:
        return
    first, last = walk.steps[driven[0]], walk.steps[driven[-1]]
    if not any(Acts.LEAK_CHECK in s.own for s in walk.steps[: driven[0]]):
        yield RULE.at(
            record,
            f"{step_name(walk, first)} drives with a temporary joint on the rail, and no step before it looks for a leak",
            path=spot(record, first, "act", "when"),
        )
    if not any(Acts.LEAK_CHECK in s.own for s in walk.steps[driven[-1] + 1 :]):
        yield RULE.at(
            record,
            f"{step_name(walk, last)} drives with a temporary joint on the rail, and no later step wipes it and looks again",
            path=spot(record, last, "act", "when"),
        )


RULE = Rule(
    code="SAFE-47",
    level="error",
    scope="record",
    kinds=("procedures",),
    title="Joint that saw the road not looked at",
    what="A temporary joint that is driven is looked at with the engine running before the drive, and wiped and looked at again after it.",
    why="The road shakes what the bay did not, and the drip falls on the exhaust.",
    mend="Add a leak check before the first and after the last step that drives.",
    example=Example(
        "procedures/drive-at-full-load.yaml",
        "needs: {states: none,",
        "needs: {states: [gauge-on-rail],",
    ),
    find=find,
)
