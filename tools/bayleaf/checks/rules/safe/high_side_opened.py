"""SAFE-16: the high side of direct injection is opened without the maker's procedure and a proving reading."""

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
    for step in walk.doing(Acts.OPEN_JOINT, Acts.DISCONNECT, Acts.BLEED):
        high = next((p for p in step.act_paths if p.carries == "fuel" and p.side == "high"), None)
        if high is None or step.stood(States.HIGH_SIDE_SAFE):
            continue
        ended = walk.last("ended", States.HIGH_SIDE_SAFE, walk.steps.index(step))
        how = f"{called(walk, ended)} ended it" if ended is not None else "no reading has proved it"
        message = f"{step_name(walk, step)} opens the path {high.name} of {high.system}, the high side, and it is not proved safe: {how}"
        yield RULE.at(record, message, _help(context), spot(record, step, "act"))


def _help(context: Context) -> str:
    proof = [
        p
        for p in context.procedures.makers(States.HIGH_SIDE_SAFE)
        if any(States.HIGH_SIDE_SAFE in (s.get("proves") or []) for s in context.book.of("procedures")[p].data["steps"])
    ]
    return (
        f"Follow {proof[0]} before it."
        if proof
        else f"Follow the maker's depressurising procedure first, with a reading that proves {States.HIGH_SIDE_SAFE}."
    )


RULE = Rule(
    code="SAFE-16",
    level="error",
    scope="record",
    kinds=("procedures",),
    title="High side opened unproved",
    what=(
        "A joint on the high side of direct injection is opened only after the maker's depressurising procedure and a live reading "
        "that was seen to fall under the maker's limit, with nothing after it that could raise the pressure. Waiting alone proves nothing."
    ),
    why="Thousands of psi stay after the engine has stopped and rise with its heat; a jet of them takes the hand.",
    mend="Follow the procedure that proves the high side safe directly before the joint is opened.",
    example=Example(
        "procedures/read-high-side.yaml",
        "  - {do: Stop the engine., act: stop-engine}",
        "  - {do: Stop the engine., act: stop-engine}\n"
        "  - {do: Open the pipe nut at the rail., act: open-joint, at: direct-rail, cautions: [fuel-jet, pressure-not-seen, high-side-stays-shut]}",
    ),
    find=find,
)
