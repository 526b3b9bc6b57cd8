"""What a job brings along before anything is read: stored codes and the car's history. Both weigh and neither clears."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from bayleaf.diagnosis.belief.belief import Constants, Seen, answers_among, ratio
from bayleaf.diagnosis.car.layout import layout_of
from bayleaf.diagnosis.faults.matrix import Matrix, Row
from bayleaf.records import Book, listed


def likelier_after(book: Book, matrix: Matrix, history: Iterable[str]) -> frozenset[str]:
    """The faults of a car that its history makes likelier: those that are named, and those of a part that is."""
    layout = layout_of(book)
    faults: set[str] = set()
    parts: set[str] = set()
    for record in (book.of("histories").get(id) for id in history):
        faults.update(listed(record.data.get("faults")) if record else ())
        parts.update(listed(record.data.get("parts")) if record else ())
    here = {row.fault for row in matrix.rows}
    of_parts = {f for f in here if not parts.isdisjoint(layout.chain(book.of("faults")[f].data.get("part", "")))}
    return frozenset(faults & here | of_parts)


def reported_by(book: Book, matrix: Matrix, codes: Iterable[str], read: Iterable[str]) -> list[tuple[Seen, ...]]:
    """For each code the readings that it may stand for. What was read since counts once, as read, and not as reported."""
    result = []
    for code in (book.of("codes").get(id) for id in codes):
        answers: dict[str, set[str]] = {}
        for report in listed(code.data.get("reports")) if code else ():
            if report.get("reading") in matrix.healthy:
                answers.setdefault(report["reading"], set()).add(report["shows"])
        if answers and answers.keys().isdisjoint(read):
            result.append(
                tuple(Seen(r, *answers_among(book, r, frozenset(said)), r) for r, said in sorted(answers.items()))
            )
    return result


def reported(row: Row, codes: Sequence[tuple[Seen, ...]], constants: Constants) -> float:
    """How much likelier the codes are under a row: of what a code may stand for, the reading that fits best counts."""
    doubted, product = constants._replace(misleads=constants.code_misleads), 1.0
    for stands_for in codes:
        product *= max(ratio(row.answers.get(seen.reading), seen, doubted) for seen in stands_for)
    return product
