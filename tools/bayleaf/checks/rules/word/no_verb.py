"""WORD-1: step that does not start with a verb."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.messages import field, mean
from bayleaf.checks.prose.writing import plain, start, steps_of, verbs
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record


def find(record: Record, _context: Context) -> Iterator[Finding]:
    """The first sentence of a step must start with a verb; later ones may say what will be seen."""
    todo = (
        list(steps_of(record))
        if record.kind == "procedures"
        else [(("avoid", i), t) for i, t in enumerate(record.data["avoid"])]
    )
    for path, text in todo:
        first, clause = start(plain(text).strip())
        if first not in verbs():
            help = mean(first, verbs(), nearness=0.8)
            yield RULE.at(
                record,
                f"{field(record, path)} starts with {first or 'no word'}, which is no verb of the list",
                help,
                path,
            )
        elif clause > 12:
            yield RULE.at(
                record,
                f"{field(record, path)} opens with a clause of {clause} words",
                "Keep it to twelve, or make it a step.",
                path,
            )


RULE = Rule(
    code="WORD-1",
    level="error",
    scope="record",
    title="Step that does not start with a verb",
    what=(
        "A step, and each of its sentences, starts with a verb of the list, after a clause of at most twelve "
        "words if there is one. So does an avoidance, or with Do not or Never."
    ),
    why="Whoever works with one hand on the car reads the first word: it must say what to do.",
    mend=(
        "Start with the verb. If the verb is missing from the list and says what hands, eyes or ears do, add it "
        "to verbs.txt."
    ),
    example=Example(
        "procedures/measure-idle-pressure.yaml", "do: Read the vacuum gauge.", "do: The vacuum gauge is read."
    ),
    find=find,
    kinds=("procedures", "cautions"),
)
