"""BOOK-1: exception that is no longer needed."""

from __future__ import annotations

from bayleaf.checks.rule import Example, reader_rule

RULE = reader_rule(
    code="BOOK-1",
    title="Exception that is no longer needed",
    what="An exception silences something: the rule would speak without it.",
    why="One that is left over would silence the next slip, which nobody excused.",
    mend="Delete the exception.",
    example=Example(
        "components/fuel-filter.yaml",
        "status: draft",
        "status: draft\nexceptions: [{rule: WORD-5, because: The word is part of a name.}]",
    ),
)
