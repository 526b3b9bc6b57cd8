"""Slips in cautions, preparations and the vocabulary of safety: what a hurried author leaves out or softens."""

from __future__ import annotations

import copy
from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.records import Record, listed
from tests.mutations.mutant import BLIND, CAUGHT, MOSTLY, Mutant, at, changed, operator, steps_changed, without

EXTRA = "a caution beyond what the steps demand, or one whose hazard a preparation or an earlier step speaks of too; to demand it twice would push authors to count cautions"
WEAKER = {"DANGER": "WARNING", "WARNING": "CAUTION", "CAUTION": "NOTICE", "NOTICE": "CAUTION"}
LESS = {"will-kill": "could-kill", "could-kill": "could-hurt", "could-hurt": "damages"}


def _cautions(record: Record, context: Context) -> Iterator[tuple[str, bool]]:
    """Every caution of a procedure, and whether it alone speaks of a hazard that some step meets."""
    steps = context.procedures.walk(record).steps
    own = [s for s in steps if s.source == record.id]
    for caution in dict.fromkeys(c for s in own for c in s.cautions):
        alone = any(
            context.procedures.guards(met.hazard) & steps[met.index].shown == {caution}
            and caution not in context.procedures.walk(record).inherited
            and not any(caution in s.cautions for s in steps if s.source != record.id)
            for met in context.procedures.met(record)
        )
        yield caution, alone


def _without_caution(record: Record, caution: str) -> Mutant:
    data = copy.deepcopy(record.data)
    for step in data["steps"]:
        if "cautions" in step:
            step["cautions"] = [c for c in listed(step["cautions"]) if c != caution] or "none"
    return Mutant(record.kind, record.id, ("steps",), f"no {caution}", data)


@operator("only caution of a derived hazard dropped", CAUGHT, "the hazard follows from the step", "procedures")
def caution_dropped(record: Record, context: Context) -> Iterator[Mutant]:
    yield from (_without_caution(record, caution) for caution, alone in _cautions(record, context) if alone)


@operator("caution beyond the derived ones dropped", BLIND, EXTRA, "procedures")
def extra_dropped(record: Record, context: Context) -> Iterator[Mutant]:
    yield from (_without_caution(record, caution) for caution, alone in _cautions(record, context) if not alone)


@operator(
    "only caution of a derived hazard moved to the last step",
    CAUGHT,
    "a caution comes before the step that it guards",
    "procedures",
)
def caution_late(record: Record, context: Context) -> Iterator[Mutant]:
    for caution, alone in _cautions(record, context):
        steps = _without_caution(record, caution).data["steps"]
        last = len(steps) - 1
        meets = [m.index for m in context.procedures.met(record) if caution in context.procedures.guards(m.hazard)]
        early = any(context.procedures.walk(record).steps[i].place != ("steps", last) for i in meets)
        if alone and early and caution not in listed(record.data["steps"][last].get("cautions")):
            steps[last]["cautions"] = [*listed(steps[last].get("cautions")), caution]
            yield steps_changed(record, steps, ("steps", last, "cautions"), f"{caution} comes with the last step")


@operator(
    "inheritance dropped",
    MOSTLY,
    "a preparation that another one inherits too, whose cautions the procedure names itself, or whose hazards it does not meet, adds nothing that could be missed",
    "procedures",
    least=0.3,
)
def inheritance(record: Record, context: Context) -> Iterator[Mutant]:
    for i, id in enumerate(listed(record.data["inherits"])):
        yield without(record, ("inherits", i), f"does not inherit {id}")


@operator("signal word softened", CAUGHT, "signal word and severity belong together", "cautions")
def softer(record: Record, context: Context) -> Iterator[Mutant]:
    yield changed(
        record, ("signal",), WEAKER[record.data["signal"]], f"{record.data['signal']} → {WEAKER[record.data['signal']]}"
    )


@operator(
    "signal word and severity softened together",
    BLIND,
    "how bad it can be is a judgement; only a NOTICE that speaks of injury gives itself away",
    "cautions",
)
def both_softer(record: Record, context: Context) -> Iterator[Mutant]:
    if record.data["severity"] in LESS:
        data = {**record.data, "signal": WEAKER[record.data["signal"]], "severity": LESS[record.data["severity"]]}
        yield Mutant(record.kind, record.id, ("signal",), f"{record.data['signal']} → {data['signal']}", data)


@operator("hazard dropped from a caution", MOSTLY, "a hazard that another caution speaks of too", "cautions", least=0.9)
def hazard_dropped(record: Record, context: Context) -> Iterator[Mutant]:
    for i, id in enumerate(record.data["hazards"]):
        yield without(record, ("hazards", i), f"does not speak of {id}")


@operator("avoidance that orders nothing", CAUGHT, "each begins with a verb, Do not or Never", "cautions")
def no_order(record: Record, context: Context) -> Iterator[Mutant]:
    yield changed(record, ("avoid", 0), "Care is advised.", "Care is advised.")


@operator("signal word typed into a step", CAUGHT, "signal words stand only in cautions", "procedures")
def typed_word(record: Record, context: Context) -> Iterator[Mutant]:
    i = next((i for i, s in enumerate(record.data["steps"]) if "do" in s), None)
    if i is not None:
        yield changed(record, ("steps", i, "do"), "WARNING! " + at(record.data, ("steps", i, "do")), "WARNING typed")


@operator(
    "trigger dropped from a hazard",
    BLIND,
    "the vocabulary is what the checker believes: a hazard that it no longer derives is missed by no rule; tests of the vocabulary stand for the table that it came from",
    "hazards",
)
def trigger_dropped(record: Record, context: Context) -> Iterator[Mutant]:
    for i, trigger in enumerate(listed(record.data["triggers"])):
        yield without(record, ("triggers", i), f"no trigger {sorted(trigger)}")


@operator(
    "state made to last, or to forbid nothing",
    BLIND,
    "as for triggers: the rules read what the vocabulary says",
    "states",
)
def state_softened(record: Record, context: Context) -> Iterator[Mutant]:
    for field in ("ended_by", "forbids", "requires"):
        for i, id in enumerate(listed(record.data.get(field))):
            yield without(record, (field, i), f"{field} without {id}")
