"""What else fits and what contradicts which fault, in words."""

from __future__ import annotations

from bayleaf.diagnosis.jobs.judgement import Judgement
from bayleaf.diagnosis.jobs.words import in_hundred, name_of
from bayleaf.diagnosis.verdicts.verdict import ANSWERED
from bayleaf.records import Book

BY_GRAPH = "* The book does not say so of this fault itself: nothing that it disturbs reaches what was read. Doubt that where it does not fit the car."


def beside_lines(judgement: Judgement, book: Book) -> list[str]:
    """What fits and is not felt like this or is rare."""
    besides = [f"  {name_of(book, item.fault)}: {in_hundred(item.share)}." for item in judgement.besides]
    return ["Fits, but is not felt like this or is rare", *besides] if besides else []


def contradicted_lines(judgement: Judgement, book: Book) -> list[str]:
    """Which readings contradict which faults, and by how much."""
    verdicts: dict[str, list[str]] = {}
    for taken in judgement.taken:
        if taken.clears:
            verdicts.setdefault(taken.reading, []).append(
                taken.said if taken.verdict.kind == ANSWERED else taken.verdict.kind
            )
    by: dict[str, list[str]] = {}
    for item in judgement.contradicted:
        reasons = [f"{name_of(book, r)} ({' and '.join(dict.fromkeys(verdicts.get(r, ())))})" for r in item.reasons]
        sign = "*" if item.by_graph & set(item.reasons) else ""
        by.setdefault(" with ".join(reasons), []).append(f"{name_of(book, item.fault)}{sign} ({_factor(item.factor)})")
    said = [f"  {reasons}: {', '.join(faults)}." for reasons, faults in by.items()]
    said += [f"  {BY_GRAPH}"] if any(item.by_graph & set(item.reasons) for item in judgement.contradicted) else []
    return (
        [
            "Contradicted, unless the reading misled; and how likely that reading is beside a fault that says nothing of it",
            *said,
        ]
        if said
        else []
    )


def _factor(factor: float) -> str:
    return f"×{factor:.2g}"
