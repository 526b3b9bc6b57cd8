"""BASIS-6: basis that gives something else."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.facts.sites import Site
from bayleaf.checks.messages import either
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding


def check(site: Site, context: Context) -> Iterator[Finding]:
    """The quantities of all its results against the quantity of the number."""
    if not site.basis or "calculator" not in site.basis or site.quantity is None:
        return
    calculator = context.book.of("calculators").get(site.basis["calculator"])
    if calculator is None or not calculator.sound:
        return
    given = [context.quantities.get(r["quantity"]) for r in calculator.data["result"].values()]
    if not any(q and (q.dimension, q.reference) == (site.quantity.dimension, site.quantity.reference) for q in given):
        words = f"{calculator.id} gives {either((q.title.lower() for q in given if q), 'and')}, not {site.quantity.title.lower()}"
        yield RULE.at(site.record, words, path=(*site.path, "basis"))


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
    check=check,
)
