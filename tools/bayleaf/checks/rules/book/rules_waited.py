"""BOOK-8: rules over the whole book that waited."""

from __future__ import annotations

from bayleaf.checks.rule import Example, reader_rule

RULE = reader_rule(
    code="BOOK-8",
    title="Rules over the whole book that waited",
    what="The rules that look at the whole book run only when every record can be read and has its shape.",
    why=(
        "What they would call missing may stand in a record that could not be read; but a rule that did not run "
        "must say so."
    ),
    mend="Mend the errors of files and shapes first.",
    example=Example("components/fuel-filter.yaml", "status: draft", "status: finished"),
)
