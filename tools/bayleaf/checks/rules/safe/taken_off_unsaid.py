"""SAFE-54: the joint of a connection is opened, and `ends` does not say that it comes off."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record
from bayleaf.vocabulary import Acts


def _seats(context: Context, state: str) -> set[str]:
    """The components at which the book's procedures fit a connection."""
    procedures = context.book.of("procedures")
    steps = [step for id in context.procedures.makers(state) for step in procedures[id].data["steps"]]
    return {step["at"] for step in steps if state in step.get("sets", []) and "at" in step}


def find(record: Record, context: Context) -> Iterator[Finding]:
    machine = context.procedures.machine
    needed = [s for s in record.data["needs"]["states"] if s in machine.states and machine.states[s].connection]
    for state in needed:
        seats = _seats(context, state) if state not in record.data.get("ends", []) else set()
        for i, step in (
            enumerate(record.data["steps"]) if len(seats) == 1 else ()
        ):  # with several seats nobody knows which it is
            if step.get("act") in (Acts.OPEN_JOINT, Acts.DISCONNECT) and step.get("at") in seats:
                message = f"step {i + 1} opens the joint at {step['at']}, where {machine.named(state)} sits, and ends does not name it"
                yield RULE.at(record, message, f"Write ends: [{state}].", ("steps", i, "act"))
                break


RULE = Rule(
    code="SAFE-54",
    level="error",
    scope="record",
    kinds=("procedures",),
    title="Connection taken off in silence",
    what="A procedure that needs a connection and opens the joint where it sits names the connection in `ends`.",
    why="The next page would read a gauge that is no longer there.",
    mend="Name the connection in ends.",
    example=Example("procedures/take-gauge-off.yaml", "\nends: [gauge-on-rail]", ""),
    find=find,
)
