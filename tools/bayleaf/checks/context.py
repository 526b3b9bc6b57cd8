"""What rules share: indexes over the book that are worked out once, when first asked for."""

from __future__ import annotations

from collections.abc import Iterator
from functools import cached_property

from bayleaf.checks.sites import Site, sites_of
from bayleaf.quantities import Quantity, quantities_of
from bayleaf.records import Book, Record


class Context:
    """The book and what can be derived from it."""

    def __init__(self, book: Book):
        self.book = book

    @cached_property
    def quantities(self) -> dict[str, Quantity]:
        """Quantities by id (only those whose entries are sound)."""
        return quantities_of(self.book)

    def sites(self, record: Record) -> Iterator[Site]:
        """Every number with a unit in a record, with its quantity."""
        return sites_of(record, self.book)
