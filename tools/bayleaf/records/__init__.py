"""Text to a Book: every record with its data, its exact source positions, and indexes by kind and id."""

from __future__ import annotations

from bayleaf.records.book import Book, book_from_data, load, load_job
from bayleaf.records.kinds import KIND, KINDS, OUTSIDE, RECORD_KINDS, VOCABULARY_KINDS, Kind, listed, mapped
from bayleaf.records.record import Record

__all__ = [
    "KIND",
    "KINDS",
    "OUTSIDE",
    "RECORD_KINDS",
    "VOCABULARY_KINDS",
    "Book",
    "Kind",
    "Record",
    "book_from_data",
    "listed",
    "load",
    "load_job",
    "mapped",
]
