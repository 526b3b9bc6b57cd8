"""DIAG-4: the reading that is to prove the mend does not show the fault."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.rule import Example, Rule
from bayleaf.diagnosis.faults.stages import is_diagnosis
from bayleaf.finding import Finding
from bayleaf.records import Record


def find(record: Record, context: Context) -> Iterator[Finding]:
    proof = record.data["proved_by"]
    reading = context.book.of("readings").get(proof) if isinstance(proof, str) else None
    if reading is None or not reading.sound or record.id not in context.claims.faults:
        return
    if not is_diagnosis(reading):
        message = f"{proof} is a reading for {reading.data['purpose']}, which proves no mend"
        yield RULE.at(record, message, "Name a reading for diagnosis that the fault changes.", ("proved_by",))
    elif not context.claims.shows(record.id, proof):
        message = f"{proof} is never surely other than normal with this fault, so a normal reading after the repair proves nothing"
        yield RULE.at(record, message, path=("proved_by",))


RULE = Rule(
    code="DIAG-4",
    level="error",
    scope="record",
    kinds=("faults",),
    title="Proof that proves nothing",
    what="The field `proved_by` names a reading for diagnosis that the fault surely makes other than normal in one of its stages, or says why none can prove the mend.",
    why="A reading that was right before the repair is right after it, whether or not the repair was the right one.",
    mend="Name the reading that failed, or write {none: the reason}.",
    example=Example(
        "faults/pump-ground-poor.yaml", "proved_by: pump-supply-voltage", "proved_by: fuel-in-regulator-hose"
    ),
    find=find,
)
