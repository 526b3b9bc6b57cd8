"""SHAPE-7: number outside the bounds of its field."""

from __future__ import annotations

from bayleaf.checks.rule import Example, reader_rule

RULE = reader_rule(
    code="SHAPE-7",
    title="Number outside the bounds of its field",
    what="A number keeps to the bounds that its schema sets, such as at least one person.",
    why="Outside them the field has no meaning.",
    mend="Write a number inside the bounds that the message names.",
    example=Example("procedures/fit-gauge.yaml", "people: 1", "people: 0"),
)
