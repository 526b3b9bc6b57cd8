"""The small words of a judgement: names, minutes and shares."""

from __future__ import annotations

from collections.abc import Iterable

from bayleaf.records import Book
from bayleaf.records.prose import plain


def name_of(book: Book, id: str) -> str:
    """The title of a record, or its id where there is none."""
    record = book.get(id)
    return record.title if record else id


def names_of(book: Book, ids: Iterable[str], between: str = ", ") -> str:
    """The titles of several records."""
    return between.join(name_of(book, id) for id in ids)


def in_minutes(minutes: float) -> str:
    """Minutes with their word."""
    return f"{minutes:g} {'minute' if minutes == 1 else 'minutes'}"


def in_hundred(share: float) -> str:
    """A share from 0 to 1 as a person says it."""
    percent = round(100 * share)
    return "under 1 in 100" if percent < 1 else f"{percent} in 100"


def repair_name(repair: str, book: Book) -> str:
    """A repair by the title of its procedure, or its words as plain text."""
    return (
        name_of(book, repair)
        if repair in book.of("procedures")
        else plain(repair, lambda id: name_of(book, id)).rstrip(".")
    )
