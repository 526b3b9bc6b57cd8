"""UNIT-21: greatest pressure under the band that is measured there."""

from __future__ import annotations

import math
from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.facts.bands import as_written, limits
from bayleaf.checks.messages import implausible
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record
from bayleaf.safety.paths import pascals


def find(record: Record, context: Context) -> Iterator[Finding]:
    """Bands of readings at a component of a path that carries fuel."""
    paths = {p["name"]: p["greatest"] for p in record.data["paths"] if "greatest" in p}
    places = [p["name"] for p in record.data["paths"]]
    for band in [
        s for s in context.amounts.of(record) if s.role == "band" and s.known and s.quantity.reference == "gauge"
    ]:
        reading = context.book.of("readings").get(band.path[1])
        on = context.layout.paths(reading.data.get("at", "")) if reading else ()
        most = max((pascals(g) or math.inf for n, g in paths.items() if (record.id, n) in on), default=math.inf)
        if most < limits(band)[1] < math.inf and not any(implausible(band)):  # the band itself is wrong: UNIT-3
            name = next(n for n in paths if (record.id, n) in on)
            message = (
                f"the band of {band.path[1]}, {as_written(band)}, goes above the greatest pressure of the path {name}"
            )
            yield RULE.at(record, message, path=("paths", places.index(name), "greatest"))


RULE = Rule(
    code="UNIT-21",
    level="error",
    scope="record",
    title="Greatest pressure under the band that is measured there",
    what=(
        "The greatest credible pressure of a path is not less than the upper limit of any pressure that is read "
        "on the path."
    ),
    why="Hazards and ratings are judged by the greatest pressure; when it is too small, a caution is not asked for.",
    mend="Raise the greatest pressure, or correct the band.",
    example=Example("systems/direct-injection.yaml", "greatest: {value: 5000", "greatest: {value: 500"),
    find=find,
    kinds=("systems",),
)
