"""What rules share: indexes over the book that are worked out once, when first asked for."""

from __future__ import annotations

import re
from collections.abc import Callable
from functools import cached_property

from bayleaf.checks.bands import bands_by_reading
from bayleaf.checks.bases import bases_of
from bayleaf.checks.calculators import Proof, prove
from bayleaf.checks.claims import Claims
from bayleaf.checks.hazards import Hazards, Met
from bayleaf.checks.instruments import by_type, instruments
from bayleaf.checks.links import Link, links_of
from bayleaf.checks.machine import Machine
from bayleaf.checks.paths import Paths
from bayleaf.checks.sites import Site, Sites
from bayleaf.checks.walk import walk
from bayleaf.checks.walked import Walk
from bayleaf.checks.writing import prose_of, synonyms
from bayleaf.diagnosis import Desk, Instrument, Layout, layout_of
from bayleaf.formulas import Problem, prove_range
from bayleaf.quantities import Quantity
from bayleaf.records import Book, Record, listed


# A check must stay fast: it tries the corners, the middles, the table and this many points; the tests try many more.
INSIDE = 60


class Context:
    """The book and what can be derived from it."""

    def __init__(self, book: Book):
        self.book = book
        self._instruments: dict[tuple, list[Instrument]] = {}
        self._last: dict[str, tuple[Record, object]] = {}
        self._links: dict[str, list[Link]] = {}
        self._proofs: dict[str, Proof] = {}
        self._ranges: dict[str, list[Problem]] = {}
        self._walks: dict[str, Walk] = {}
        self._met: dict[str, list[Met]] = {}
        self.unguarded: dict[str, list[Met]] = {}

    @cached_property
    def desk(self) -> Desk:
        """The book's quantities and calculators, made ready once."""
        return Desk(self.book)

    @property
    def quantities(self) -> dict[str, Quantity]:
        """Quantities by id (only those whose entries are sound)."""
        return self.desk.quantities

    @cached_property
    def numbers(self) -> Sites:
        """Finds the numbers of a record, and what a reading measures."""
        return Sites(self.book, self.desk)

    @cached_property
    def layout(self) -> Layout:
        """Which components are on which paths of which systems."""
        return layout_of(self.book)

    @cached_property
    def of_type(self) -> dict[str, list[str]]:
        """Every equipment id to the ids that it stands for: itself and those of its type."""
        return by_type(self)

    def instruments(self, named: str | None, reading: str | None) -> list[Instrument]:
        """Those that a name stands for and that state a range for this reading."""
        key = (named, reading)
        if key not in self._instruments:
            self._instruments[key] = instruments(self, named, reading)
        return self._instruments[key]

    @cached_property
    def bands(self) -> dict[str, list[Site]]:
        """Every band of the book by reading."""
        return bands_by_reading(self)

    @cached_property
    def synonyms(self) -> dict[str, str]:
        """Every other word for a term of the glossary, in small letters, to the term's title."""
        return synonyms(self.book.of("terms"))

    @cached_property
    def synonym_pattern(self) -> re.Pattern | None:
        """Finds any of them as a whole word; None for a glossary without."""
        longest_first = sorted(self.synonyms, key=len, reverse=True)
        return re.compile(rf"\b(?:{'|'.join(map(re.escape, longest_first))})\b", re.I) if longest_first else None

    @cached_property
    def _by_sign(self) -> dict[str, list[str]]:
        """The longest word of each of them, with the signs that may touch it in a text, to those that it belongs to."""
        found: dict[str, list[str]] = {}
        for other in self.synonyms:
            word = max(other.split(), key=len)
            for sign in {f"{a}{word}{b}" for a in ("", "(", '"', "[[") for b in ("", ".", ",", ";", ":", ")", "?", "!", '"', "]]", "]].", "'s")}:
                found.setdefault(sign, []).append(other)
        return found

    def may_hold_synonyms(self, record: Record) -> bool:
        """A first look, much faster than the pattern: whether some synonym's letters stand in the prose of a record."""
        text = self.small_prose(record)
        return any(other in text for sign in self._by_sign.keys() & self.vocabulary(record) for other in self._by_sign[sign])

    def proof(self, record: Record) -> Proof:
        """A sound calculator, proved once."""
        if record.id not in self._proofs:
            self._proofs[record.id] = prove(record, self)
        return self._proofs[record.id]

    def ranges(self, record: Record) -> list[Problem]:
        """Where a calculator fails inside its limits; nothing for one that does not compile."""
        proof = self.proof(record)
        if record.id not in self._ranges:
            self._ranges[record.id] = prove_range(proof.ready, INSIDE) if proof.ready else []
        return self._ranges[record.id]

    def sites(self, record: Record) -> list[Site]:
        """Every number with a unit in a record, with its quantity."""
        return self._kept("sites", record, lambda: list(self.numbers.of(record)))

    def prose(self, record: Record) -> list[tuple[tuple, str]]:
        """(path, text) of every field of a record that is prose."""
        return self._kept("prose", record, lambda: prose_of(record))

    def all_prose(self, record: Record) -> str:
        """The prose of a record in one text, a field a line, for a first look."""
        return self._kept("all prose", record, lambda: "\n".join(text for _, text in self.prose(record)))

    def small_prose(self, record: Record) -> str:
        """The same in small letters."""
        return self._kept("small prose", record, lambda: self.all_prose(record).lower())

    def vocabulary(self, record: Record) -> frozenset[str]:
        """Every word of the prose of a record in small letters, with the signs that touch it."""
        return self._kept("vocabulary", record, lambda: frozenset(self.small_prose(record).split()))

    @cached_property
    def named(self) -> set[str]:
        """Every id that another record names."""
        return {link.id for r in self.book.records() for link in self.links(r) if link.id != r.id}

    def bases(self, record: Record) -> list[tuple[tuple, dict]]:
        """(path, basis) of every basis in a record."""
        return self._kept("bases", record, lambda: list(bases_of(record.data)))

    def _kept(self, name: str, record: Record, make: Callable) -> object:
        """What was worked out last for this record; the walk goes record by record, so one of each is enough."""
        at, value = self._last.get(name, (None, None))
        if at is not record:
            value = make()
            self._last[name] = (record, value)
        return value

    def links(self, record: Record) -> list[Link]:
        """Every id that a record names, in fields and in prose; nothing for a record that is not sound."""
        found = self._links.get(record.id)
        if found is None:
            found = self._links[record.id] = links_of(record, self.prose(record)) if record.sound else []
        return found

    @cached_property
    def machine(self) -> Machine:
        """Acts, conditions and states, ready for walking."""
        return Machine(self.book)

    @cached_property
    def paths(self) -> Paths:
        """What flows through each component."""
        return Paths(self.book, self.layout)

    @cached_property
    def hazards(self) -> Hazards:
        """The triggers of the vocabulary, ready to be asked."""
        return Hazards(self.book, self.machine)

    def walk(self, record: Record) -> Walk:
        """The walk of a sound procedure."""
        if record.id not in self._walks:
            self._walks[record.id] = walk(record, self.book, self.machine, self.paths)
        return self._walks[record.id]

    def met(self, record: Record) -> list[Met]:
        """The hazards that a sound procedure meets, step by step."""
        if record.id not in self._met:
            self._met[record.id] = list(self.hazards.met(self.walk(record)))
        return self._met[record.id]

    def guards(self, hazard: str) -> frozenset[str]:
        """The cautions that speak of a hazard."""
        return self._guards.get(hazard, frozenset())

    @cached_property
    def _guards(self) -> dict[str, frozenset[str]]:
        found: dict[str, set[str]] = {}
        for id, record in self.book.of("cautions").items():
            for hazard in record.data["hazards"] if record.sound and record.data.get("status") != "retired" else []:
                found.setdefault(hazard, set()).add(id)
        return {hazard: frozenset(cautions) for hazard, cautions in found.items()}

    @cached_property
    def standing(self) -> list[str]:
        """The ids of the standing preparations."""
        return [id for id, r in self.book.of("procedures").items() if r.sound and r.data.get("standing")]

    def that_say(self, field: str, state: str) -> dict[str, list[str]]:
        """The procedures that name a state in `leaves`, `ends` or `makes` (a step sets or proves it), by system; "" for every system."""
        return self._that_say.get((field, state), {})

    @cached_property
    def _that_say(self) -> dict[tuple[str, str], dict[str, list[str]]]:
        found: dict[tuple[str, str], dict[str, list[str]]] = {}
        for id, record in self.book.of("procedures").items():
            if record.sound:
                makes = [s for step in record.data["steps"] for s in (*listed(step.get("sets")), *listed(step.get("proves")))]
                for field, states in (("leaves", listed(record.data["leaves"])), ("ends", listed(record.data.get("ends"))), ("makes", makes)):
                    for state in dict.fromkeys(states):
                        for system in listed(record.data["systems"]) or [""]:
                            found.setdefault((field, state), {}).setdefault(system, []).append(id)
        return found

    def makers(self, state: str) -> list[str]:
        """The procedures with a step that sets or proves a state, the shortest first."""
        return self._makers.get(state, [])

    @cached_property
    def _makers(self) -> dict[str, list[str]]:
        found: dict[str, set[str]] = {}
        for (field, state), by_system in self._that_say.items():
            if field == "makes":
                found[state] = {id for ids in by_system.values() for id in ids}
        steps = {id: len(r.data["steps"]) for id, r in self.book.of("procedures").items() if r.sound}
        return {state: sorted(makers, key=lambda id: (steps[id], id)) for state, makers in found.items()}

    @cached_property
    def claims(self) -> Claims:
        """What faults claim, system by system."""
        return Claims(self)
