"""FILE-4: too large, too deep or too many values."""

from __future__ import annotations

from bayleaf.checks.rule import Example, reader_rule

RULE = reader_rule(
    code="FILE-4",
    title="Too large, too deep or too many values",
    what="A file has at most 64 kB, 40 levels of nesting and 5,000 values.",
    why=(
        "A record is one fact that a person can read. Beyond these limits it is a mistake or an attack, and a "
        "file that is nested deeply enough ends the parser."
    ),
    mend="Split it into smaller records.",
    example=Example(
        "components/battery.yaml",
        "title: Battery",
        "title: [[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]",
    ),
)
