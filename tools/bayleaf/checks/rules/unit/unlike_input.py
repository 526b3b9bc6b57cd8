"""UNIT-18: calculator fed with something else."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.facts.feeds import feeds_of
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record


def find(record: Record, context: Context) -> Iterator[Finding]:
    """Feeds of computed readings and of expectations."""
    for feed in feeds_of(record, context.book):
        for name, given in feed.inputs.items():
            wanted = context.desk.quantities.get(feed.calculator.data["inputs"].get(name, {}).get("quantity"))
            fed = context.amounts.measured(given.get("reading", ""))
            if wanted and fed and (wanted.dimension, wanted.reference) != (fed.dimension, fed.reference):
                message = f"the input {name} is {wanted.title.lower()} ({wanted.reference}), not {fed.title.lower()} ({fed.reference})"
                yield RULE.at(record, message, path=(*feed.path, name))
        result, wanted = context.desk.quantities.get(feed.result), context.amounts.measured(feed.reading)
        if result and wanted and (wanted.dimension, wanted.reference) != (result.dimension, result.reference):
            message = f"{feed.calculator.id} gives {result.title.lower()} ({result.reference}), not {wanted.title.lower()} ({wanted.reference})"
            yield RULE.at(record, message, path=feed.path[:-1])


RULE = Rule(
    code="UNIT-18",
    level="error",
    scope="record",
    title="Calculator fed with something else",
    what=(
        "What is fed into an input of a calculator has the dimension and the reference of that input, and what "
        "comes out those of the reading."
    ),
    why="A vacuum fed into a gauge pressure, or a gauge pressure into an absolute one, gives a number that looks right.",
    mend="Feed a reading of the same quantity, or use another calculator.",
    example=Example(
        "readings/injector-pressure-idle.yaml",
        "manifold_vacuum: {reading: manifold-vacuum-idle}",
        "manifold_vacuum: {reading: rail-pressure-primed}",
    ),
    find=find,
    kinds=("readings", "systems"),
)
