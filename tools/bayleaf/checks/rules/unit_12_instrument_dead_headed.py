"""UNIT-12: instrument that a dead-headed pump can burst."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.instruments import too_short
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record


def check(record: Record, context: Context) -> Iterator[Finding]:
    """From a clamp on, every instrument that measures a fuel path is held against the greatest pressure of the path."""
    clamped: list[str] = []
    for i, step in enumerate(record.data["steps"]):
        if step.get("act") == "clamp":
            clamped.append(step.get("at", ""))
        elif step.get("act") == "unclamp" and step.get("at") in clamped:
            clamped.remove(step["at"])
        takes = step.get("takes", {})
        for one, short in too_short(context, record, takes) if clamped else ():
            words = f"the line is clamped at {clamped[-1]}, and {one.id} ends at or under {short}"
            yield RULE.at(record, f"step {i + 1}: {words}", path=("steps", i, "takes", "instrument"))


RULE = Rule(
    code="UNIT-12",
    level="error",
    scope="record",
    title="Instrument that a dead-headed pump can burst",
    what=(
        "Where a step clamps a line that carries fuel, the instrument on it shows more than the greatest credible"
        " pressure of that path."
    ),
    why=(
        "A pump against a closed line reaches its relief setting at once; a gauge that ends there can burst in "
        "the hands that hold it."
    ),
    mend="Name an instrument with a higher range, or do not close the line.",
    example=Example(
        "procedures/measure-primed-pressure.yaml",
        "  - do: Switch the key on and read",
        "  - {do: Clamp the return hose., act: clamp, at: pressure-regulator}\n  - do: Switch the key on and read",
    ),
    check=check,
    kinds=("procedures",),
)
