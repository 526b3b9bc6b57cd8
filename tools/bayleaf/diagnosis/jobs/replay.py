"""Replay every job of the book and hold what is left against what the job expects."""

from __future__ import annotations

from bayleaf.diagnosis.jobs.judge import judge
from bayleaf.diagnosis.jobs.judgement import Judgement
from bayleaf.records import OUTSIDE, Book, Record, listed


def replay(book: Book) -> list[tuple[Record, str]]:
    """(job, what the replay leaves else) for every job of the book that does not leave exactly what it expects."""
    jobs = [
        job
        for job in book.of("jobs").values()
        if job.sound and job.data.get("status") != "retired" and "expects" in job.data
    ]
    return [(job, said) for job in jobs if (said := _compare(job, judge(book, job)))]


def _compare(job: Record, judgement: Judgement) -> str:
    wanted, left = set(listed(job.data["expects"]["left"])) or {OUTSIDE}, set(judgement.left_ids)
    if wanted == left:
        return ""
    cleared = {item.fault: item.reasons for item in judgement.contradicted}
    rare = {item.fault for item in judgement.besides}
    said = []
    for fault in sorted(wanted - left - {OUTSIDE}):
        by = cleared.get(fault)
        other = "fits, but is not felt like this or is rare" if fault in rare else "was never a candidate"
        said.append(f"{fault} is contradicted by {' and '.join(by)}" if by else f"{fault} {other}")
    said += [f"{fault} is left" for fault in sorted(left - wanted - {OUTSIDE})]
    said += ["nothing is left"] if OUTSIDE in left else []
    return f"the replay leaves something else: {'; '.join(said)}"
