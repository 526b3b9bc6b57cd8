"""The graph of influences: what a disturbed variable reaches, in one condition of one car.

A set of variables is a Python int used as a bit mask. An influence may be limited to systems, and to readings taken in
a condition or not in one; a limit that nobody wrote stops nothing.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Set
from typing import NamedTuple

from bayleaf.records import Book, listed


class Influence(NamedTuple):
    """One variable moves another: only on a car with one of `systems`, while one of `when` holds and none of `unless`."""

    to: str
    when: frozenset[str] = frozenset()
    systems: frozenset[str] = frozenset()
    unless: frozenset[str] = frozenset()

    def acts(self, holds: Set[str], systems: Set[str]) -> bool:
        """Whether it acts where these conditions and states hold, on a car with these systems."""
        if self.when and self.when.isdisjoint(holds):
            return False
        return not (self.systems and self.systems.isdisjoint(systems)) and self.unless.isdisjoint(holds)


Where = tuple[frozenset[str], frozenset[str]]  # the conditions and the systems that limit an influence


class Graph:
    """Variables by number, and the influences that leave each of them. `conditions` are all that a limit names."""

    def __init__(self, influences: Mapping[str, Iterable[Influence]]) -> None:
        self.influences = {name: tuple(result) for name, result in influences.items()}
        self.bit = {name: 1 << i for i, name in enumerate(self.influences)}
        edges = [i for result in self.influences.values() for i in result]
        self.conditions = frozenset().union(*(i.when | i.unless for i in edges))
        self._systems = frozenset().union(*(i.systems for i in edges))
        self._beside: dict[Where, list[int]] = {}
        self._reached: dict[tuple[int, Where], int] = {}

    def mask(self, names: Iterable[str]) -> int:
        """The mask of these variables; names that are none are left out."""
        mask = 0
        for name in names:
            mask |= self.bit.get(name, 0)
        return mask

    def names(self, mask: int) -> list[str]:
        """The variables of a mask, in the order of the book."""
        return [name for name, bit in self.bit.items() if mask & bit]

    def reach(self, disturbed: int, holds: Set[str], systems: Iterable[str]) -> int:
        """The disturbed variables and all that they move, directly or through others. A circle is walked once."""
        return self.reach_at(disturbed, self.where(holds, systems))

    def where(self, holds: Set[str], systems: Iterable[str]) -> Where:
        """What of a condition and of a car limits some influence: readings with the same are reached alike."""
        return frozenset(self.conditions & holds), self._systems.intersection(systems)

    def reach_at(self, disturbed: int, where: Where) -> int:
        """The same as `reach`, where it has been worked out what holds."""
        key = disturbed, where
        if key not in self._reached:
            beside, result, fresh = self._neighbors(where), disturbed, disturbed
            while fresh:
                low = fresh & -fresh
                fresh &= fresh - 1
                new = beside[low.bit_length() - 1] & ~result
                result |= new
                fresh |= new
            self._reached[key] = result
        return self._reached[key]

    def way(self, disturbed: int, ends: int, holds: Set[str], systems: Iterable[str]) -> tuple[str, ...]:
        """The shortest way from a disturbed variable to one of `ends`, both included; () where nothing leads there."""
        where = self.where(holds, systems)
        beside, every = self._neighbors(where), list(self.bit)
        ways: dict[str, tuple[str, ...]] = {name: (name,) for name in self.names(disturbed)}
        fresh = list(ways)
        for name in fresh:
            if self.bit[name] & ends:
                return ways[name]
            for i, other in enumerate(every):
                if beside[every.index(name)] >> i & 1 and other not in ways:
                    ways[other] = (*ways[name], other)
                    fresh.append(other)
        return ()

    def _neighbors(self, where: Where) -> list[int]:
        """What each variable moves directly, by its number."""
        if where not in self._beside:
            self._beside[where] = [
                self.mask(i.to for i in result if i.acts(*where)) for result in self.influences.values()
            ]
        return self._beside[where]


def graph_of(book: Book) -> Graph:
    """The graph of a book, made once."""
    kept = book.kept.get("graph")
    if not isinstance(kept, Graph):
        entries = book.of("variables").items()
        kept = Graph({name: [_influence(i) for i in listed(entry.data.get("influences"))] for name, entry in entries})
        book.kept["graph"] = kept
    return kept


def _influence(data: str | dict) -> Influence:
    if isinstance(data, str):
        return Influence(data)
    return Influence(str(data.get("to")), *(frozenset(listed(data.get(field))) for field in ("when", "in", "unless")))
