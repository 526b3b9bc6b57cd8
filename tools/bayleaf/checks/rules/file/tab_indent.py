"""FILE-3: tab in the indentation."""

from __future__ import annotations

from bayleaf.checks.rule import Example, reader_rule

RULE = reader_rule(
    code="FILE-3",
    title="Tab in the indentation",
    what="Lines are indented with spaces and end with a line feed, or with carriage return and line feed.",
    why=(
        "Editors show a tab at different widths, and YAML refuses it; a lone carriage return makes one line look "
        "like two."
    ),
    mend="Replace each tab by two spaces and save with ordinary line ends.",
    example=Example("components/battery.yaml", "fails: [Loses its charge.]", "fails:\n\t- Loses its charge."),
)
