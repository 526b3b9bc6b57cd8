"""SHAPE-2: missing field."""

from __future__ import annotations

from bayleaf.checks.rule import Example, reader_rule

RULE = reader_rule(
    code="SHAPE-2",
    title="Missing field",
    what="The fields that the schema requires are there, and a map is not empty.",
    why="A page, a verdict or a caution is made of them; without one, something is left unsaid.",
    mend="Add the field; the help says what it is. Write none where there is nothing to list and the schema allows it.",
    example=Example("components/fuel-filter.yaml", "found: Under the floor between tank and engine.\n", ""),
)
