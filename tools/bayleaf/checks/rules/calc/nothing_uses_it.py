"""CALC-13: calculator that nothing uses."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding


def find(context: Context) -> Iterator[Finding]:
    """Any link counts but its own."""
    for id, record in context.book.of("calculators").items():
        if id not in context.references.named:
            yield RULE.at(record, f"nothing names the calculator {id}", path=("title",))


RULE = Rule(
    code="CALC-13",
    level="advice",
    scope="book",
    title="Calculator that nothing uses",
    what="A system, a procedure or a reading names each calculator, or a text links to it.",
    why="Nobody meets it where its number is needed.",
    mend="Name it in calculators of the procedure or the system where it helps.",
    example=Example(
        "calculators/pressure-at-sea.yaml",
        "",
        (
            "# yaml-language-server: $schema=../../schemas/calculators.schema.json\n"
            "title: Pressure across a second injector\n"
            "summary: Rail gauge pressure with the manifold vacuum added.\n"
            "status: draft\n"
            "inputs:\n"
            "  rail: {quantity: rail-pressure, unit: psi, default: 35, min: 0, max: 100}\n"
            "  manifold_vacuum: {quantity: manifold-vacuum, unit: inHg, default: 18, min: 0, max: 25}\n"
            "formula:\n"
            "  across: rail - gauge(manifold_vacuum)\n"
            "result:\n"
            "  across: {quantity: pressure-across-injector, unit: psi, digits: 3}\n"
            "basis: {practice: true}\n"
            "holds: A regulator whose hose is on the manifold, at any vacuum.\n"
            "fails: It says nothing about a regulator in the tank.\n"
            "table:\n"
            "  rows: {rail: [30, 35, 40]}\n"
            "  columns: {manifold_vacuum: [15, 18, 21]}\n"
            "checks:\n"
            "  - given: {rail: {value: 35, unit: psi}, manifold_vacuum: {value: 18, unit: inHg}}\n"
            "    gives: {across: {value: 43.84, unit: psi, within: {value: 0.02, unit: psi}}}\n"
            "    working: One inHg is 0.49115 psi, so 18 inHg are 8.841 psi, and 35 and 8.841 make 43.841.\n"
            "  - given: {rail: {value: 50, unit: psi}, manifold_vacuum: {value: 10, unit: inHg}}\n"
            "    gives: {across: {value: 54.91, unit: psi, within: {value: 0.02, unit: psi}}}\n"
            "    working: Ten inHg are 4.9115 psi, and 50 and 4.9115 make 54.91.\n"
            "  - given: {rail: {value: 300, unit: kPa}, manifold_vacuum: {value: 50, unit: kPa}}\n"
            "    gives: {across: {value: 350, unit: kPa, within: {value: 0.1, unit: kPa}}}\n"
            "    working: 300 and 50 make 350.\n"
        ),
    ),
    find=find,
    excusable=True,
)
