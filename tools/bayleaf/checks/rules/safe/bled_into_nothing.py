"""SAFE-49: fuel is let out with nothing to catch it."""

from __future__ import annotations

import re
from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record
from bayleaf.safety.preparations import preparations
from bayleaf.vocabulary import Acts

CATCHES = re.compile(r"\b(container|cart|drum|can|cloths?)\b", re.IGNORECASE)


def find(record: Record, context: Context) -> Iterator[Finding]:
    procedures, equipment = context.book.of("procedures"), context.book.of("equipment")
    for step in context.procedures.walk(record).doing(Acts.BLEED, Acts.OPEN_JOINT):
        if not any(p.carries == "fuel" for p in step.act_paths):
            continue
        followed = [procedures[s["follow"]] for s in record.data["steps"] if s.get("follow") in procedures]
        ready = [procedures[p] for p in preparations(context.book, record.data) if p in procedures]
        at_hand = [e for r in (record, *followed, *ready) if r.sound for e in r.data["needs"]["equipment"]]
        names = [f"{e} {equipment[e].title}" for e in at_hand if e in equipment]
        names += [c for r in (record, *followed) if r.sound for c in r.data["needs"]["consumables"]]
        if not any(CATCHES.search(name.replace("-", " ")) for name in names):
            message = f"step {step.number} lets fuel out, and the procedure has no container and no cloth to catch it"
            yield RULE.at(record, message, path=(*step.place, "act"))
        return


RULE = Rule(
    code="SAFE-49",
    level="error",
    scope="record",
    kinds=("procedures",),
    title="Fuel let out into nothing",
    what="A procedure that bleeds fuel or opens a fuel joint has a bonded container, a cart or a cloth among its equipment or consumables, or follows one that has.",
    why="Fuel that is not caught runs over hot parts and along the floor.",
    mend="Add the container for what is bled, and a cloth for what drips.",
    example=Example(
        "procedures/take-gauge-off.yaml",
        "equipment: [fuel-pressure-gauge, bonded-container]",
        "equipment: [fuel-pressure-gauge]",
    ),
    find=find,
)
