"""SAFE-21: an electrical reading on the fuel path while a joint is open."""

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
    for step in walk.taking:
        quantity = context.amounts.measured(step.data.get("takes", {}).get("reading", ""))
        if quantity is None or not quantity.dimension[4]:
            continue
        opened = next(
            (
                (k, since)
                for k, since in step.before.items()
                if Acts.OPEN_JOINT in machine.states[k[0]].set_by and machine.states[k[0]].forbids
            ),
            None,
        )
        if opened:
            (_state, at), since = opened
            message = f"{step_name(walk, step)} takes an electrical reading, and {called(walk, since)} opened a joint at {at} that is still open"
            yield RULE.at(record, message, path=spot(record, step, "takes"))
        elif (
            States.TANK_SHUT in machine.states
            and any(p.carries == "fuel" for p in step.read_paths)
            and not step.stands(States.TANK_SHUT)
        ):
            ended = walk.last("ended", States.TANK_SHUT, walk.steps.index(step))
            how = f"{called(walk, ended)} ended it" if ended is not None else "nothing has made sure of it"
            message = f"{step_name(walk, step)} takes an electrical reading beside fuel, and {machine.named(States.TANK_SHUT)} does not stand: {how}"
            yield RULE.at(
                record,
                message,
                f"Inherit the preparation that sets {States.TANK_SHUT}, or set it in a step before.",
                spot(record, step, "takes"),
            )


RULE = Rule(
    code="SAFE-21",
    level="error",
    scope="record",
    kinds=("procedures",),
    title="Electrical reading beside open fuel",
    what="No voltage, current or resistance is measured while a fuel joint is open, nor on a part that carries fuel unless the tank is known to be shut.",
    why="A probe that slips under voltage makes a spark, and the vapour of an open joint is all around it.",
    mend="Close and prove the joint first; fix the probes with the circuit dead.",
    example=Example(
        "procedures/fit-gauge.yaml",
        "  - {do: Screw the gauge on the test port.,",
        "  - {do: Measure the voltage across the pump., takes: {reading: pump-supply-voltage, instrument: multimeter}}\n  - {do: Screw the gauge on the test port.,",
    ),
    find=find,
)
