"""SAFE-66: the filler cap is opened while pressure is put on a system."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.facts.notes import called, spot, step_name
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record
from bayleaf.vocabulary import Acts


def find(record: Record, context: Context) -> Iterator[Finding]:
    walk = context.procedures.walk(record)
    for step in walk.doing(Acts.OPEN_CAP):
        since = next((i for (act, _at), i in step.doing.items() if act == Acts.PRESSURISE), None)
        if since is not None:
            words = f"{step_name(walk, step)} opens the filler cap while what {called(walk, since)} put pressure on is not vented"
            yield RULE.at(record, words, path=spot(record, step, "act"))


RULE = Rule(
    code="SAFE-66",
    level="error",
    scope="record",
    kinds=("procedures",),
    title="Cap opened under gas",
    what="The filler cap is opened only after the pressure that was put on a system has been vented.",
    why="The cap flies, and a tank full of vapor blows into the face over it.",
    mend="Shut the gas and vent in a step before it, act: vent.",
    example=Example(
        "procedures/look-into-regulator-hose.yaml",
        "  - {do: Look into the hose for fuel.,",
        "  - {do: Press test gas into the hose., act: pressurise, at: regulator-vacuum-hose}\n  - {do: Take the filler cap off., act: open-cap, at: fuel-tank}\n  - {do: Look into the hose for fuel.,",
    ),
    find=find,
)
