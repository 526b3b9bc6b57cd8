"""WORD-8: other word where the glossary has one."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.messages import field
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record


def find(record: Record, context: Context) -> Iterator[Finding]:
    """Not in the glossary itself, and not in also_called, where such words belong."""
    texts = context.texts
    for path, text in texts.prose(record) if texts.synonyms and texts.may_hold_synonyms(record) else ():
        for match in texts.synonym_pattern.finditer(text):
            title = texts.synonyms[match[0].lower()]
            if title.lower() not in text.lower():
                yield RULE.at(
                    record, f"{field(record, path)} says {match[0]}, which the glossary calls {title}", path=path
                )
                break


RULE = Rule(
    code="WORD-8",
    level="warning",
    scope="record",
    title="Other word where the glossary has one",
    what="Texts use the title of a term, not the other words that the glossary gives for it.",
    why="Two words for one thing look like two things to whoever is new.",
    mend="Write the word that the message names.",
    example=Example(
        "components/in-tank-pump.yaml",
        "fails: [Wears and loses flow.]",
        "fails: [Wears when people block off the pump.]",
    ),
    find=find,
    kinds=(
        "systems",
        "components",
        "equipment",
        "readings",
        "procedures",
        "faults",
        "symptoms",
        "codes",
        "calculators",
        "cautions",
        "hazards",
        "conditions",
        "states",
    ),
    excusable=True,
)
