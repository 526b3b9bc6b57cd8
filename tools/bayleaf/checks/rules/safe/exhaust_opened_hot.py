"""SAFE-63: an exhaust joint is opened before the exhaust is cool."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.facts.notes import called, spot, step_name
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record
from bayleaf.vocabulary import Acts, States


def find(record: Record, context: Context) -> Iterator[Finding]:
    walk = context.procedures.walk(record)
    for step in walk.doing(Acts.OPEN_JOINT):
        if not any(p.carries == "exhaust" for p in step.act_paths) or step.stood(States.EXHAUST_COOL):
            continue
        ended = walk.last("ended", States.EXHAUST_COOL, walk.steps.index(step))
        how = f"{called(walk, ended)} ended it" if ended is not None else "no step made it so"
        words = f"{step_name(walk, step)} opens an exhaust joint, and the exhaust is not known to be cool: {how}"
        yield RULE.at(record, words, path=spot(record, step, "act"))


RULE = Rule(
    code="SAFE-63",
    level="error",
    scope="record",
    kinds=("procedures",),
    title="Exhaust opened hot",
    what="A joint or a sensor hole of the exhaust is opened only after a step has let the exhaust cool, and before the engine runs again.",
    why="A converter holds the heat that burns skin long after the engine stopped.",
    mend="Let engine and exhaust cool in a step before it, act: cool-down.",
    example=Example(
        "procedures/read-boost.yaml",
        "steps:\n",
        "steps:\n  - {do: Unscrew the joint of the turbine., act: open-joint, at: turbocharger}\n",
    ),
    find=find,
)
