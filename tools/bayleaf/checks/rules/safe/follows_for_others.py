"""SAFE-68: a step follows a procedure that is not for every system of this one, or unfolds without end."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record
from bayleaf.safety.walk import MOST


def find(record: Record, context: Context) -> Iterator[Finding]:
    procedures, systems = context.book.of("procedures"), record.data["systems"]
    for i, step in context.procedures.steps_with(record, "follow"):
        followed = procedures.get(step["follow"])
        if followed is None or not followed.sound or not followed.data["systems"]:
            continue
        families = {_family(context, s) for s in followed.data["systems"]}
        lacking = [s for s in systems if s not in followed.data["systems"] and _family(context, s) in families]
        if lacking:
            words = f"step {i + 1} follows {followed.id}, which is not for {', '.join(lacking)}"
            yield RULE.at(record, words, path=("steps", i, "follow"))
    if context.procedures.walk(record).cut:
        words = f"with all that it follows it has more than {MOST} steps, and nobody has looked at the rest"
        yield RULE.at(record, words, "Follow fewer procedures, or each of them once.", ("steps",))


def _family(context: Context, system: str) -> str:
    """The family of a system: a layer, or an induction, has any fuel system under it."""
    record = context.book.of("systems").get(system)
    return str(record.data["family"]) if record is not None and record.sound else ""


RULE = Rule(
    code="SAFE-68",
    level="error",
    scope="record",
    kinds=("procedures",),
    title="Follows what is not for its systems",
    what="A procedure that is followed is for every system of its family that the follower is for, and all that is followed unfolds into a walk that can be looked at whole.",
    why="A relief for one kind of rail, done on another, leaves the pressure where it was.",
    mend="Follow a procedure for all of the systems, or split this one.",
    example=Example(
        "procedures/fit-gauge.yaml",
        "systems: [port-injection-return]",
        "systems: [port-injection-return, direct-injection]",
    ),
    find=find,
)
