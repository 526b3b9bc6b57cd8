"""SAFE-25: pressure is put on a system with no ceiling, or above its own."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.paths import pascals
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record

VAPOUR = {"value": 0.45, "unit": "psi"}  # tank and evaporative system; common practice, no source


def _check(record: Record, context: Context) -> Iterator[Finding]:
    for step in context.walk(record).steps:
        if step.source != record.id or "pressurise" not in step.own:
            continue
        limit = step.data.get("at_most")
        if limit is None or pascals(limit) is None:
            words = f"step {step.number} puts pressure on a system and no at_most says how much it may bear"
            yield RULE.at(record, words, "Write at_most with a pressure and its basis.", (*step.place, "at_most" if limit else "act"))
            continue
        ceilings = [(p.greatest, f"the path {p.name} of {p.system}") for p in step.act_paths if p.greatest is not None and p.carries != "fuel"]
        ceilings += [(pascals(VAPOUR), "a tank or an evaporative system, 0.45 psi")] if any(p.carries == "vapour" for p in step.act_paths) else []
        top = min(ceilings, default=None)
        if top is not None and pascals(limit) > top[0] * (1 + 1e-9):
            words = f"step {step.number} allows {limit['value']:g} {limit['unit']}, above the ceiling of {top[1]}"
            yield RULE.at(record, words, "Lower at_most to the ceiling of the weakest part.", (*step.place, "at_most", "value"))


RULE = Rule(
    code="SAFE-25",
    level="error",
    scope="record",
    kinds=("procedures",),
    title="Pressure without a ceiling",
    what="A step that pressurises says `at_most`, and that is not above the ceiling of any path through the part; for vapour it is 0.45 psi.",
    why="A tank, a canister or a charge hose that was made for little pressure bursts, and its plug flies.",
    mend="Write at_most with the ceiling of this system and its basis.",
    example=Example(
        "procedures/look-into-regulator-hose.yaml",
        "  - {do: Push the hose on",
        "  - {do: Blow into the hose., act: pressurise, at: regulator-vacuum-hose}\n  - {do: Let the pressure off., act: vent, at: regulator-vacuum-hose}\n  - {do: Push the hose on",
    ),
    check=_check,
)
