"""SAFE-48: a joint is wiped while something still presses fuel against it."""

from __future__ import annotations

import re
from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.facts.notes import called, spot, step_name
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record
from bayleaf.vocabulary import Acts, States

WIPES = re.compile(r"\b(wip(e|es|ed|ing)|dab|touch|feel)\b", re.IGNORECASE)


def find(record: Record, context: Context) -> Iterator[Finding]:
    walk = context.procedures.walk(record)
    for step in walk.doing(Acts.LEAK_CHECK):
        if not WIPES.search(step.data.get("do", "")):
            continue
        pump = next((since for (act, _at), since in step.doing.items() if act == Acts.ENERGISE_PUMP), None)
        if step.stands(States.RUNNING):
            yield RULE.at(
                record, f"{step_name(walk, step)} wipes a joint while the engine runs", path=spot(record, step, "do")
            )
        elif pump is not None:
            yield RULE.at(
                record,
                f"{step_name(walk, step)} wipes a joint while the pump runs since {called(walk, pump)}",
                path=spot(record, step, "do"),
            )
        elif (
            any(p.carries == "fuel" and p.side == "high" for p in step.act_paths)
            and "at" in step.data
            and not step.stood(States.HIGH_SIDE_SAFE)
        ):
            message = f"{step_name(walk, step)} wipes a joint of the high side, which no reading has proved safe"
            yield RULE.at(
                record,
                message,
                "Look from the side with a lamp, and wipe only after the proving reading.",
                spot(record, step, "do"),
            )


RULE = Rule(
    code="SAFE-48",
    level="error",
    scope="record",
    kinds=("procedures",),
    title="Joint wiped under pressure",
    what=(
        "With the pump or the engine running a joint is looked at with a lamp and from the side. It is wiped only when both are off, and "
        "on the high side of direct injection only after a reading has proved it safe."
    ),
    why="A hand with a cloth at a leaking joint is where the jet goes in.",
    mend="Stop pump and engine in a step before it.",
    example=Example(
        "procedures/read-high-side.yaml",
        "  - {do: Stop the engine., act: stop-engine}",
        "  - {do: Wipe the pipe nuts with a dry cloth., act: leak-check, at: direct-rail, cautions: [high-side-stays-shut, fuel-jet]}\n"
        "  - {do: Stop the engine., act: stop-engine}",
    ),
    find=find,
)
