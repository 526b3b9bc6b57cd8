"""LINK-2: id of another kind."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.messages import either, field, mean
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import KIND, Record


def find(record: Record, context: Context) -> Iterator[Finding]:
    """Links in text may lead to any kind."""
    every = context.book.every
    for link in context.references.links(record) if context.references.misnames(record) else ():
        result = every.get(link.id)
        if result is not None and link.kinds and result.kind not in link.kinds:
            kind = either(KIND[k].singular for k in link.kinds)
            help = mean(
                link.id, (id for k in link.kinds for id in context.book.of(k)), f"Name the id of one that is a {kind}."
            )
            message = f"{field(record, link.path)}: {link.id} is of the kind {KIND[result.kind].singular}, not {kind}"
            yield RULE.at(record, message, help, link.path, link.key)


RULE = Rule(
    code="LINK-2",
    level="error",
    scope="record",
    title="Id of another kind",
    what="A field that names a record names one of the kind that belongs there.",
    why=(
        "A component where a reading is meant has a page, so the slip is not seen; but no verdict and no caution "
        "follow from it."
    ),
    mend="Name a record of the right kind.",
    example=Example("symptoms/rough-idle.yaml", "first: [fuel-in-regulator-hose]", "first: [regulator-vacuum-hose]"),
    find=find,
)
