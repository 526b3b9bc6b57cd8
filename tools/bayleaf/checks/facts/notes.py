"""Notes of a walk made ready for rules: which are this procedure's own, where they point, how a step is called."""

from __future__ import annotations

from collections.abc import Container, Iterator

from bayleaf.checks.facts.procedures import Procedures
from bayleaf.records import Record
from bayleaf.safety.steps import Note, Walk, WalkStep


def noted(
    procedures: Procedures, record: Record, *kinds: str, of: Container[str] | None = None
) -> Iterator[tuple[WalkStep, Note]]:
    """The notes of these kinds (and of these states), but for those that a followed procedure already has when it is walked alone."""
    walk = procedures.walk(record)
    for step in walk.steps if not walk.noted.isdisjoint(kinds) else ():
        notes = [note for note in step.notes if note.kind in kinds and (of is None or note.what in of)]
        theirs = _alone(procedures, record, step) if notes else ()
        for note in notes:
            if (note.kind, note.what, note.other) not in theirs:
                yield step, note


def _alone(procedures: Procedures, record: Record, step: WalkStep) -> set[tuple[str, str, str]]:
    other = procedures.followed(record, step)
    steps = procedures.walk(other).steps if other else []
    return {(n.kind, n.what, n.other) for s in steps if (s.source, s.path) == (step.source, step.path) for n in s.notes}


def spot(record: Record, step: WalkStep, *fields: str) -> tuple:
    """The path of the first of these fields that the step has; inside a followed procedure, of the `follow`."""
    if step.source != record.id:
        return (*step.place, "follow")
    name = next((f for f in (*fields, "act", "do", "follow") if f in step.data), "do")
    return (*step.place, name)


def called(walk: Walk, index: int) -> str:
    """How a step is called in a message: `step 3`, `step 2.1 (relieve-fuel-pressure)`, `the start`."""
    if index < 0:
        return "the start"
    step = walk.steps[index]
    return f"step {step.number}" + (f" ({step.source})" if step.source != walk.procedure else "")


def step_name(walk: Walk, step: WalkStep) -> str:
    """As `called`, for a step at hand."""
    return called(walk, next(i for i, s in enumerate(walk.steps) if s is step))


def part(at: str) -> str:
    """` at the fuel-rail`, or nothing for the whole car."""
    return f" at {at}" if at else ""
