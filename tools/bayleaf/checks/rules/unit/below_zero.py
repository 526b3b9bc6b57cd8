"""UNIT-5: value below an absolute zero, or a signed vacuum."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.facts.sites import Site
from bayleaf.checks.messages import field, number
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding


def check(site: Site, context: Context) -> Iterator[Finding]:
    """Numbers of quantities that are absolute or a vacuum, a job's readings too."""
    if not site.known or site.quantity.reference not in ("absolute", "vacuum"):
        return
    for path, value in site.numbers.items():
        if site.si(value) < 0:
            words = (
                "a vacuum is a positive number"
                if site.quantity.reference == "vacuum"
                else "nothing is below absolute zero"
            )
            yield RULE.at(site.record, f"{field(site.record, path)} is {number(value)} {site.unit}; {words}", path=path)


RULE = Rule(
    code="UNIT-5",
    level="error",
    scope="value",
    title="Value below an absolute zero, or a signed vacuum",
    what="An absolute pressure or temperature is not below zero, and a vacuum is a positive number.",
    why=(
        "A vacuum written as a negative number is read as a pressure above the atmosphere by the next person and "
        "by every formula."
    ),
    mend="Write 18 for eighteen inches of vacuum; the quantity says already that it is one.",
    example=Example(
        "systems/port-injection-return.yaml",
        "manifold-vacuum-idle: {min: 12, max: 22",
        "manifold-vacuum-idle: {min: -22, max: -12",
    ),
    check=check,
    roles=("band", "range", "value", "reading"),
)
