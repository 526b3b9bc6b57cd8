"""What rules share: indexes over the book that are worked out once, when first asked for."""

from __future__ import annotations

from functools import cached_property

from bayleaf.checks.facts.amounts import Amount, Amounts
from bayleaf.checks.facts.answers import all_answers
from bayleaf.checks.facts.bands import bands_by_reading, systems_of_car
from bayleaf.checks.facts.calculators import Proof, prove
from bayleaf.checks.facts.claims import Claims
from bayleaf.checks.facts.instruments import by_type, instruments
from bayleaf.checks.facts.work import Work
from bayleaf.checks.prose.texts import Texts
from bayleaf.diagnosis.verdicts.compute import Desk
from bayleaf.diagnosis.verdicts.instrument import Instrument, instrument_of
from bayleaf.formulas.language.ranges import Problem, prove_range
from bayleaf.quantities import Quantity
from bayleaf.records import KINDS, Book, Record
from bayleaf.records.named import Link, ids_of, links_of
from bayleaf.records.places import Ids

# A check must stay fast: it tries the corners, the middles, the table and this many points; the tests try many more.
INSIDE = 60
CORNERS = 729  # three values for each of six inputs


class Context(Texts, Work):
    """The book and what can be derived from it."""

    def __init__(self, book: Book) -> None:
        Texts.__init__(self, book)
        Work.__init__(self, book)
        self._instrument: dict[tuple[str, str, str], Instrument | None] = {}
        self._instruments: dict[tuple, list[Instrument]] = {}
        self._systems: dict[str, set[str]] = {}
        self._amounts: dict[str, list[Amount]] = {}
        self._links: dict[str, list[Link]] = {}
        self._wrong: tuple[Record | None, bool] = (None, False)
        self._names: dict[str, set[str]] = {}
        self._by_kinds: dict[tuple[str, ...], set[str]] = {}
        self._ids: dict[str, list[tuple[Ids, list[str]]]] = {}
        self._proofs: dict[str, Proof] = {}
        self._ranges: dict[str, list[Problem]] = {}

    @cached_property
    def desk(self) -> Desk:
        """The book's quantities and calculators, made ready once."""
        return Desk(self.book)

    @property
    def quantities(self) -> dict[str, Quantity]:
        """Quantities by id (only those whose entries are sound)."""
        return self.desk.quantities

    @cached_property
    def numbers(self) -> Amounts:
        """Finds the numbers of a record, and what a reading measures."""
        return Amounts(self.book, self.desk)

    @cached_property
    def of_type(self) -> dict[str, list[str]]:
        """Every equipment id to the ids that it stands for: itself and those of its type."""
        return by_type(self)

    def instrument(self, id: str, quantity: Quantity) -> Instrument | None:
        """A piece of equipment as it measures a quantity."""
        key = (id, quantity.id, quantity.reference)
        if key not in self._instrument:
            self._instrument[key] = instrument_of(self.book, id, quantity)
        return self._instrument[key]

    def instruments(self, named: str | None, reading: str | None) -> list[Instrument]:
        """Those that a name stands for and that state a range for this reading."""
        key = (named, reading)
        if key not in self._instruments:
            self._instruments[key] = instruments(self, named, reading)
        return self._instruments[key]

    def systems_with(self, record: Record) -> set[str]:
        """A system itself; the sound systems of a vehicle or of a job's car."""
        if record.id not in self._systems:
            self._systems[record.id] = (
                {record.id} if record.kind == "systems" else {s.id for s in systems_of_car(record, self)}
            )
        return self._systems[record.id]

    @cached_property
    def bands(self) -> dict[str, list[Amount]]:
        """Every band of the book by reading."""
        return bands_by_reading(self)

    def proof(self, record: Record) -> Proof:
        """A sound calculator, proved once."""
        if record.id not in self._proofs:
            self._proofs[record.id] = prove(record, self)
        return self._proofs[record.id]

    def ranges(self, record: Record) -> list[Problem]:
        """Where a calculator fails inside its limits; nothing for one that does not compile."""
        proof = self.proof(record)
        if record.id not in self._ranges:
            self._ranges[record.id] = prove_range(proof.ready, INSIDE, CORNERS) if proof.ready else []
        return self._ranges[record.id]

    def amounts(self, record: Record) -> list[Amount]:
        """Every number with a unit in a record, with its quantity."""
        if record.id not in self._amounts:
            self._amounts[record.id] = list(self.numbers.of(record))
        return self._amounts[record.id]

    @cached_property
    def answers(self) -> dict[str, tuple[str, ...]]:
        """Every sound reading to the answers that it may have."""
        return all_answers(self.book)

    @cached_property
    def named(self) -> set[str]:
        """Every id that another record names."""
        found: set[str] = set()
        for record in self.book.records():
            names = self.names(record)
            found |= names if record.id not in names else names - {record.id}
        return found

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
        found: dict[str, list[str]] = {kind: [] for kind in KINDS}
        for id, record in self.book.every.items():
            found[record.kind].append(id)
        return found

    def links(self, record: Record) -> list[Link]:
        """Every id that a record names, in fields and in prose; nothing for a record that is not sound."""
        found = self._links.get(record.id)
        if found is None:
            found = self._links[record.id] = links_of(record, self.prose(record)) if record.sound else []
        return found

    def ids(self, record: Record) -> list[tuple[Ids, list[str]]]:
        """The ids that a record names, by the field that holds them: for a first look, and where places do not matter."""
        found = self._ids.get(record.id)
        if found is None:
            found = self._ids[record.id] = ids_of(self.links(record))
        return found

    def names(self, record: Record) -> set[str]:
        """All ids that a record names, wherever they stand."""
        found = self._names.get(record.id)
        if found is None:
            found = self._names[record.id] = set().union(*[ids for _about, ids in self.ids(record)])
        return found

    def misnames(self, record: Record) -> bool:
        """A first look: whether some id that a record names does not exist or is of a kind that does not belong there."""
        if self._wrong[0] is not record:
            self._wrong = (
                record,
                not all(self._of_kinds(about.kinds).issuperset(ids) for about, ids in self.ids(record)),
            )
        return self._wrong[1]

    @cached_property
    def claims(self) -> Claims:
        """What faults claim, system by system."""
        return Claims(self)
