"""CALC-12: calculator fed by a name that it does not have."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.facts.feeds import feeds_of
from bayleaf.checks.messages import either, mean
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record


def find(record: Record, context: Context) -> Iterator[Finding]:
    """Computed readings and expectations."""
    for feed in feeds_of(record, context.book):
        inputs, results = feed.calculator.data["inputs"], feed.calculator.data["result"]
        for name in feed.inputs:
            if name not in inputs:
                help = mean(name, inputs, f"It may be {either(inputs)}.")
                yield RULE.at(record, f"{feed.calculator.id} has no input {name}", help, (*feed.path, name), True)
        if not feed.chosen or feed.chosen not in results:
            message = (
                f"{feed.calculator.id} has the results {either(results, 'and')}, and {feed.chosen or 'none'} is named"
            )
            yield RULE.at(record, message, "Write result with one of them.", feed.path[:-1])


RULE = Rule(
    code="CALC-12",
    level="error",
    scope="record",
    title="Calculator fed by a name that it does not have",
    what=(
        "Where a reading or a band uses a calculator, it feeds inputs that the calculator has, and says which "
        "result when there are several."
    ),
    why=(
        "An input with a slip in its name stands at its default, and the value comes out as if nothing had been "
        "measured."
    ),
    mend="Name inputs and results as the calculator does.",
    example=Example(
        "readings/injector-pressure-idle.yaml",
        "manifold_vacuum: {reading: manifold-vacuum-idle}",
        "manifold_vacum: {reading: manifold-vacuum-idle}",
    ),
    find=find,
    kinds=("readings", "systems"),
)
