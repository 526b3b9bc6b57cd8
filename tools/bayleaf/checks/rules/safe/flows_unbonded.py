"""SAFE-57: fuel flows into or out of a container that is not bonded."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.facts.notes import called
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record
from bayleaf.vocabulary import Acts, States

FLOWS = frozenset({Acts.BLEED, Acts.POUR})


def find(record: Record, context: Context) -> Iterator[Finding]:
    machine = context.procedures.machine
    if States.CONTAINER_BONDED not in machine.states or record.data["where"] == [
        "bench"
    ]:  # a glass on the bench is bonded to no car
        return
    walk = context.procedures.walk(record)
    for index, step in enumerate(walk.steps):
        if FLOWS.isdisjoint(step.own) or step.source != record.id or step.stood(States.CONTAINER_BONDED):
            continue
        if Acts.BLEED in step.own and not any(p.carries == "fuel" for p in step.act_paths):
            continue
        ended = walk.last("ended", States.CONTAINER_BONDED, index)
        how = f"{called(walk, ended)} ended it" if ended is not None else "no step before it made it so"
        message = f"step {step.number} is to {machine.title(step.data['act'])}, and {machine.named(States.CONTAINER_BONDED)} does not stand: {how}"
        yield RULE.at(record, message, path=(*step.place, "act"))


RULE = Rule(
    code="SAFE-57",
    level="error",
    scope="record",
    kinds=("procedures",),
    title="Fuel flows and nothing is bonded",
    what=(
        "Before fuel is bled, poured, drained or filled at a car, its container is bonded: by the lead of the container or the cart, or by "
        "the nozzle of an approved can against the neck. The bonding lead comes off after the last of it."
    ),
    why="Flowing fuel charges itself, and the spark jumps where the fuel is.",
    mend="Bond the container in a step before it, act: bond, and unbond it last.",
    example=Example(
        "procedures/bay-preparation.yaml",
        "\n  - {do: Bond the container to bare metal of the car., act: bond}",
        "",
    ),
    find=find,
)
