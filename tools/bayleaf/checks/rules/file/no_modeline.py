"""FILE-14: first line does not name the schema."""

from __future__ import annotations

from bayleaf.checks.rule import Example, reader_rule

RULE = reader_rule(
    code="FILE-14",
    title="First line does not name the schema",
    what="The first line of a file names its schema by a relative path, for editors.",
    why="With it an editor shows what each field means and marks a slip while it is typed.",
    mend="Copy the line from another record of the same kind.",
    example=Example(
        "components/battery.yaml",
        "# yaml-language-server: $schema=../../schemas/components.schema.json\n",
        "# The battery\n",
    ),
)
