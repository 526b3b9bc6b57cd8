"""LINK-9: stage that the fault does not have."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.facts.cycles import cycles
from bayleaf.checks.messages import either, mean
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record


def find(record: Record, context: Context) -> Iterator[Finding]:
    """Like inside stages and differs; systems and stages that differs names."""
    stages = record.data["stages"]
    for name, stage in stages.items():
        if "like" in stage and stage["like"] not in stages:
            help = mean(stage["like"], stages, f"It may be {either(stages)}.")
            yield RULE.at(record, f"there is no stage {stage['like']}", help, ("stages", name, "like"))
    for cycle in cycles({name: [s["like"]] if "like" in s else [] for name, s in stages.items()}):
        yield RULE.at(
            record, f"like leads in a circle: {' → '.join([*cycle, cycle[0]])}", path=("stages", cycle[0], "like")
        )
    systems = context.claims.systems(record.id)
    for system, by_stage in record.data.get("differs", {}).items():
        if systems and system in context.book.of("systems") and system not in systems:
            message = f"the fault does not occur on {system}, only on {either(systems, 'and')}"
            yield RULE.at(record, message, path=("differs", system), key=True)
        for name in by_stage:
            if name != "all" and name not in stages:
                help = mean(name, [*stages, "all"], f"It may be {either([*stages, 'all'])}.")
                yield RULE.at(record, f"there is no stage {name}", help, ("differs", system, name), True)


RULE = Rule(
    code="LINK-9",
    level="error",
    scope="record",
    title="Stage that the fault does not have",
    what=(
        "The field like names another stage of the same fault, differs names its systems and stages, and no stage"
        " comes back to itself."
    ),
    why="A difference of a stage that is not there is never used.",
    mend="Take the name of a stage as the fault writes it, or all.",
    example=Example("faults/fuel-filter-restricted.yaml", "like: partly", "like: party"),
    find=find,
    kinds=("faults",),
)
