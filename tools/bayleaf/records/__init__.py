"""Text to a Book: every record with its data, its exact source positions, and indexes by kind and id."""

from __future__ import annotations

from bayleaf.records.book import Book, Record, book_from_data, load, load_job
from bayleaf.records.kinds import KINDS, OUTSIDE, RECORD_KINDS, SINGULAR, VOCABULARY_KINDS, listed, mapped

__all__ = [
    "KINDS",
    "OUTSIDE",
    "RECORD_KINDS",
    "SINGULAR",
    "VOCABULARY_KINDS",
    "Book",
    "Record",
    "book_from_data",
    "listed",
    "load",
    "load_job",
    "mapped",
]
