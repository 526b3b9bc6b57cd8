"""What a step, a reading and a preparation say wherever they are met: worked out once for a book and its vocabulary."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any, NamedTuple

from bayleaf.records import Book, listed
from bayleaf.safety.preparations import cautions_of

if TYPE_CHECKING:  # a machine keeps its written steps, so only its types are needed here
    from bayleaf.safety.machine import Brought, Machine, State


class Written:
    """What a step says wherever it is walked; see WalkStep.

    `each`: states kept joint by joint that it looks at or closes. `idle`: it does nothing, and speaks of no state.
    """

    __slots__ = ("brought", "cautions", "each", "idle", "makes", "read_at", "when")

    def __init__(
        self,
        brought: Brought,
        when: str,
        each: list[State],
        makes: list[str],
        cautions: tuple[str, ...],
        read_at: tuple[str, ...],
    ) -> None:
        self.brought, self.when, self.each, self.makes = brought, when, each, makes
        self.cautions, self.read_at = cautions, read_at
        self.idle = not (brought.acts or brought.claims or makes)


class Prepared(NamedTuple):
    """The states that a standing procedure leaves, and the cautions that it shows."""

    leaves: list[str]
    cautions: set[str]


class WrittenSteps:
    """The steps, readings and preparations of one book as written.

    Steps are kept by their identity, because one step is walked again wherever its procedure is followed; the book
    that holds them lives as long as this does.
    """

    def __init__(self, book: Book, machine: Machine) -> None:
        self.book, self.machine = book, machine
        self._steps: dict[int, Written] = {}
        self._readings: dict[str, tuple[str, tuple[str, ...]]] = {}
        self._prepared: dict[str, Prepared] = {}

    def step(self, data: dict[str, Any]) -> Written:
        """What a step of the book says."""
        return self._steps.get(id(data)) or self._step(data)

    def prepared(self, procedure: str) -> Prepared:
        """What a standing procedure prepares; nothing where there is no sound one of that id."""
        if procedure not in self._prepared:
            record = self.book.of("procedures").get(procedure)
            data = record.data if record and record.sound else {"leaves": [], "steps": []}
            leaves = [*data["leaves"], *(s for step in data["steps"] for s in step.get("sets", []))]
            leaves += self._guarded(data["steps"])
            self._prepared[procedure] = Prepared(list(dict.fromkeys(leaves)), cautions_of(self.book, [procedure]))
        return self._prepared[procedure]

    def _guarded(self, steps: list[dict[str, Any]]) -> list[str]:
        """The guards that the acts of these steps make and no later one ends."""
        stands: list[str] = []
        for step in steps:
            brought = self.machine.brought(step.get("act"), step.get("when", ""))
            stands = [s for s in stands if s not in brought.ends]
            stands += [s.id for s in brought.setters if s.id in self.machine.guards and not s.carries]
        return stands

    def _step(self, data: dict[str, Any]) -> Written:
        condition, read_at = self._reading(data["takes"].get("reading")) if "takes" in data else ("", ())
        when, states = data.get("when") or condition, self.machine.states
        brought = self.machine.brought(data.get("act"), when)
        makes = [s for field in ("sets", "proves") if field in data for s in listed(data[field]) if s in states]
        each = [] if "at" in data else brought.each
        cautions = tuple(data["cautions"]) if "cautions" in data else ()
        written = self._steps[id(data)] = Written(brought, when, each, makes, cautions, read_at)
        return written

    def _reading(self, reading: str) -> tuple[str, tuple[str, ...]]:
        """The condition of a reading, and the parts where it is taken."""
        if reading not in self._readings:
            record = self.book.of("readings").get(reading)
            data = record.data if record else {}
            places = (data.get("at"), *data.get("between", []))
            self._readings[reading] = (data.get("when", ""), tuple(c for c in places if isinstance(c, str)))
        return self._readings[reading]
