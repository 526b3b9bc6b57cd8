"""Which record names which: the ids in each record, and what follows for the book."""

from __future__ import annotations

from functools import cached_property

from bayleaf.checks.prose.texts import Texts
from bayleaf.records import KINDS, Book, Record
from bayleaf.records.named import Link, bases_of, ids_of, links_of
from bayleaf.records.places import Ids
from bayleaf.records.types import Basis


class References:
    """The references of one book, each record looked at once."""

    def __init__(self, book: Book, texts: Texts) -> None:
        self.book, self.texts = book, texts
        self._links: dict[str, list[Link]] = {}
        self._ids: dict[str, list[tuple[Ids, list[str]]]] = {}
        self._names: dict[str, set[str]] = {}
        self._misnames: dict[str, bool] = {}
        self._bases: dict[str, list[tuple[tuple, Basis]]] = {}
        self._by_kinds: dict[tuple[str, ...], set[str]] = {}

    def links(self, record: Record) -> list[Link]:
        """Every id that a record names, in fields and in prose; nothing for a record that is not sound."""
        links = self._links.get(record.id)
        if links is None:
            links = self._links[record.id] = links_of(record, self.texts.prose(record)) if record.sound else []
        return links

    def ids(self, record: Record) -> list[tuple[Ids, list[str]]]:
        """The ids that a record names, by the field that holds them: for a first look, and where places do not matter."""
        ids = self._ids.get(record.id)
        if ids is None:
            ids = self._ids[record.id] = ids_of(self.links(record))
        return ids

    def names(self, record: Record) -> set[str]:
        """All ids that a record names, wherever they stand."""
        names = self._names.get(record.id)
        if names is None:
            names = self._names[record.id] = set().union(*[ids for _field, ids in self.ids(record)])
        return names

    def misnames(self, record: Record) -> bool:
        """A first look: whether some id that a record names does not exist or is of a kind that does not belong there."""
        wrong = self._misnames.get(record.id)
        if wrong is None:
            wrong = not all(self._of_kinds(field.kinds).issuperset(ids) for field, ids in self.ids(record))
            self._misnames[record.id] = wrong
        return wrong

    def bases(self, record: Record) -> list[tuple[tuple, Basis]]:
        """(path, basis) of every basis in a record."""
        bases = self._bases.get(record.id)
        if bases is None:
            bases = self._bases[record.id] = bases_of(record)
        return bases

    @cached_property
    def named(self) -> set[str]:
        """Every id that another record names."""
        return set().union(*(self.names(record) - {record.id} for record in self.book.records()))

    @cached_property
    def retired(self) -> dict[str, Record]:
        """Every record that has been retired, by id."""
        return {id: record for id, record in self.book.every.items() if record.data.get("status") == "retired"}

    def _of_kinds(self, kinds: tuple[str, ...]) -> set[str]:
        """The ids of all records of these kinds, sound or not; no kinds named: of all."""
        if kinds not in self._by_kinds:
            self._by_kinds[kinds] = set().union(*(self._of_kind[kind] for kind in kinds or self._of_kind))
        return self._by_kinds[kinds]

    @cached_property
    def _of_kind(self) -> dict[str, list[str]]:
        """Each kind to the ids of its records, sound or not."""
        ids: dict[str, list[str]] = {kind: [] for kind in KINDS}
        for id, record in self.book.every.items():
            ids[record.kind].append(id)
        return ids
