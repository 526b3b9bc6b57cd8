"""FILE-6: YAML that breaks off."""

from __future__ import annotations

from bayleaf.checks.rule import Example, reader_rule

RULE = reader_rule(
    code="FILE-6",
    title="YAML that breaks off",
    what="The text must be YAML that can be read to its end, with field names that are text.",
    why="Everything after the break would be lost.",
    mend="Look at the indentation, the colons and the quotes of the line and of the one above it.",
    example=Example("components/battery.yaml", "found: Under the hood.", "found: Under the hood: left"),
)
