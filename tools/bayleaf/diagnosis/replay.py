"""Replay every job of the book and hold what is left against what the job expects."""

from __future__ import annotations

from bayleaf.diagnosis.compute import Desk
from bayleaf.diagnosis.judge import judge
from bayleaf.diagnosis.judgement import OUTSIDE, Judgement
from bayleaf.diagnosis.problems import CODES, job_problems
from bayleaf.finding import Finding
from bayleaf.records import Book, Record, listed


def replay(book: Book) -> list[Finding]:
    """A finding for every job that does not leave exactly what it expects; jobs with errors of their own are left out."""
    found: list[Finding] = []
    desk = Desk(book)
    for job in book.of("jobs").values():
        if not job.sound or job.data.get("status") == "retired" or "expects" not in job.data:
            continue
        if any(problem.level == "error" for problem in job_problems(book, job, desk)):
            continue
        found += _compare(job, judge(book, job))
    return found


def _compare(job: Record, judgement: Judgement) -> list[Finding]:
    wanted = set(listed(job.data["expects"]["left"])) or {OUTSIDE}
    left = set(judgement.left_ids)
    if wanted == left:
        return []
    said = []
    for fault in sorted(wanted - left):
        by = next((item.by for item in judgement.cleared if item.fault == fault), None)
        if by is None:
            said.append(f"{fault} was never a candidate" if fault != OUTSIDE else f"not {OUTSIDE} alone")
        else:
            said.append(f"{fault} was cleared by {', '.join(dict.fromkeys(readings[0] for readings in by.values()))}")
    said += [f"{fault} is left" for fault in sorted(left - wanted)]
    code = CODES["JOB-11"]
    return [job.finding("JOB-11", code.level, f"the replay leaves something else: {'; '.join(said)}", code.mend, ("expects", "left"))]
