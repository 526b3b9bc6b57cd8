"""SAFE-24: an act on a part that names no part, or one on no path."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record
from bayleaf.vocabulary import Acts

PLUGS = {
    Acts.CONNECT,
    Acts.DISCONNECT,
    Acts.CONNECT_ELECTRICAL,
    Acts.DISCONNECT_ELECTRICAL,
}  # also done to parts through which nothing flows


def find(record: Record, context: Context) -> Iterator[Finding]:
    walk, machine = context.procedures.walk(record), context.procedures.machine
    systems = record.data["systems"]
    for step in walk.own:
        act = step.data.get("act", "")
        if (act not in machine.of_paths and act not in machine.local) or act in machine.whole:
            continue
        if "at" not in step.data:
            if act in machine.local or not step.act_paths:  # a look at every joint names them by itself
                message = f"step {step.number} is to {machine.title(act)} and does not say where"
                yield RULE.at(record, message, "Write at: and the component.", (*step.place, "act"))
        elif (
            act in machine.of_paths - PLUGS and step.data["at"] in context.book.of("components") and not step.act_paths
        ):
            where = f"of {', '.join(systems)}" if systems else "of any system"
            message = f"step {step.number} is to {machine.title(act)} at {step.data['at']}, which lies on no path {where}, so nobody knows what flows there"
            yield RULE.at(
                record,
                message,
                "Name the component on the path, say what it is part_of, or add it to the path of the system.",
                (*step.place, "at"),
            )


RULE = Rule(
    code="SAFE-24",
    level="error",
    scope="record",
    kinds=("procedures",),
    title="Act without its part",
    what=(
        "An act that opens, closes, bleeds, clamps, connects, disconnects, pressurises or looks for leaks names its component, and that "
        "component lies on a path of the procedure's systems, by itself or by the part that it belongs to."
    ),
    why="What flows through a part, and at which pressure, is how a hazard is derived; an act that hides its part hides its hazard.",
    mend="Write at: and the component on the path.",
    example=Example("procedures/fit-gauge.yaml", "act: open-joint, at: fuel-test-port,", "act: open-joint,"),
    find=find,
)
