"""UNIT-19: instrument that does not measure this."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.messages import either, field
from bayleaf.checks.rule import Example, Rule
from bayleaf.diagnosis.verdicts.instrument import types_of
from bayleaf.finding import Finding
from bayleaf.records import Record


def find(record: Record, context: Context) -> Iterator[Finding]:
    """Steps of procedures and entries of jobs; a type measures what it says, a named instrument what it or its type says."""
    uses: list[tuple[tuple, dict]]
    if record.kind == "procedures":
        uses = [(("steps", i, "takes"), step["takes"]) for i, step in context.procedures.steps_with(record, "takes")]
    else:
        uses = [(("readings", i), entry) for i, entry in enumerate(record.data["readings"])]
    for path, use in uses:
        quantity = context.amounts.measured(use.get("reading", ""))
        known = [context.book.of("equipment")[id] for id in types_of(context.book, use.get("instrument", ""))]
        measures = [m for one in known if one.sound for m in one.data["measures"]]
        if quantity and known and quantity.id not in measures:
            message = f"{known[0].id} measures {either(measures, 'and') or 'nothing'}, not {quantity.id}"
            yield RULE.at(record, f"{field(record, path)}: {message}", path=(*path, "instrument"))


RULE = Rule(
    code="UNIT-19",
    level="error",
    scope="record",
    title="Instrument that does not measure this",
    what="The instrument that a step or a job names for a reading measures its quantity.",
    why="A vacuum gauge on a fuel rail bursts, and a voltmeter shows no current.",
    mend="Name an instrument that measures the quantity, or add the quantity to what the instrument measures.",
    example=Example(
        "procedures/measure-idle-pressure.yaml",
        "takes: {reading: manifold-vacuum-idle, instrument: vacuum-gauge}",
        "takes: {reading: manifold-vacuum-idle, instrument: fuel-pressure-gauge}",
    ),
    find=find,
    kinds=("procedures", "jobs"),
)
