"""Slips around the looks, the bonds and the openings of fuel work: the look that comes late, the lead that was forgotten, the cap left off."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.records import Record, listed
from tests.mutations.mutant import CAUGHT, MOSTLY, Mutant, changed, operator, steps_changed, without
from tests.mutations.steps import less, with_act


@operator(
    "fuel bled before the first look at a joint", CAUGHT, "the look comes next after the first pressure", "procedures"
)
def bled_unseen(record: Record, context: Context) -> Iterator[Mutant]:
    for i in with_act(record, "close-joint"):
        walked = next(
            s for s in context.procedures.walk(record).steps if s.source == record.id and s.path == ("steps", i)
        )
        if any(s == "joint-unproved" for s, _at in walked.after) and "at" in walked.data:
            steps = list(record.data["steps"])
            bled = {"do": "Bleed the line.", "act": "bleed", "at": walked.data["at"]}
            steps[i + 1 : i + 1] = [
                {"do": "Switch the key on.", "act": "key-on"},
                bled,
                {"do": "Switch the key off.", "act": "key-off"},
            ]
            yield steps_changed(record, steps, ("steps", i + 1), f"bled after step {i + 1}, which nobody has looked at")


@operator("look at a temporary joint removed", CAUGHT, "it comes next after the first start", "procedures")
def no_running_look(record: Record, context: Context) -> Iterator[Mutant]:
    joints = {id for id, state in context.procedures.machine.states.items() if state.connection}
    steps = context.procedures.walk(record).steps
    first = next(
        (n for n, s in enumerate(steps[:-1]) if s.source == record.id and "start-engine" in s.own and s.had & joints),
        None,
    )
    if first is not None and steps[first + 1].data.get("act") == "leak-check":
        yield less(record, steps[first + 1].path[1], "no look")


@operator(
    "bonding removed",
    MOSTLY,
    "a cart that a preparation has bonded, or a container that a followed procedure bonds too",
    "procedures",
    least=0.6,
)
def not_bonded(record: Record, context: Context) -> Iterator[Mutant]:
    for i, step in enumerate(record.data["steps"]):
        if step.get("act") == "bond":
            yield without(record, ("steps", i, "act"), "not bonded")


@operator(
    "engine started from a line outside the steps",
    CAUGHT,
    "only steps are walked, so an order stands in a step or leads to one",
    "procedures",
)
def ordered_elsewhere(record: Record, context: Context) -> Iterator[Mutant]:
    if not any("start-engine" in s.own for s in context.procedures.walk(record).steps):
        yield changed(
            record,
            ("misleads",),
            [*listed(record.data["misleads"]), "It shows only when warm. Start the engine, and look again."],
            "started in misleads",
        )


@operator(
    "one person fewer",
    MOSTLY,
    "two where neither a step, a preparation nor a followed procedure speaks of the second",
    "procedures",
    least=0.7,
)
def fewer_people(record: Record, context: Context) -> Iterator[Mutant]:
    people = record.data["needs"]["people"]
    if people > 1:
        yield changed(record, ("needs", "people"), people - 1, f"{people - 1} instead of {people}")


@operator("filler cap left off", CAUGHT, "what a step opens a later step closes", "procedures")
def cap_left_off(record: Record, context: Context) -> Iterator[Mutant]:
    if list(with_act(record, "open-cap")):
        yield from (less(record, i, "cap left off") for i in list(with_act(record, "close-cap"))[-1:])
