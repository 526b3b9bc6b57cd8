"""What flows through a part: the facts of every path that a step opens or measures."""

from __future__ import annotations

from collections.abc import Iterable
from typing import NamedTuple

from bayleaf.diagnosis.car.layout import Layout
from bayleaf.quantities import to_si, units
from bayleaf.records import Book, mapped


class PathFact(NamedTuple):
    """One path of one system. `greatest` is the greatest credible pressure in Pa, None where the path states none."""

    system: str
    name: str
    carries: str
    side: str
    greatest: float | None


class Paths:
    """The paths of a book by component. A part that is `part_of` another lies on the other's paths too."""

    def __init__(self, book: Book, layout: Layout) -> None:
        self.layout = layout
        self._facts: dict[tuple[str, str], PathFact] = {}
        self._carrying: dict[tuple[frozenset[str], tuple[str, ...]], tuple[PathFact, ...]] = {}
        self._of: dict[tuple[tuple[str, ...], tuple[str, ...]], tuple[PathFact, ...]] = {}
        for system, record in book.of("systems").items():
            for path in record.data.get("paths", []) if record.sound else []:
                fact = PathFact(
                    system, path["name"], path["carries"], path.get("side", ""), pascals(path.get("greatest"))
                )
                self._facts[system, path["name"]] = fact

    def of(self, components: Iterable[str], systems: Iterable[str] = ()) -> tuple[PathFact, ...]:
        """The paths through these components in these systems; no systems named: in every system."""
        asked = (tuple(components), tuple(systems))
        if asked not in self._of:
            pairs = {pair for c in asked[0] for pair in self.layout.paths(c) if not asked[1] or pair[0] in asked[1]}
            self._of[asked] = tuple(self._facts[pair] for pair in sorted(pairs) if pair in self._facts)
        return self._of[asked]

    def carrying(self, what: frozenset[str], systems: tuple[str, ...]) -> tuple[PathFact, ...]:
        """Every path of these systems, or of every system where none is named, that carries one of these."""
        asked = (what, systems)
        if asked not in self._carrying:
            facts = self._facts.items()
            self._carrying[asked] = tuple(
                fact for (system, _), fact in facts if fact.carries in what and (not systems or system in systems)
            )
        return self._carrying[asked]


def pascals(quantity: object) -> float | None:
    """A pressure as written, in Pa without its reference; None where there is none or its unit is no pressure's."""
    data = mapped(quantity)
    unit = units().get(data.get("unit", ""))
    if "value" not in data or unit is None or unit.dimension != units()["Pa"].dimension:
        return None
    return to_si(data["value"], data["unit"], "gauge")
