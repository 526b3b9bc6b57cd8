"""What rules know of procedures: each one walked once, the hazards that it meets, and who says what of a state."""

from __future__ import annotations

from functools import cached_property

from bayleaf.diagnosis.car.layout import Layout
from bayleaf.records import Book, Record
from bayleaf.safety.hazards import Hazards, Met
from bayleaf.safety.machine import Machine
from bayleaf.safety.paths import Paths
from bayleaf.safety.steps import Walk, WalkStep
from bayleaf.safety.walk import walk


class Procedures:
    """The procedures of one book."""

    def __init__(self, book: Book, layout: Layout) -> None:
        self.book, self.layout = book, layout
        self._walks: dict[str, Walk] = {}
        self._met: dict[str, list[Met]] = {}
        self._unguarded: dict[str, list[Met]] = {}
        self._steps: dict[str, dict[str, list[tuple[int, dict]]]] = {}

    def steps_with(self, record: Record, field: str) -> list[tuple[int, dict]]:
        """(index, step) of every step of a procedure that has a field."""
        if record.id not in self._steps:
            by_field = self._steps[record.id] = {}
            for pair in enumerate(record.data["steps"]):
                for name in pair[1]:
                    by_field.setdefault(name, []).append(pair)
        return self._steps[record.id].get(field, [])

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

    def unguarded(self, record: Record) -> list[Met]:
        """For each hazard the first step that meets it before any caution speaks of it; a followed procedure's own left out."""
        if record.id not in self._unguarded:
            self._unguarded[record.id] = []  # what follows itself in a circle adds nothing to itself
            steps = self.walk(record).steps
            first: dict[str, Met] = {}
            for met in self.met(record):
                if not self.guards(met.hazard) & steps[met.index].shown:
                    first.setdefault(met.hazard, met)
            self._unguarded[record.id] = [
                met for met in first.values() if met.hazard not in self._hazards_of_followed(record, steps[met.index])
            ]
        return self._unguarded[record.id]

    def _hazards_of_followed(self, record: Record, step: WalkStep) -> set[str]:
        other = self.followed(record, step)
        return {met.hazard for met in self.unguarded(other)} if other and other.id != record.id else set()

    def followed(self, record: Record, step: WalkStep) -> Record | None:
        """The procedure followed at this place of the walked one; None for a step that the walked procedure has itself."""
        if step.source == record.id:
            return None
        return self.book.of("procedures").get(record.data["steps"][step.place[1]].get("follow"))

    def guards(self, hazard: str) -> frozenset[str]:
        """The cautions that speak of a hazard."""
        return self._guards.get(hazard, frozenset())

    @cached_property
    def _guards(self) -> dict[str, frozenset[str]]:
        result: dict[str, set[str]] = {}
        for id, record in self.book.of("cautions").items():
            for hazard in record.data["hazards"] if record.sound and record.data.get("status") != "retired" else []:
                result.setdefault(hazard, set()).add(id)
        return {hazard: frozenset(cautions) for hazard, cautions in result.items()}

    @cached_property
    def standing(self) -> list[str]:
        """The ids of the standing preparations."""
        return [id for id, r in self.book.of("procedures").items() if r.sound and r.data.get("standing")]

    def that_say(self, field: str, state: str) -> dict[str, list[str]]:
        """The procedures that name a state in `leaves`, `ends` or `makes` (a step sets or proves it), by system; "" for every system."""
        return self._that_say.get((field, state), {})

    def said_by_others(self, record: Record, state: str, *fields: str) -> bool:
        """Whether another procedure says this of a state and may be done on the same car: a system in common, or for every system."""
        own = record.data["systems"]
        by_system = [self.that_say(field, state) for field in fields]
        return any(
            id != record.id
            for said in by_system
            for system in ([*own, ""] if own else said)
            for id in said.get(system, ())
        )

    @cached_property
    def _that_say(self) -> dict[tuple[str, str], dict[str, list[str]]]:
        result: dict[tuple[str, str], dict[str, list[str]]] = {}
        for id, record in self.book.of("procedures").items():
            if record.sound:
                makes = [s for step in record.data["steps"] for s in (*step.get("sets", []), *step.get("proves", []))]
                for field, states in (
                    ("leaves", record.data["leaves"]),
                    ("ends", record.data.get("ends", [])),
                    ("makes", makes),
                ):
                    for state in dict.fromkeys(states):
                        for system in record.data["systems"] or [""]:
                            result.setdefault((field, state), {}).setdefault(system, []).append(id)
        return result

    def makers(self, state: str) -> list[str]:
        """The procedures with a step that sets or proves a state, the shortest first."""
        return self._makers.get(state, [])

    @cached_property
    def _makers(self) -> dict[str, list[str]]:
        result: dict[str, set[str]] = {}
        for (field, state), by_system in self._that_say.items():
            if field == "makes":
                result[state] = {id for ids in by_system.values() for id in ids}
        steps = {id: len(r.data["steps"]) for id, r in self.book.of("procedures").items() if r.sound}
        return {state: sorted(makers, key=lambda id: (steps[id], id)) for state, makers in result.items()}
