"""A matrix and its figures as plain data and as a table of text, for export."""

from __future__ import annotations

from bayleaf.diagnosis.faults.isolate import Figures, isolation_of
from bayleaf.diagnosis.faults.matrix import Matrix, matrix_of_system
from bayleaf.records import Book

ANY = ""  # a cell about which the fault says nothing


def system_data(book: Book, system: str) -> dict:
    """The matrix and the figures of one system, looked at on its own with every feature it may have."""
    matrix = matrix_of_system(book, system)
    result = isolation_of(book, matrix.car)
    return {
        "system": system,
        "readings": [{"reading": reading, "healthy": sorted(healthy)} for reading, healthy in matrix.healthy.items()],
        "faults": [
            {
                "fault": row.fault,
                "stage": row.stage,
                "weight": row.weight,
                "shows": {
                    reading: sorted(row.answers[reading]) for reading in matrix.healthy if reading in row.answers
                },
            }
            for row in matrix.rows
        ],
        "whole": _figures(result.whole),
        "symptoms": {symptom: _figures(figures) for symptom, figures in result.symptoms.items()},
        "same_column": [list(readings) for readings in result.same],
        "tells_nothing": list(result.idle),
    }


def _figures(figures: Figures) -> dict:
    return {**figures._asdict(), "isolated": {f"to {size}": share for size, share in figures.isolated.items()}}


def matrix_table(matrix: Matrix) -> list[list[str]]:
    """A head and one line for each stage of each fault; answers that may be either are joined by *or*."""
    table = [["fault", "stage", "weight", *matrix.healthy]]
    for row in matrix.rows:
        cells = [" or ".join(sorted(row.answers[r])) if r in row.answers else ANY for r in matrix.healthy]
        table.append([row.fault, row.stage, f"{row.weight:g}", *cells])
    return table
