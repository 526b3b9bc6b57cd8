"""BASIS-6: basis that gives something else."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.facts.amounts import Amount
from bayleaf.checks.messages import either
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding


def find(amount: Amount, context: Context) -> Iterator[Finding]:
    """The quantities of all its results against the quantity of the number."""
    if not amount.basis or "calculator" not in amount.basis or amount.meant is None:
        return
    calculator = context.book.of("calculators").get(amount.basis["calculator"])
    if calculator is None or not calculator.sound:
        return
    given = [context.desk.quantities.get(r["quantity"]) for r in calculator.data["result"].values()]
    if not any(
        q and (q.dimension, q.reference) == (amount.quantity.dimension, amount.quantity.reference) for q in given
    ):
        message = f"{calculator.id} gives {either((q.title.lower() for q in given if q), 'and')}, not {amount.quantity.title.lower()}"
        yield RULE.at(amount.record, message, path=(*amount.path, "basis"))


RULE = Rule(
    code="BASIS-6",
    level="error",
    scope="value",
    title="Basis that gives something else",
    what="A calculator that is named as a basis gives a result of the same dimension and reference.",
    why="Otherwise the number does not come from it, wherever else it comes from.",
    mend="Name the calculator that gives the number, or another basis.",
    example=Example(
        "systems/port-injection-return.yaml",
        "pump-supply-voltage: {min: 11.5, max: 15, unit: V, means: limit, basis: {practice: true}}",
        "pump-supply-voltage: {min: 11.5, max: 15, unit: V, means: limit, basis: {calculator: pressure-across-injector-idle}}",
    ),
    find=find,
)
