"""SAFE-25: pressure is put on a system with no ceiling, or above its own."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.quantities import to_si
from bayleaf.records import Record
from bayleaf.safety.paths import PathFact, pascals
from bayleaf.vocabulary import Acts

# What a system bears at most; common practice, no source. A path that states its own greatest pressure may bear less.
VAPOUR = (0.45, "a tank or an evaporative system")
INTAKE = (1.0, "an intake without boost, or a crankcase")
CHARGE = (10.0, "the charge side")


def find(record: Record, context: Context) -> Iterator[Finding]:
    for step in context.procedures.walk(record).doing(Acts.PRESSURISE):
        limit = step.data.get("at_most")
        most = pascals(limit)
        if limit is None or most is None:
            message = f"step {step.number} puts pressure on a system and no at_most says how much it may bear"
            yield RULE.at(
                record,
                message,
                "Write at_most with a pressure and its basis.",
                (*step.place, "at_most" if limit else "act"),
            )
            continue
        ceilings = [(p.greatest, f"the path {p.name} of {p.system}") for p in step.act_paths if p.greatest is not None]
        known = dict.fromkeys(filter(None, (_ceiling(context, p) for p in step.act_paths)))
        ceilings += [(to_si(value, "psi", "gauge"), f"{name}, {value:g} psi") for value, name in known]
        top = min(ceilings, default=None)
        if top is not None and most > top[0] * (1 + 1e-9):
            message = f"step {step.number} allows {limit['value']:g} {limit['unit']}, above the ceiling of {top[1]}"
            yield RULE.at(
                record, message, "Lower at_most to the ceiling of the weakest part.", (*step.place, "at_most", "value")
            )


def _ceiling(context: Context, path: PathFact) -> tuple[float, str] | None:
    """What a path of this kind bears, in psi, and its name; None where only the maker's figure can say."""
    parts = [c for p in context.book.of("systems")[path.system].data["paths"] for c in p["through"]]
    boosted = any("charge" in c for c in parts)
    return {"vapour": VAPOUR, "air": CHARGE if boosted else INTAKE, "vacuum": INTAKE}.get(path.carries)


RULE = Rule(
    code="SAFE-25",
    level="error",
    scope="record",
    kinds=("procedures",),
    title="Pressure without a ceiling",
    what=(
        "A step that pressurises says `at_most`, and that is not above the ceiling of any path through the part: its own greatest pressure, "
        "0.45 psi for vapour, 1 psi for an intake without boost, 10 psi for the charge side."
    ),
    why="A tank, a canister or a charge hose that was made for little pressure bursts, and its plug flies.",
    mend="Write at_most with the ceiling of this system and its basis.",
    example=Example(
        "procedures/look-into-regulator-hose.yaml",
        "  - {do: Push the hose on",
        "  - {do: Blow into the hose., act: pressurise, at: regulator-vacuum-hose}\n  - {do: Let the pressure off., act: vent, at: regulator-vacuum-hose}\n  - {do: Push the hose on",
    ),
    find=find,
)
