"""SAFE-27: the signal word does not match the severity."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record

SIGNALS = {"will-kill": "DANGER", "could-kill": "WARNING", "could-hurt": "CAUTION", "damages": "NOTICE"}


def find(record: Record, _context: Context) -> Iterator[Finding]:
    wanted, signal = SIGNALS[record.data["severity"]], record.data["signal"]
    if signal != wanted:
        message = f"the severity {record.data['severity']} goes with {wanted}, not with {signal}"
        yield RULE.at(
            record, message, f"Write signal: {wanted}, or say the worst credible outcome in severity.", ("signal",)
        )


RULE = Rule(
    code="SAFE-27",
    level="error",
    scope="record",
    kinds=("cautions",),
    title="Signal word and severity differ",
    what=(
        "DANGER is for what will kill or seriously injure, WARNING for what could, CAUTION for minor or moderate injury, NOTICE for "
        "damage only (the meanings of ANSI Z535.6, recalled: the text was not open)."
    ),
    why="A word that is too weak is passed over, and one that is too strong makes the next one weak.",
    mend="Choose the signal word by the worst credible outcome.",
    example=Example("vocabulary/cautions.yaml", "signal: DANGER", "signal: CAUTION"),
    find=find,
)
