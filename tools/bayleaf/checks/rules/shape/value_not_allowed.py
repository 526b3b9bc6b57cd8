"""SHAPE-4: value that is not allowed."""

from __future__ import annotations

from bayleaf.checks.rule import Example, reader_rule

RULE = reader_rule(
    code="SHAPE-4",
    title="Value that is not allowed",
    what="A field with a closed list of values holds one of them.",
    why="Each value of a closed list means one thing to the checker and to the pages; any other means nothing.",
    mend="Take one of the values that the message lists.",
    example=Example("components/fuel-filter.yaml", "status: draft", "status: finished"),
)
