"""BOOK-2: rule that cannot be excepted."""

from __future__ import annotations

from bayleaf.checks.rule import Example, reader_rule

RULE = reader_rule(
    code="BOOK-2",
    title="Rule that cannot be excepted",
    what="Only rules that judge, such as those of writing, can be excepted in a record.",
    why="A wrong unit or a missing caution stays wrong with any reason.",
    mend="Mend what the rule complains about and delete the exception.",
    example=Example(
        "components/fuel-filter.yaml",
        "status: draft",
        "status: draft\nexceptions: [{rule: LINK-1, because: The record is still being written.}]",
    ),
)
