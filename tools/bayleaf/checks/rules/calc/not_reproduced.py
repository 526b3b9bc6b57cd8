"""CALC-7: worked check that is not reproduced."""

from __future__ import annotations

import math
from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.messages import number
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record


def find(record: Record, context: Context) -> Iterator[Finding]:
    """Every result of every check."""
    for one in context.calculators.proof(record).checks:
        if not one.ok:
            got = "nothing" if math.isnan(one.got) else f"{number(one.got)} {one.unit}"
            message = f"check {one.place + 1}: {one.line} comes out as {got}, not {number(one.wanted)} within {number(one.within)}"
            yield RULE.at(record, message, path=("checks", one.place, "gives", one.line, "value"))


RULE = Rule(
    code="CALC-7",
    level="error",
    scope="record",
    title="Worked check that is not reproduced",
    what="Every worked check comes out within its tolerance.",
    why="It is the only proof that the formula was copied right.",
    mend=(
        "Look at the formula, the constants and the units before the tolerance; it says how exact the source is, "
        "not how wrong the result may be."
    ),
    example=Example("calculators/pressure-across-injector-idle.yaml", "across: {value: 54.91", "across: {value: 59.41"),
    find=find,
    kinds=("calculators",),
)
