"""Replay every job of the book and hold what is left against what the job expects."""

from __future__ import annotations

from bayleaf.diagnosis.judge import judge
from bayleaf.diagnosis.judgement import OUTSIDE, Judgement
from bayleaf.finding import Finding
from bayleaf.records import Book, Record, listed

CODE = "JOB-10"
MEND = "Look at what cleared the missing fault, or at what should have cleared the one too many; then mend fault or job."


def replay(book: Book) -> list[Finding]:
    """A finding for every job of the book that does not leave exactly what it expects."""
    found: list[Finding] = []
    for job in book.of("jobs").values():
        if job.sound and job.data.get("status") != "retired" and "expects" in job.data:
            found += _compare(job, judge(book, job))
    return found


def _compare(job: Record, judgement: Judgement) -> list[Finding]:
    wanted, left = set(listed(job.data["expects"]["left"])) or {OUTSIDE}, set(judgement.left_ids)
    if wanted == left:
        return []
    cleared = {item.fault: item.reasons for item in judgement.cleared}
    said = []
    for fault in sorted(wanted - left - {OUTSIDE}):
        by = cleared.get(fault)
        said.append(f"{fault} was cleared by {' and '.join(by)}" if by else f"{fault} was never a candidate")
    said += [f"{fault} is left" for fault in sorted(left - wanted - {OUTSIDE})]
    said += ["nothing is left"] if OUTSIDE in left else []
    return [job.finding(CODE, "error", f"the replay leaves something else: {'; '.join(said)}", MEND, ("expects", "left"))]
