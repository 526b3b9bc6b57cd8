"""DIAG-16: which faults of a symptom cannot be told apart."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record

GROUPS, FAULTS = 3, 6  # how many are named in one line


def find(context: Context) -> Iterator[Finding]:
    for record in context.book.of("symptoms").values():
        yield from _symptom(record, context)


def _symptom(record: Record, context: Context) -> Iterator[Finding]:
    figures = {}
    for system, held in context.book.of("systems").items():
        mine = context.claims.isolation(system).symptoms.get(record.id) if held.sound else None
        if mine is not None and mine.weight:
            figures[system] = mine
    groups = list(dict.fromkeys(g for f in figures.values() for g in f.groups if len(g) > 1))
    unseen = list(dict.fromkeys(fault for f in figures.values() for fault in f.unseen))
    if not groups and not unseen:
        return
    result = min(figures, key=lambda s: (figures[s].detected, s))
    three = min(figures, key=lambda s: (figures[s].isolated[3], s))
    message = f"readings find {figures[result].detected:.0%} of the fault weight (least on {result}) and bring {figures[three].isolated[3]:.0%} of that to three or fewer (least on {three})"
    if groups:
        message += "; not surely told apart: " + "; ".join(
            " and ".join(g[:FAULTS]) + (" …" if len(g) > FAULTS else "") for g in groups[:GROUPS]
        )
        message += f"; and {len(groups) - GROUPS} groups more" if len(groups) > GROUPS else ""
    if unseen:
        message += f"; with a stage that nothing surely shows: {', '.join(unseen[:FAULTS])}" + (
            " …" if len(unseen) > FAULTS else ""
        )
    yield RULE.at(record, message, path=("title",))


RULE = Rule(
    code="DIAG-16",
    level="advice",
    scope="replay",
    title="Faults that cannot be told apart",
    what=(
        "For each symptom, over all systems: the share of the fault weight that some reading is sure to show, the share of that which ends "
        "in three faults or fewer, and the faults that no reading is sure to tell apart. One fault at a time and every reading taken is assumed. It is worked out when jobs are replayed."
    ),
    why="It is reported and never a gate. A gate would reward claims that are sharper than the truth.",
    mend="Ask whether a reading is missing that would tell them apart. If there is none, leave it: that is the honest answer.",
    excusable=True,
    example=Example(
        "faults/pump-ground-poor.yaml", "    pump-supply-voltage: low\n", "    pump-supply-voltage: [normal, low]\n"
    ),
    find=find,
)
