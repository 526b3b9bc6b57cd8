"""`python -m tests.reference.port_against_records`: the physical model against the fault matrix, entry by entry.

After the entries come the severities, swept from slight to extreme, at which no stage of the record fits what the model
shows: a stage that is missing, or an answer that is too sharp.
"""

from __future__ import annotations

from collections.abc import Iterator

from tests.reference.test_physics import confirmations
from tests.reference.test_severities import SWEEPS, gaps, severities


def entries() -> Iterator[str]:
    """One line for each entry and severity in the tests."""
    for fault, stage, reading, shown, said in confirmations():
        mark, model, record = (
            "agrees" if shown & said else "DIFFERS",
            " or ".join(sorted(shown)),
            " or ".join(sorted(said)),
        )
        yield f"{mark:8} {fault:28} {stage:16} {reading:26} model {model:12} record {record}"


def totals() -> Iterator[str]:
    """How many entries agree, and how many severities of how many sweeps were tried."""
    found = confirmations()
    distinct = {row[:3] for row in found}
    agree = sum(bool(shown & said) for *_, shown, said in found)
    tried = sum(1 for sweep in SWEEPS for _ in severities(*sweep))
    yield f"{agree} of {len(found)} comparisons agree, of {len(distinct)} entries of the matrix."
    yield f"{tried} severities in {len(SWEEPS)} sweeps of {len({sweep[0] for sweep in SWEEPS})} faults."


if __name__ == "__main__":
    print("\n".join(entries()))
    print("\nSeverities that no stage fits")
    print("\n".join(line for sweep in SWEEPS for line in gaps(*sweep)) or "none")
    print("\n".join(totals()))
