"""UNIT-8: more digits than the basis can carry."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.facts.amounts import Amount
from bayleaf.checks.messages import field
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding


def find(amount: Amount, _context: Context) -> Iterator[Finding]:
    """Counts the digits as typed; zeros at the end of a whole number do not count."""
    if (
        not amount.basis
        or not ("practice" in amount.basis or "invented" in amount.basis)
        or amount.record.kind in ("calculators", "quantities")
    ):
        return
    for path, value in amount.numbers.items():
        typed = amount.record.typed(path) or repr(value)
        digits = typed.lstrip("-").split("e")[0].lstrip("0.")
        digits = digits.replace(".", "") if "." in typed else digits.rstrip("0")
        if len(digits) > 3:
            yield RULE.at(
                amount.record,
                f"{field(amount.record, path)} is {typed}, with {len(digits)} digits that count",
                path=path,
            )


RULE = Rule(
    code="UNIT-8",
    level="warning",
    scope="value",
    title="More digits than the basis can carry",
    what="A number that rests on common practice, or that was invented, has at most three digits that count.",
    why=(
        "A fourth digit promises an accuracy that nobody has measured; it is often a rounded value of another "
        "unit, converted."
    ),
    mend="Round it, write it in the unit that it was made in, or name the source that gives all its digits.",
    example=Example(
        "systems/port-injection-return.yaml",
        "pump-supply-voltage: {min: 11.5",
        "pump-supply-voltage: {min: 11.503",
    ),
    find=find,
)
