"""SAFE-30: a signal word typed into a text."""

from __future__ import annotations

import re
from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.prose.writing import texts_of
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record

WORDS = ("DANGER", "WARNING", "CAUTION", "NOTICE")
TYPED = re.compile(r"\b(DANGER|WARNING|CAUTION|NOTICE)\b|^\s*(Danger|Warning|Caution|Notice)\s*[:!]")
OPENED = tuple(word.capitalize() for word in WORDS)
_SIGNS = tuple(word.encode() for word in WORDS + OPENED)


def find(record: Record, context: Context) -> Iterator[Finding]:
    for path, text in texts_of(record.data) if context.texts.may_hold(record, _SIGNS) else ():
        if text.startswith(OPENED) or any(word in text for word in WORDS):
            hit = TYPED.search(text)
            if hit:
                yield RULE.at(record, f"the signal word {hit.group().strip()} is typed into the text", path=path)


RULE = Rule(
    code="SAFE-30",
    level="error",
    scope="record",
    kinds=("procedures",),
    title="Signal word in a text",
    what="A signal word stands only where a caution is shown. The step names the caution in `cautions`, and the page puts it before the step.",
    why="A warning inside a step has no severity that could be checked, comes too late, and is not translated, counted or found.",
    mend="Name a caution in the cautions of the step.",
    example=Example(
        "procedures/running-engine-preparation.yaml",
        "do: Connect the exhaust extraction.",
        "do: Connect the exhaust extraction (WARNING).",
    ),
    find=find,
)
