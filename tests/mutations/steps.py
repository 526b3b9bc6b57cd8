"""Slips in the steps of procedures: what a hurried author forgets, moves or swaps."""

from __future__ import annotations

import copy
from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.records import Record, listed
from tests.mutations.mutant import CAUGHT, MOSTLY, Mutant, changed, operator, steps_changed, without


def with_act(record: Record, *acts: str) -> Iterator[int]:
    """The places of the steps that do one of these acts."""
    yield from (i for i, step in enumerate(record.data["steps"]) if step.get("act") in acts)


def less(record: Record, i: int, what: str) -> Mutant:
    """A mutant without one step."""
    steps = [s for n, s in enumerate(record.data["steps"]) if n != i]
    return steps_changed(
        record,
        steps,
        ("steps", i),
        f"{what}: {record.data['steps'][i].get('do') or record.data['steps'][i].get('follow')}",
    )


def _more(record: Record, i: int, step: dict, what: str) -> Mutant:
    steps = list(record.data["steps"])
    steps.insert(i, step)
    return steps_changed(record, steps, ("steps", i), what)


@operator(
    "cool-down removed",
    MOSTLY,
    "where nothing was opened afterwards, or a followed procedure cools too, it was only comfort",
    "procedures",
    least=0.8,
)
def no_cooling(record: Record, context: Context) -> Iterator[Mutant]:
    yield from (less(record, i, "no cooling") for i in with_act(record, "cool-down"))


@operator(
    "relief removed",
    MOSTLY,
    "a relief that is followed twice, or after which nothing is opened",
    "procedures",
    least=0.8,
)
def no_relief(record: Record, context: Context) -> Iterator[Mutant]:
    for i, step in enumerate(record.data["steps"]):
        followed = context.book.of("procedures").get(step.get("follow"))
        sets = listed(step.get("sets")) + [
            s for f in (listed(followed.data["steps"]) if followed else []) for s in listed(f.get("sets"))
        ]
        if "fuel-pressure-relieved" in sets:
            yield less(record, i, "no relief")


@operator(
    "leak check removed",
    MOSTLY,
    "a second look at a joint that was already proved, or one of several in a row",
    "procedures",
    least=0.4,
)
def no_leak_check(record: Record, context: Context) -> Iterator[Mutant]:
    yield from (less(record, i, "no leak check") for i in with_act(record, "leak-check"))
    for i, step in enumerate(record.data["steps"]):
        followed = context.book.of("procedures").get(step.get("follow"))
        if followed and any(s.get("act") == "leak-check" for s in followed.data["steps"]):
            yield less(record, i, "no leak check")


@operator("restoring step removed", CAUGHT, "what a step disturbs a later step puts back", "procedures")
def not_restored(record: Record, context: Context) -> Iterator[Mutant]:
    undo = context.procedures.machine.undo
    for i in with_act(record, *undo.values()):
        step, before = record.data["steps"][i], record.data["steps"][:i]
        partners = [a for a, b in undo.items() if b == step["act"]]
        if any(s.get("act") in partners and s.get("at") == step.get("at") for s in before):
            yield less(record, i, "not put back")


@operator("closing step removed", CAUGHT, "an open joint forbids what comes next, and may not be left", "procedures")
def not_closed(record: Record, context: Context) -> Iterator[Mutant]:
    for i in with_act(record, "close-joint"):
        if any(
            s.get("act") == "open-joint" and s.get("at") == record.data["steps"][i].get("at")
            for s in record.data["steps"][:i]
        ):
            yield less(record, i, "not closed")


def _fuel_openings(record: Record, context: Context) -> Iterator[int]:
    for i in with_act(record, "open-joint"):
        walked = next(
            s for s in context.procedures.walk(record).steps if s.source == record.id and s.path == ("steps", i)
        )
        if any(p.carries == "fuel" for p in walked.act_paths):
            yield i


@operator("key switched on after the relief", CAUGHT, "the relief is gone as soon as the key turns", "procedures")
def key_after_relief(record: Record, context: Context) -> Iterator[Mutant]:
    for i in _fuel_openings(record, context):
        data = _more(
            record, i, {"do": "Switch the key on.", "act": "key-on"}, "key on before the joint is opened"
        ).data["steps"]
        data.insert(i + 1, {"do": "Switch the key off.", "act": "key-off"})
        yield steps_changed(record, data, ("steps", i), f"key on and off before step {i + 1}")


@operator("engine run before the joint is opened", CAUGHT, "a hot engine and a rail under pressure", "procedures")
def run_before_opening(record: Record, context: Context) -> Iterator[Mutant]:
    for i in _fuel_openings(record, context):
        data = _more(record, i, {"do": "Start the engine.", "act": "start-engine"}, "").data["steps"]
        data.insert(i + 1, {"do": "Stop the engine.", "act": "stop-engine"})
        yield steps_changed(record, data, ("steps", i), f"engine run before step {i + 1}")


@operator(
    "engine started on an unproved joint",
    CAUGHT,
    "a closed joint counts as leaking until it was looked at",
    "procedures",
)
def start_unproved(record: Record, context: Context) -> Iterator[Mutant]:
    for i in with_act(record, "close-joint"):
        walked = next(
            s for s in context.procedures.walk(record).steps if s.source == record.id and s.path == ("steps", i)
        )
        if any(s == "joint-unproved" for s, _at in walked.after):
            data = _more(record, i + 1, {"do": "Start the engine.", "act": "start-engine"}, "").data["steps"]
            data.insert(i + 2, {"do": "Stop the engine.", "act": "stop-engine"})
            yield steps_changed(record, data, ("steps", i + 1), f"engine run after step {i + 1}")


