"""A book as the pages see it: where each record has its page, links to it, and what is current."""

from __future__ import annotations

from collections.abc import Iterator
from functools import cached_property

from bayleaf.diagnosis.verdicts.compute import Desk
from bayleaf.pages.building.text import Markup, plain, prose, text
from bayleaf.pages.building.write import to
from bayleaf.quantities import Quantity
from bayleaf.records import KINDS, RECORD_KINDS, Book, Record, listed

# Kinds with a page a record; the entries of the others stand on one page, each with its anchor.
PAGED = (*RECORD_KINDS, "cautions")

# Names of the kinds as headings, and of one of a kind as the search shows it.
KIND_TITLES = {
    "systems": "Systems",
    "components": "Components",
    "equipment": "Equipment",
    "readings": "Readings",
    "procedures": "Procedures",
    "faults": "Faults",
    "symptoms": "Symptoms",
    "codes": "Codes",
    "calculators": "Calculators",
    "vehicles": "Vehicles",
    "jobs": "Jobs",
    "quantities": "Quantities and units",
    "conditions": "Conditions",
    "variables": "Variables",
    "effects": "Effects",
    "histories": "Histories",
    "states": "States",
    "acts": "Acts",
    "hazards": "Hazards",
    "cautions": "Cautions",
    "fuels": "Fuels",
    "sources": "Sources",
    "terms": "Terms",
    "tasks": "Tasks",
}


class View:
    """The book with its titles, addresses and links. Records that are not sound have no page."""

    def __init__(self, book: Book) -> None:
        self.book = book
        self.desk = Desk(book)

    def all(self, kind: str) -> list[Record]:
        """Every sound record of a kind, retired ones too, by title."""
        return sorted((r for r in self.book.of(kind).values() if r.sound), key=lambda r: (r.title.lower(), r.id))

    def live(self, kind: str) -> list[Record]:
        """The sound records of a kind that are not retired, by title."""
        return [r for r in self.all(kind) if r.data.get("status") != "retired"]

    def get(self, id: object, kind: str = "") -> Record | None:
        """A sound record by id, of that kind where one is given."""
        record = self.book.get(id) if isinstance(id, str) else None
        return record if record is not None and record.sound and kind in ("", record.kind) else None

    def address(self, id: str) -> str:
        """The address of a record from the root of the tree, '' when it has none."""
        record = self.get(id)
        return "" if record is None else address_of(record)

    def title(self, id: str) -> str:
        """The title of a record, or the id itself."""
        record = self.get(id)
        return name_of(record) if record else id

    def link(self, id: str, label: str = "") -> Markup:
        """A link to a record with its title or other words; only the words where there is no page."""
        address = self.address(id)
        shown = text(label or self.title(id))
        return to(address, shown) if address else shown

    def links(self, ids: object) -> list[Markup]:
        """Links to each id of a list field (which may be the word none)."""
        return [self.link(id) for id in listed(ids)]

    def prose(self, value: object) -> Markup:
        """A prose field with its links."""
        return prose(value, self.link) if isinstance(value, str) else text("")

    def plain(self, value: object) -> str:
        """A prose field as bare words, for the search."""
        return plain(value, self.title) if isinstance(value, str) else ""

    def quantity(self, reading: str) -> Quantity | None:
        """What a reading measures, typed or computed; None for a question."""
        return self.desk.quantity(reading) if self.get(reading, "readings") else None

    @cached_property
    def sides(self) -> dict[str, list[Quantity]]:
        """Unit spelling to the quantities that accept it, in the order of the vocabulary."""
        found: dict[str, list[Quantity]] = {}
        for quantity in self.desk.quantities.values():
            for spelling in quantity.units:
                found.setdefault(spelling, []).append(quantity)
        return found


def name_of(record: Record) -> str:
    """What a record is called on a page: its title, of a code with the code before it."""
    return f"{record.data['code']} {record.title}" if record.kind == "codes" else record.title


def address_of(record: Record) -> str:
    """Where a record stands: its own page, or its anchor on the page of its kind."""
    return f"{record.kind}/{record.id}.md" if record.kind in PAGED else f"{record.kind}/index.md#{record.id}"


def site_address(address: str) -> str:
    """The address of a page in the built site, with one file a page."""
    return address.replace(".md", ".html", 1)


def every_value(data: object, path: tuple = ()) -> Iterator[tuple[tuple, object]]:
    """Every scalar of a record's data with its path."""
    if isinstance(data, dict):
        for key, value in data.items():
            yield from every_value(value, (*path, key))
    elif isinstance(data, list):
        for i, value in enumerate(data):
            yield from every_value(value, (*path, i))
    else:
        yield path, data


def kind_order(record: Record) -> tuple:
    """Records by kind in the order of the book, then by title."""
    return KINDS.index(record.kind), record.title.lower(), record.id
