"""SAFE-1: a hazard follows from a step, and no caution speaks of it."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.facts.notes import called, spot
from bayleaf.checks.messages import either
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record


def find(record: Record, context: Context) -> Iterator[Finding]:
    walk = context.procedures.walk(record)
    later = {c for step in walk.steps for c in step.cautions}
    for met in context.procedures.unguarded(record):
        guards = context.procedures.guards(met.hazard)
        if guards & later:
            continue  # named, but too late: SAFE-2
        hazard = context.book.of("hazards")[met.hazard].title
        message = f"{called(walk, met.index)} meets a hazard without its caution, {hazard[:1].lower()}{hazard[1:]}, because {context.procedures.hazards.why(walk, met)}"
        help = f"Name {either(sorted(guards))} in the cautions of this step or an earlier one, or inherit the preparation that shows it."
        yield RULE.at(
            record,
            message,
            help if guards else "Write a caution that speaks of this hazard.",
            spot(record, walk.steps[met.index]),
        )


RULE = Rule(
    code="SAFE-1",
    level="error",
    scope="record",
    kinds=("procedures",),
    title="Hazard without its caution",
    what=(
        "Every procedure is walked step by step, followed procedures and inherited preparations included. From acts, conditions, "
        "paths, pressures, places, equipment and standing states the hazards of each step are derived. Each needs a caution that "
        "was shown before or at that step, in the procedure or in a preparation that it inherits."
    ),
    why="A caution that has to be remembered is forgotten by the person who knows the work best.",
    mend="Name the caution at the step or before it, or inherit the preparation that shows it.",
    example=Example("procedures/measure-primed-pressure.yaml", "    cautions: [fuel-jet]\n", ""),
    find=find,
)
