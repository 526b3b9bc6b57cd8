"""Where records name the answer to a reading, and which answers a reading has."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.diagnosis.faults.stages import STAGE_FIELDS
from bayleaf.records import Book, Record

MEASURED = ("none", "low", "normal", "high", "unsteady")


def all_answers(book: Book) -> dict[str, tuple[str, ...]]:
    """Every sound reading to the answers that it may have."""
    readings = book.of("readings").items()
    return {id: tuple(r.data["answers"]) if "answers" in r.data else MEASURED for id, r in readings if r.sound}


def answers_of(record: Record) -> Iterator[tuple[tuple, str, str, bool]]:
    """(path, reading, answer, whether the answer is a field's name) for every answer that a record names."""
    data = record.data
    if record.kind == "systems":
        yield from ((("shows", r), r, a, False) for r, a in data["shows"].items())
        for reading, answers in data.get("healthy", {}).items():
            yield from ((("healthy", reading, i), reading, a, False) for i, a in enumerate(answers))
    elif record.kind == "effects":
        yield from _said(("shows",), data["shows"])
    elif record.kind == "faults":
        stages: list[tuple[tuple, dict]] = [(("stages", n), s) for n, s in data["stages"].items()]
        stages += [(("differs", y, n), s) for y, by in data.get("differs", {}).items() for n, s in by.items()]
        for path, stage in stages:
            yield from _said(path, stage)
    elif record.kind == "procedures":
        yield from ((("results", r, a), r, a, True) for r, by in data["results"].items() for a in by)
    elif record.kind == "states" and "proved_by" in data:
        yield ("proved_by", "answer"), data["proved_by"]["reading"], data["proved_by"]["answer"], False
    elif record.kind == "readings":
        yield from ((("healthy", i), record.id, a, False) for i, a in enumerate(data.get("healthy", [])))
    elif record.kind == "codes":
        reports = enumerate(data.get("reports", []))
        yield from ((("reports", i, "shows"), x["reading"], x["shows"], False) for i, x in reports if "shows" in x)
    elif record.kind == "jobs":
        entries = enumerate(data["readings"])
        yield from ((("readings", i, "answer"), e["reading"], e["answer"], False) for i, e in entries if "answer" in e)


def _said(path: tuple, answers: dict) -> Iterator[tuple[tuple, str, str, bool]]:
    for reading, may in answers.items():
        if reading not in STAGE_FIELDS:
            for answer in [may] if isinstance(may, str) else may:
                yield (*path, reading), reading, answer, False
