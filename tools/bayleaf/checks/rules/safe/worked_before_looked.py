"""SAFE-55: a joint sees its first pressure, and the work goes on before anybody has looked at it."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.facts.notes import called, part, spot, step_name
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record
from bayleaf.safety.steps import WalkStep
from bayleaf.vocabulary import Acts, States

RELIEVED, UNPROVED = States.FUEL_PRESSURE_RELIEVED, States.JOINT_UNPROVED
# What is not done beside a joint that nobody has seen dry: fuel let out, a line shut, a connection that may spark.
WORK = frozenset(
    {Acts.BLEED, Acts.OPEN_JOINT, Acts.CLAMP, Acts.PRESSURISE, Acts.CONNECT_ELECTRICAL, Acts.DISCONNECT_ELECTRICAL}
)


def find(record: Record, context: Context) -> Iterator[Finding]:
    walk, states = context.procedures.walk(record), context.procedures.machine.states
    if RELIEVED not in states or not any(UNPROVED in step.had for step in walk.steps):
        return
    presses = states[RELIEVED].ended_by - states[UNPROVED].forbids - {Acts.COOL_DOWN}  # the others SAFE-4 refuses
    first: dict[str, int] = {}  # each unproved joint to the step that first brought pressure to it
    for index, step in enumerate(walk.steps):
        standing = [at for state, at in step.before if state == UNPROVED] if UNPROVED in step.had else []
        first = {
            at: since
            for at, since in first.items()
            if at in standing and (Acts.OPEN_JOINT not in step.own or at not in step.at)
        }
        if not standing or Acts.LEAK_CHECK in step.own:
            continue
        if not presses.isdisjoint(step.acts):
            first |= {at: index for at in standing if at not in first and (States.JOINT_OPEN, at) not in step.before}
        what = _work(step, context) if first and RELIEVED not in step.had else ""
        at = next((a for a, since in first.items() if not _theirs(context, record, step, walk.steps[since])), None)
        if what and at is not None:
            since = step.before[UNPROVED, at]
            closed = f"in {called(walk, since)}" if since >= 0 else "before the start"
            message = f"{step_name(walk, step)} {what} before anybody has looked at the joint{part(at)}, closed {closed} and first under pressure in {called(walk, first[at])}"
            yield RULE.at(record, message, path=spot(record, step, "takes", "act"))
            return


def _work(step: WalkStep, context: Context) -> str:
    """What a step does that waits for the look; nothing where it may come before it. A joint under suction draws air and drips nothing."""
    acts = sorted(WORK & step.own)
    if acts:
        return f"is to {context.procedures.machine.title(acts[0])}"
    reading = step.data.get("takes", {}).get("reading")
    quantity = context.amounts.measured(reading) if isinstance(reading, str) else None
    return "takes a reading" if quantity is not None and quantity.reference != "vacuum" else ""


def _theirs(context: Context, record: Record, step: WalkStep, pressed: WalkStep) -> bool:
    """Whether all of it stands in one followed procedure that begins with an unproved joint, so that it is said there."""
    if step.source == record.id or step.source != pressed.source:
        return False
    other = context.book.of("procedures").get(step.source)
    return other is not None and UNPROVED in other.data["needs"]["states"]


RULE = Rule(
    code="SAFE-55",
    level="error",
    scope="record",
    kinds=("procedures",),
    title="Worked on before the first look",
    what=(
        "When the pump or the starter first brings pressure to a joint that was closed, the look at that joint comes next: before a reading is "
        "taken, fuel is let out, a line is shut or a connection is made or broken. That goes for the hose of a volume test too. A joint under suction is exempt."
    ),
    why="The first pressure is the moment in which a pinched seal sprays, and everybody bends over the gauge.",
    mend="Bring the pressure up with the key and without cranking, look at the joint, and only then go on.",
    example=Example(
        "procedures/fit-gauge.yaml",
        "  - {do: Look at the joint with a lamp.,",
        "  - {do: Read the fuel pressure gauge., when: pump-priming, takes: {reading: rail-pressure-primed, instrument: fuel-pressure-gauge}}\n  - {do: Look at the joint with a lamp.,",
    ),
    find=find,
)
