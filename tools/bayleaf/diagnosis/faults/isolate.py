"""How far a set of readings can tell faults apart: detection, isolation, groups, and readings that add nothing.

The figures follow the style of IEEE Std 1522 (fault detection, and isolation of what is detected to groups of up to
L faults, weighted by how common a fault is; recalled, the text was not open). They assume that every reading is taken,
that the maker's figures are known, and one fault at a time.
"""

from __future__ import annotations

from typing import NamedTuple

from bayleaf.diagnosis.car.car import Car
from bayleaf.diagnosis.faults.matrix import Matrix, is_measured, matrix_of, one_sided
from bayleaf.diagnosis.faults.spared import felt_in
from bayleaf.diagnosis.verdicts.verdict import LOW, NONE, NORMAL
from bayleaf.records import Book


class Figures(NamedTuple):
    """What the readings can do for one set of faults. Shares are between 0 and 1; 0 when there is nothing to share.

    `detected` is the share of the fault weight that some reading is sure to show as not normal. `isolated[L]` is the
    share of the *detected* weight that is sure to end in a group of at most L faults. `groups` are the largest sets of
    faults that may be left together, `alike` gives for every fault the others that cannot surely be told from it,
    `unseen` the faults with a stage that no reading is sure to show.
    """

    weight: float
    detected: float
    isolated: dict[int, float]
    groups: tuple[tuple[str, ...], ...]
    alike: dict[str, tuple[str, ...]]
    unseen: tuple[str, ...]


class Isolation(NamedTuple):
    """The figures of one car (or system): over all its faults, and for each symptom over the faults felt so.

    `same` are groups of readings with one column, `idle` the readings that tell no two faults apart and show none.
    """

    whole: Figures
    symptoms: dict[str, Figures]
    same: tuple[tuple[str, ...], ...]
    idle: tuple[str, ...]


Column = tuple[frozenset[str] | None, ...]  # by row: what the reading may show; None is anything


def isolation_of(book: Book, car: Car) -> Isolation:
    """The figures of a car, from its matrix."""
    matrix = matrix_of(book, car)
    columns = columns_of(book, matrix)
    feel = [felt_in(book.of("faults")[row.fault], row.stage) for row in matrix.rows]
    rows = range(len(matrix.rows))
    apart = _apart(columns, len(matrix.rows))
    shown = {i for i in rows if _is_shown(matrix, columns, i)}
    felt = set().union(*feel)
    symptoms = [s for s in book.of("symptoms") if s in felt]
    return Isolation(
        whole=_figures(matrix, apart, shown, list(rows)),
        symptoms={s: _figures(matrix, apart, shown, [i for i in rows if s in feel[i]]) for s in symptoms},
        same=_same({r: column for r, column in columns.items() if _moved(column, matrix.healthy[r])}),
        idle=tuple(r for r, column in columns.items() if not _useful(column, matrix.healthy[r])),
    )


def columns_of(book: Book, matrix: Matrix) -> dict[str, Column]:
    """Each reading's column as it can be seen: *none* may also read *low*, and the side without a limit reads normal."""
    blind = one_sided(book, matrix.car)

    def seen(reading: str, answers: frozenset[str] | None) -> frozenset[str] | None:
        if answers is None or not is_measured(book, reading):
            return answers
        if NONE in answers:
            answers = answers | {LOW}
        if blind.get(reading) in answers:
            answers = answers - {blind[reading]} | {NORMAL}
        return answers

    return {
        reading: tuple(seen(reading, row.answers.get(reading)) for row in matrix.rows) for reading in matrix.healthy
    }


def _apart(columns: dict[str, Column], count: int) -> list[int]:
    """For each row the mask of the rows that some reading is sure to tell from it: no answer in common.

    A column holds few different sets of answers, so each is compared once and not row by row.
    """
    result = [0] * count
    for column in columns.values():
        holders: dict[frozenset[str], int] = {}
        for i, answers in enumerate(column):
            if answers is not None:
                holders[answers] = holders.get(answers, 0) | 1 << i
        against = {mine: sum(mask for theirs, mask in holders.items() if not mine & theirs) for mine in holders}
        for i, answers in enumerate(column):
            result[i] |= against[answers] if answers is not None else 0
    return result


def _is_shown(matrix: Matrix, columns: dict[str, Column], i: int) -> bool:
    seen = ((matrix.healthy[r], column[i]) for r, column in columns.items())
    return any(answers is not None and answers.isdisjoint(healthy) for healthy, answers in seen)


def _useful(column: Column, healthy: frozenset[str]) -> bool:
    """Whether the reading surely shows some fault or surely tells two apart."""
    said = [answers for answers in column if answers is not None]
    return any(healthy.isdisjoint(answers) for answers in said) or any(not a & b for a in said for b in said)


def _moved(column: Column, healthy: frozenset[str]) -> bool:
    """Whether some row may be other than healthy: a column that only says healthy says nothing that another lacks."""
    return any(answers is not None and not answers <= healthy for answers in column)


def _same(columns: dict[str, Column]) -> tuple[tuple[str, ...], ...]:
    by_column: dict[Column, list[str]] = {}
    for reading, column in columns.items():
        if any(answers is not None for answers in column):
            by_column.setdefault(column, []).append(reading)
    return tuple(tuple(readings) for readings in by_column.values() if len(readings) > 1)


def _figures(matrix: Matrix, apart: list[int], shown: set[int], rows: list[int]) -> Figures:
    among = sum(1 << i for i in rows)
    group = {i: tuple(matrix.faults_in(among & ~apart[i])) for i in rows}
    weight = {i: matrix.rows[i].weight for i in rows}
    detected = sum(weight[i] for i in rows if i in shown)
    whole = sum(weight.values())
    alike: dict[str, set[str]] = {}
    for i in rows:
        fault = matrix.rows[i].fault
        alike.setdefault(fault, set()).update(f for f in group[i] if f != fault)
    sets = sorted({g for g in group.values() if len(g) > 1}, key=lambda g: (-len(g), g))
    return Figures(
        weight=whole,
        detected=detected / whole if whole else 0.0,
        isolated={
            size: sum(weight[i] for i in rows if i in shown and len(group[i]) <= size) / detected if detected else 0.0
            for size in (1, 2, 3)
        },
        groups=tuple(g for n, g in enumerate(sets) if not any(set(g) < set(other) for other in sets[:n])),
        alike={fault: tuple(sorted(others)) for fault, others in alike.items()},
        unseen=tuple(dict.fromkeys(matrix.rows[i].fault for i in rows if i not in shown)),
    )
