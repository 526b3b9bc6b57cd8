"""LINK-1: id that does not exist."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.messages import either, field, mean
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.nearest import several
from bayleaf.records import KIND, KINDS, Record, listed


def find(record: Record, context: Context) -> Iterator[Finding]:
    """Did-you-mean looks at the kinds that may stand there."""
    every = context.book.every
    for link in context.references.links(record) if context.references.misnames(record) else ():
        if link.id not in every:
            kinds = link.kinds or KINDS
            kind = either(KIND[k].singular for k in link.kinds) or "record"
            help = mean(
                link.id,
                (id for k in kinds for id in context.book.of(k)),
                f"Write the {kind} first, or take an id that exists.",
            )
            if link.kinds == ("symptoms",):
                help = _complaints(link.id, context)
            yield RULE.at(
                record,
                f"{field(record, link.path)}: there is no {kind} {link.id or '(nothing)'}",
                help,
                link.path,
                link.key,
            )


def _complaints(said: str, context: Context) -> str:
    """The complaints that are nearest to what was said, by id, title or other name: a person knows one by its words."""
    symptoms = context.book.of("symptoms")
    names: dict[str, str] = {}
    for id, symptom in symptoms.items():
        for name in (id, symptom.title, *listed(symptom.data.get("also_called"))):
            names[str(name).lower().replace(" ", "-")] = id
    near = dict.fromkeys(names[name] for name in several(said.lower().replace(" ", "-"), names, 6))
    told = "; ".join(f"{id} ({symptoms[id].title})" for id in list(near)[:3])
    return f"The nearest complaints are {told}." if told else "Take a complaint of the book, or felt: none."


RULE = Rule(
    code="LINK-1",
    level="error",
    scope="record",
    title="Id that does not exist",
    what="Every id that a record names, in a field or in its text, exists in the book.",
    why="A link that leads nowhere is a test that nobody can find, or a caution that nobody sees.",
    mend="Correct the id, or write the record that it names.",
    example=Example(
        "procedures/measure-primed-pressure.yaml",
        "takes: {reading: rail-pressure-primed",
        "takes: {reading: rail-presure-primed",
    ),
    find=find,
)
