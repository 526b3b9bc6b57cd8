"""SHAPE-1: unknown field."""

from __future__ import annotations

from bayleaf.checks.rule import Example, reader_rule

RULE = reader_rule(
    code="SHAPE-1",
    title="Unknown field",
    what="A record has only the fields that its schema knows.",
    why=(
        "A field with a slip in its name is passed over in silence everywhere else: the record looks complete and"
        " is not."
    ),
    mend="Take the name that the message proposes, or delete the field.",
    example=Example("components/fuel-filter.yaml", "found: Under", "fuond: Under"),
)