@operator("step driven with a gauge on", CAUGHT, "only the electric sender may be driven", "procedures")
def driven(record: Record, context: Context) -> Iterator[Mutant]:
    walk = context.procedures.walk(record)
    if any(s.startswith("gauge-") for s, _at in walk.start):
        yield _more(record, 0, {"do": "Drive the car around the block.", "act": "drive"}, "driven")


@operator(
    "steps exchanged",
    MOSTLY,
    "two steps of which neither needs the other may come in either order",
    "procedures",
    least=0.2,
)
def exchanged(record: Record, context: Context) -> Iterator[Mutant]:
    steps = record.data["steps"]
    for i in range(len(steps) - 1):
        if "act" in steps[i] and "act" in steps[i + 1] and steps[i]["act"] != steps[i + 1]["act"]:
            new = [*steps[:i], steps[i + 1], steps[i], *steps[i + 2 :]]
            yield steps_changed(record, new, ("steps", i), f"steps {i + 1} and {i + 2} exchanged")


@operator("act dropped", MOSTLY, "an act that neither the words nor what follows give away", "procedures", least=0.8)
def no_act(record: Record, context: Context) -> Iterator[Mutant]:
    for i, step in enumerate(record.data["steps"]):
        if "act" in step:
            steps = copy.deepcopy(record.data["steps"])
            del steps[i]["act"]
            yield steps_changed(record, steps, ("steps", i), f"{step['act']} dropped: {step['do']}")


@operator(
    "act exchanged for another",
    MOSTLY,
    "an act that contradicts neither its words nor what stands",
    "procedures",
    least=0.8,
)
def other_act(record: Record, context: Context) -> Iterator[Mutant]:
    acts = list(context.book.of("acts"))
    for i, step in enumerate(record.data["steps"]):
        if "act" in step:
            new = acts[(acts.index(step["act"]) + len(acts) // 3) % len(acts)]
            yield changed(record, ("steps", i, "act"), new, f"{step['act']} → {new}: {step['do']}")


@operator(
    "component of an act dropped",
    MOSTLY,
    "an act of the whole car needs none, and a look that names no joint is of every joint",
    "procedures",
    least=0.7,
)
def no_part(record: Record, context: Context) -> Iterator[Mutant]:
    yield from (
        without(record, ("steps", i, "at"), f"{s.get('act')} at nothing")
        for i, s in enumerate(record.data["steps"])
        if "at" in s
    )


@operator(
    "sets or proves dropped",
    MOSTLY,
    "a state that nothing later asks for and that most such steps do not set",
    "procedures",
    least=0.4,
)
def nothing_set(record: Record, context: Context) -> Iterator[Mutant]:
    for i, step in enumerate(record.data["steps"]):
        for field in ("sets", "proves"):
            if field in step:
                yield without(record, ("steps", i, field), f"{field} {step[field]}")


@operator(
    "leaves, ends or needs emptied",
    MOSTLY,
    "a needed state that no step of the procedure relies on",
    "procedures",
    least=0.8,
)
def declarations(record: Record, context: Context) -> Iterator[Mutant]:
    for path in (("leaves",), ("ends",), ("needs", "states")):
        held = record.data.get(path[0]) if len(path) == 1 else record.data["needs"]["states"]
        if listed(held):
            yield changed(record, path, "none", f"{path[-1]} {held} emptied")


@operator(
    "quantity at which to stop dropped",
    MOSTLY,
    "where fuel is bled and no pump runs into an open end, the person at the valve stops it",
    "procedures",
    least=0.05,
)
def no_stop(record: Record, context: Context) -> Iterator[Mutant]:
    for i, step in enumerate(record.data["steps"]):
        yield from (without(record, ("steps", i, f), f"no {f}") for f in ("stop_at", "at_most") if f in step)


@operator(
    "lift added to the places",
    MOSTLY,
    "what may be done in the bay with the engine off may be done on a lift",
    "procedures",
    least=0.2,
)
def on_a_lift(record: Record, context: Context) -> Iterator[Mutant]:
    if "lift" not in record.data["where"]:
        yield changed(record, ("where",), [*record.data["where"], "lift"], "also on a lift")


@operator("equipment dropped from the list", MOSTLY, "what a preparation has laid out already", "procedures", least=0.9)
def not_listed(record: Record, context: Context) -> Iterator[Mutant]:
    for i, id in enumerate(listed(record.data["needs"]["equipment"])):
        yield without(record, ("needs", "equipment", i), f"no {id}")


@operator("instrument dropped from a reading", MOSTLY, "a question needs no instrument", "procedures", least=0.9)
def no_instrument(record: Record, context: Context) -> Iterator[Mutant]:
    for i, step in enumerate(record.data["steps"]):
        if "instrument" in step.get("takes", {}):
            yield without(record, ("steps", i, "takes", "instrument"), f"{step['takes']['reading']} with nothing")


@operator(
    "condition of a step changed", MOSTLY, "a condition that implies the same acts and states", "procedures", least=0.7
)
def other_condition(record: Record, context: Context) -> Iterator[Mutant]:
    conditions = list(context.book.of("conditions"))
    for i, step in enumerate(record.data["steps"]):
        if "when" in step:
            new = conditions[(conditions.index(step["when"]) + 3) % len(conditions)]
            yield changed(record, ("steps", i, "when"), new, f"{step['when']} → {new}")
