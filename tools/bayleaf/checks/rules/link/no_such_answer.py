"""LINK-7: answer that the reading does not have."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.facts.answers import answers_of
from bayleaf.checks.messages import either, field, mean
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record


def find(record: Record, context: Context) -> Iterator[Finding]:
    """Recognition, faults, results, states that a reading proves, and jobs."""
    for path, reading, answer, key in (
        answers_of(record) if record.kind != "faults" or not _known(record.data, context.answers) else ()
    ):
        known = context.answers.get(reading, ())
        if known and answer not in known:
            help = mean(answer, known, f"It may be {either(known)}.")
            yield RULE.at(record, f"{field(record, path)}: {reading} is never {answer}", help, path, key)


def _known(fault: dict, answers: dict[str, tuple[str, ...]]) -> bool:
    """A first look at a fault, which names answers by the hundred: whether all of them are known."""
    stages = [
        *fault["stages"].values(),
        *(stage for by in fault.get("differs", {}).values() for stage in by.values()),
    ]
    for reading, said in [pair for stage in stages for pair in stage.items() if pair[0] in answers]:
        if said not in answers[reading] if said.__class__ is str else not set(said).issubset(answers[reading]):
            return False
    return True


RULE = Rule(
    code="LINK-7",
    level="error",
    scope="record",
    title="Answer that the reading does not have",
    what="An answer is one of those that the reading lists; a measured reading has none, low, normal, high and unsteady.",
    why="An answer that can never be given clears a fault for ever, or never.",
    mend="Take one of the answers that the message lists.",
    example=Example(
        "faults/regulator-diaphragm-split.yaml", "fuel-in-regulator-hose: wet", "fuel-in-regulator-hose: damp"
    ),
    find=find,
    kinds=("systems", "faults", "procedures", "states", "jobs", "readings", "effects", "codes"),
)
