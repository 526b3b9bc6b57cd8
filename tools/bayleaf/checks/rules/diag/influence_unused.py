"""DIAG-24: an influence that no fault uses."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.rule import Example, Rule
from bayleaf.diagnosis.faults.graph import graph_of
from bayleaf.diagnosis.faults.spared import disturbed
from bayleaf.finding import Finding


def find(context: Context) -> Iterator[Finding]:
    """Over all faults together, whatever the limits of the influences."""
    graph, reached = graph_of(context.book), set()
    fresh = [v for fault in context.claims.faults for v in disturbed(context.book, context.book.of("faults")[fault])]
    for name in fresh:
        if name not in reached:
            reached.add(name)
            fresh += [influence.to for influence in graph.influences.get(name, ())]
    for name, entry in context.book.of("variables").items():
        if name not in reached:
            yield RULE.at(
                entry,
                f"no fault disturbs {name}, directly or through others, so its influences are not used",
                path=("influences",),
            )


RULE = Rule(
    code="DIAG-24",
    level="advice",
    scope="book",
    title="Influence that no fault uses",
    what="Some fault disturbs each variable, directly or through others.",
    why="Nothing in the book tries such an influence, and nobody will see that it is wrong.",
    mend="Name the variable where a part carries it or a fault disturbs it, or leave it for the fault that is to come.",
    example=Example("components/regulator-vacuum-hose.yaml", "variables: [regulator-reference]\n", ""),
    find=find,
    excusable=True,
)
