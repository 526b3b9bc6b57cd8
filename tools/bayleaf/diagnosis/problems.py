"""What is wrong with a job as a diagnosis: entries that cannot be judged. Shape, names and units are checked like any record's.

The same complaints hold for a job in kb/jobs and for a technician's own file.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from bayleaf.diagnosis.car import car_of_job, offers, usable
from bayleaf.diagnosis.layout import Layout, layout_of
from bayleaf.diagnosis.verdict import SAID
from bayleaf.finding import Finding
from bayleaf.records import Book, Record, listed, mapped


@dataclass(frozen=True)
class Code:
    """A complaint about a job: its level, what it says, why it matters and how to mend it."""

    level: str
    title: str
    why: str
    mend: str


CODES = {
    "JOB-1": Code(
        "error", "A verdict typed as an answer",
        "Of a number a person says only that there is none or that it is unsteady; low, normal and high are for the book to"
        " say, with the instrument's error.",
        "Give the value with its unit and its instrument.",
    ),
    "JOB-2": Code(
        "error", "A number typed for a question",
        "A question has a closed list of answers, and a number is none of them.",
        "Give one of the reading's answers.",
    ),
    "JOB-3": Code(
        "error", "A computed reading was typed",
        "It follows from other readings and from what they may be out by.",
        "Give the readings that it is computed from.",
    ),
    "JOB-4": Code(
        "error", "A reading that this car does not have",
        "Its place is on no path of the car's systems, or on a feature that the car was not said to have, so no fault is"
        " cleared by it.",
        "Leave it out, or complete the car's systems and features.",
    ),
    "JOB-5": Code(
        "error", "A fault that comes and goes, and a reading that does not say whether it was there",
        "A reading taken while the car is well proves that the car was well.",
        "Say fault_was: present or fault_was: absent.",
    ),
    "JOB-6": Code(
        "error", "A state that the reading does not depend on",
        "not_met speaks of the states that make this reading valid.",
        "Name states of the reading's valid_if.",
    ),
    "JOB-7": Code(
        "error", "A replay that does not leave what the job expects",
        "Either a fault says something untrue or the job does.",
        "Look at what cleared the missing fault, or mend the job.",
    ),
}  # fmt: skip


def job_problems(book: Book, job: Record, layout: Layout | None = None) -> list[Finding]:
    """Every problem of a sound job, in the order of its readings. Pass the book's layout to share it between jobs."""
    layout, found = layout or layout_of(book), []
    for i, entry in enumerate(listed(job.data.get("readings"))):
        reading = book.of("readings").get(entry.get("reading"))
        if usable(reading):
            for code, message, path, help in _entry(book, layout, job, entry, reading):
                found.append(job.finding(code, CODES[code].level, message, help or CODES[code].mend, ("readings", i, *path)))
    return found


def _entry(book: Book, layout: Layout, job: Record, entry: dict, reading: Record) -> Iterator[tuple[str, str, tuple, str]]:
    """(code, message, path inside the entry, help or "") for each problem of one entry."""
    car = car_of_job(book, job.data)
    if car.systems and not offers(book, layout, car, reading.id):
        yield "JOB-4", f"this car has no reading {reading.id}", ("reading",), ""
    if "computed" in reading.data and ("value" in entry or "answer" in entry):
        inputs = mapped(reading.data["computed"].get("difference")).values()
        yield "JOB-3", f"{reading.id} is computed", ("reading",), f"Give {' and '.join(inputs)}." if inputs else ""
    elif "value" in entry and "answers" in reading.data:
        yield "JOB-2", f"{reading.id} is a question", ("value",), f"Write answer: {' or '.join(reading.data['answers'])}."
    elif "answer" in entry and "answers" not in reading.data and entry["answer"] not in SAID:
        yield "JOB-1", f"{entry['answer']} is a verdict on {reading.id}", ("answer",), ""
    if job.data.get("comes_and_goes") is True and ("value" in entry or "answer" in entry) and "fault_was" not in entry:
        yield "JOB-5", f"{reading.id} does not say whether the fault was there", (), ""
    for i, state in enumerate(listed(entry.get("not_met"))):
        if state not in listed(reading.data.get("valid_if")):
            yield "JOB-6", f"{reading.id} does not depend on {state}", ("not_met", i), ""
