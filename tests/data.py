"""Books made of plain data, read by the project's own schemas."""

from __future__ import annotations

from pathlib import Path

from bayleaf.records import Book, book_from_data

SCHEMAS = Path(__file__).resolve().parents[1] / "schemas"


def book_of(kinds: dict[str, dict[str, dict]]) -> Book:
    """A book of these records, by kind and id."""
    return book_from_data(kinds, SCHEMAS)
