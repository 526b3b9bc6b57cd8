"""FILE-9: field without a value."""

from __future__ import annotations

from bayleaf.checks.rule import Example, reader_rule

RULE = reader_rule(
    code="FILE-9",
    title="Field without a value",
    what="Every field has a value; an empty list or map is written none.",
    why="An empty value does not say whether it was forgotten or is not there.",
    mend="Fill it in, write none where that is allowed, or delete the field.",
    example=Example("components/battery.yaml", "found: Under the hood.", "found:"),
)
