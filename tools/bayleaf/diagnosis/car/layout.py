"""Where the parts lie: which components are on which paths of which systems."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any, NamedTuple, cast

from bayleaf.records import Book, listed, mapped


class Wants(NamedTuple):
    """What a reading asks of a car: the systems with a path that joins its points (None: any), its places, its inputs."""

    systems: frozenset[str] | None
    places: list[str]
    inputs: list[str]


class Layout:
    """An index of the book's paths.

    `on` maps a component to the (system, path name) pairs it lies on; a part that is `part_of` another lies on the
    other's paths too. `optional` maps a system to the features that not every such car has. `readings` and `faults`
    say which may be met in which systems, so that nobody has to ask them all.
    """

    def __init__(self) -> None:
        self.on: dict[str, set[tuple[str, str]]] = {}
        self.optional: dict[str, set[str]] = {}
        self.above: dict[str, tuple[str, ...]] = {}
        self.readings, self.faults = Places(), Places()
        self.names: dict[str, set[str]] = {}  # a system to the names of its paths
        self.wants: dict[str, Wants] = {}  # what each reading asks of a car
        self.kept: dict[object, Any] = {}  # what others worked out from this index

    def paths(self, component: str) -> set[tuple[str, str]]:
        """The (system, path name) pairs through this component."""
        return self.on.get(component, set())

    def named(self, systems: Iterable[str]) -> set[str]:
        """The names of all paths of these systems."""
        return set().union(*(self.names[system] for system in systems))

    def chain(self, component: str) -> tuple[str, ...]:
        """The component, what it is part of, and so on upward."""
        return self.above.get(component, (component,))


class Places:
    """Ids by the systems that they may belong to; those that belong to none may be anywhere. In the book's order."""

    def __init__(self) -> None:
        self.by_system: dict[str, list[tuple[int, str]]] = {}
        self.anywhere: list[tuple[int, str]] = []
        self.count = 0

    def put(self, id: str, systems: set[str]) -> None:
        """Add an id; ids are added in the book's order."""
        self.count += 1
        for system in systems:
            self.by_system.setdefault(system, []).append((self.count, id))
        if not systems:
            self.anywhere.append((self.count, id))

    def among(self, systems: Iterable[str], anywhere: bool = True) -> list[str]:
        """Every id that may belong to one of these systems, and, unless it is refused, those that may be anywhere."""
        pairs = {pair for system in set(systems) for pair in self.by_system.get(system, ())}
        return [id for _, id in sorted(pairs.union(self.anywhere) if anywhere else pairs)]


def layout_of(book: Book) -> Layout:
    """The index of a book, made once; unsound records contribute what can be read of them."""
    if "layout" not in book.kept:
        book.kept["layout"] = _layout(book)
    return cast(Layout, book.kept["layout"])


def _layout(book: Book) -> Layout:
    layout = Layout()
    direct: dict[str, set[tuple[str, str]]] = {}
    for system, record in book.of("systems").items():
        layout.optional[system] = {c for c in listed(record.data.get("has")) if isinstance(c, str)}
        layout.names[system] = set()
        for path in listed(record.data.get("paths")):
            if isinstance(path, dict):
                layout.names[system] |= {path["name"]} if isinstance(path.get("name"), str) else set()
                for component in listed(path.get("through")):
                    direct.setdefault(component, set()).add((system, path.get("name", "")))
    for component in {*book.of("components"), *direct}:
        chain = _chain(book, component)
        layout.above[component] = chain
        layout.on[component] = set().union(*(direct.get(c, set()) for c in chain))
    for reading in book.of("readings"):
        layout.readings.put(reading, _systems(book, layout, reading))
    for fault, record in book.of("faults").items():
        named = {s for s in listed(record.data.get("systems")) if isinstance(s, str)}
        layout.faults.put(
            fault, named or {system for system, _path in layout.paths(str(record.data.get("part", "")))} or {""}
        )
    return layout


def _systems(book: Book, layout: Layout, reading: str, seen: tuple[str, ...] = ()) -> set[str]:
    """The systems of the first place of a reading that lies on a path, or of the readings it is computed from."""
    record = book.of("readings").get(reading)
    if record is None or reading in seen:
        return set()
    between, at = listed(record.data.get("between")), record.data.get("at")
    for place in [*between, at]:
        if isinstance(place, str) and layout.paths(place):
            return {system for system, _path in layout.paths(place)}
    if between or at:
        return set()
    computed = mapped(record.data.get("computed"))
    feeds = [
        *mapped(computed.get("difference")).values(),
        *(f.get("reading") for f in mapped(computed.get("inputs")).values() if isinstance(f, dict)),
    ]
    for feed in feeds:
        systems = _systems(book, layout, feed, (*seen, reading)) if isinstance(feed, str) else set()
        if systems:
            return systems
    return set()


def _chain(book: Book, component: str) -> tuple[str, ...]:
    chain: list[str] = []
    while component and component not in chain:
        chain.append(component)
        record = book.of("components").get(component)
        component = record.data.get("part_of", "") if record else ""
    return tuple(chain)
