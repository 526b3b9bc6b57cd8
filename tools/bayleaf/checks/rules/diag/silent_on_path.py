"""DIAG-5: a fault is silent about a reading on its own path."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.messages import either
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record


def find(record: Record, context: Context) -> Iterator[Finding]:
    claims = context.claims
    if record.id not in claims.faults:
        return
    groups: dict[tuple[str, tuple[str, ...]], list[str]] = {}
    told: set[tuple[str, str]] = set()
    for system in claims.systems(record.id):
        beside = claims.beside(record.id, system)
        every = frozenset(beside)
        for stage, answers in claims.stages(record.id, system).items():
            if every <= answers.keys():
                continue
            missing = tuple(r for r in beside if r not in answers and (stage, r) not in told)
            told |= {(stage, r) for r in missing}
            if missing:
                groups.setdefault((system, missing), []).append(stage)
    for (system, missing), stages in groups.items():
        who = f"stage {stages[0]} says" if len(stages) == 1 else f"the stages {either(stages, 'and')} say"
        words = f"{who} nothing of {either(missing, 'and')}, on or beside the paths through the part in {system}"
        yield RULE.at(record, words, path=("stages", stages[0]), key=True)


RULE = Rule(
    code="DIAG-5",
    level="error",
    scope="record",
    kinds=("faults",),
    title="Silent about a reading on its path",
    what=(
        "Each stage of a fault speaks of every reading for diagnosis on each path through its part, before and after it, and on "
        "every path that shares a component with one of these: by itself, by `like`, by `differs` or by `elsewhere`."
    ),
    why=(
        "Silence proves nothing: a fault that says nothing of a reading is never cleared by it. That the filter leaves the voltage "
        "alone is knowledge, and it has to be written to be used."
    ),
    mend="Say what the reading shows, a list where it may be either, or name its path in elsewhere.",
    example=Example("faults/regulator-hose-off.yaml", "    rail-pressure-idle: high\n", ""),
    find=find,
)
