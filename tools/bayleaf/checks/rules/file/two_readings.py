"""FILE-10: value that is read in two ways."""

from __future__ import annotations

from bayleaf.checks.rule import Example, reader_rule

RULE = reader_rule(
    code="FILE-10",
    title="Value that is read in two ways",
    what="A plain value must mean the same in YAML 1.1 and in YAML 1.2: off, 1:30, 010, 12e3, a date or a tilde do not.",
    why="The checker, an editor and the next program would each see something else: off becomes false, 1:30 becomes 90.",
    mend="Put it in quotes if it is text; else write a plain number, or true or false.",
    example=Example("readings/fuel-in-regulator-hose.yaml", 'answers: [dry, wet, "off"]', "answers: [dry, wet, off]"),
)
