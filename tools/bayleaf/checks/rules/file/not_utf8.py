"""FILE-1: not plain UTF-8."""

from __future__ import annotations

from bayleaf.checks.rule import Example, reader_rule

RULE = reader_rule(
    code="FILE-1",
    title="Not plain UTF-8",
    what="A record is UTF-8 text without a byte-order mark.",
    why=(
        "Any other encoding turns a degree sign or a Greek letter into something else on the next machine, and a "
        "byte-order mark hides in front of the first field."
    ),
    mend="Save the file as UTF-8 without a byte-order mark.",
    example=Example(
        "components/battery.yaml",
        "Feeds the pump circuit when the engine is off.\nfound",
        "Feeds the pump circuit \udcb0 when the engine is off.\nfound",
    ),
)
