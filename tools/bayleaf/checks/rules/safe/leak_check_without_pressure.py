"""SAFE-8: a leak check with no pressure behind the joint."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.facts.notes import called, spot, step_name
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record
from bayleaf.safety.steps import WalkStep
from bayleaf.vocabulary import Acts, States


def find(record: Record, context: Context) -> Iterator[Finding]:
    walk = context.procedures.walk(record)
    for index, step in enumerate(walk.steps):
        if (
            Acts.LEAK_CHECK not in step.own
            or not any(p.carries == "fuel" for p in step.act_paths)
            or not any(s == States.FUEL_PRESSURE_RELIEVED for s, _at in step.after)
            or _alone(context, record, step)
        ):
            continue
        since = walk.last("set", States.FUEL_PRESSURE_RELIEVED, index)
        by = f"since {called(walk, since)}" if since is not None else "from the start"
        message = f"{step_name(walk, step)} looks for leaks while the fuel pressure is relieved, {by}: a joint without pressure is always dry"
        yield RULE.at(record, message, path=spot(record, step, "act"))


def _alone(context: Context, record: Record, step: WalkStep) -> bool:
    """Whether the followed procedure has the same slip by itself, so that it is reported there."""
    other = context.procedures.followed(record, step)
    steps = context.procedures.walk(other).steps if other else []
    return any(
        (s.source, s.path) == (step.source, step.path) and any(k[0] == States.FUEL_PRESSURE_RELIEVED for k in s.after)
        for s in steps
    )


RULE = Rule(
    code="SAFE-8",
    level="error",
    scope="record",
    kinds=("procedures",),
    title="Leak check without pressure",
    what="Between the relief and the leak check of a fuel joint, a step brings the pressure up: key on, pump commanded, engine running.",
    why="A joint that is looked at empty is dry whatever its seal is worth, and the look gives a confidence that nobody has earned.",
    mend="Bring up the pressure before the leak check, with the key or with a command to the pump.",
    example=Example(
        "procedures/take-gauge-off.yaml",
        "  - {do: Switch the key on., act: key-on}\n  - {do: Look at the port",
        "  - {do: Look at the port",
    ),
    find=find,
)
