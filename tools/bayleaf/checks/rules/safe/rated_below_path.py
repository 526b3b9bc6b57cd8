"""SAFE-65: an instrument is rated for less than the path can bring."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.facts.notes import spot
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record
from bayleaf.safety.paths import pascals


def find(record: Record, context: Context) -> Iterator[Finding]:
    equipment = context.book.of("equipment")
    for step in context.procedures.walk(record).own:
        reached = [p for p in (*step.act_paths, *step.read_paths) if p.carries == "fuel" and p.side != "high"]
        path = max((p for p in reached if p.greatest is not None), key=lambda p: p.greatest or 0.0, default=None)
        names = [*step.data.get("equipment", []), step.data.get("takes", {}).get("instrument")]
        if path is None:
            continue
        for name in dict.fromkeys(n for n in names if isinstance(n, str)):
            rated = equipment[name].data.get("rated") if name in equipment and equipment[name].sound else None
            most = pascals(rated)
            if rated and most is not None and most < (path.greatest or 0.0):
                words = f"step {step.number} puts {name}, rated {rated['value']:g} {rated['unit']}, on the path {path.name}, which can bring more"
                yield RULE.at(record, words, path=spot(record, step, "takes", "equipment"))


RULE = Rule(
    code="SAFE-65",
    level="error",
    scope="record",
    kinds=("procedures",),
    title="Rated below the path",
    what="Every instrument, hose and vessel of a step on a fuel path is rated for the greatest credible pressure there, whatever the range of its scale.",
    why="A scale says what can be read; the rating says what bursts.",
    mend="Name equipment that is rated for the greatest pressure of the path.",
    example=Example("equipment/gauge-0-160.yaml", "rated: {value: 250, unit: psi}", "rated: {value: 40, unit: psi}"),
    find=find,
)
