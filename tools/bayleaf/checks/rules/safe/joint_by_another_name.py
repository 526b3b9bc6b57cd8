"""SAFE-37: a fuel joint is opened or closed under another name."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record
from bayleaf.vocabulary import Acts

INSTEAD = {Acts.DISCONNECT: Acts.OPEN_JOINT, Acts.CONNECT: Acts.CLOSE_JOINT}


def find(record: Record, context: Context) -> Iterator[Finding]:
    for step in context.procedures.walk(record).doing(*INSTEAD):
        act = step.data.get("act")
        fuel = next((p for p in step.act_paths if p.carries == "fuel"), None)
        if act in INSTEAD and "at" in step.data and fuel:
            message = f"step {step.number} is to {act} at {step.data['at']}, which carries fuel on the path {fuel.name} of {fuel.system}"
            yield RULE.at(
                record,
                message,
                f"Write act: {INSTEAD[act]}, or name the hose that carries no fuel.",
                (*step.place, "act"),
            )


RULE = Rule(
    code="SAFE-37",
    level="error",
    scope="record",
    kinds=("procedures",),
    title="Fuel joint under another name",
    what="Whatever lets fuel out is `open-joint`, and whatever closes it again is `close-joint`; connect and disconnect are for parts that carry no fuel.",
    why="Relief, cooling and the leak check follow from these two acts. Under another name they would be forgotten.",
    mend="Write open-joint or close-joint.",
    example=Example(
        "procedures/fit-gauge.yaml", "act: open-joint, at: fuel-test-port,", "act: disconnect, at: fuel-test-port,"
    ),
    find=find,
)
