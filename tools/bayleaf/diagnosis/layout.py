"""Where the parts lie: which components are on which paths of which systems."""

from __future__ import annotations

from dataclasses import dataclass, field

from bayleaf.records import Book, listed


@dataclass
class Layout:
    """An index of the book's paths.

    `on` maps a component to the (system, path name) pairs it lies on; a part that is `part_of` another lies on the
    other's paths too. `optional` maps a system to the features that not every such car has.
    """

    on: dict[str, set[tuple[str, str]]] = field(default_factory=dict)
    optional: dict[str, set[str]] = field(default_factory=dict)
    above: dict[str, tuple[str, ...]] = field(default_factory=dict)

    def paths(self, component: str) -> set[tuple[str, str]]:
        """The (system, path name) pairs through this component."""
        return self.on.get(component, set())

    def chain(self, component: str) -> tuple[str, ...]:
        """The component, what it is part of, and so on upward."""
        return self.above.get(component, (component,))


def layout_of(book: Book) -> Layout:
    """The index of a book; unsound records contribute what can be read of them."""
    layout = Layout()
    direct: dict[str, set[tuple[str, str]]] = {}
    for system, record in book.of("systems").items():
        layout.optional[system] = {c for c in listed(record.data.get("has")) if isinstance(c, str)}
        for path in listed(record.data.get("paths")):
            if isinstance(path, dict):
                for component in listed(path.get("through")):
                    direct.setdefault(component, set()).add((system, path.get("name", "")))
    for component in {*book.of("components"), *direct}:
        chain = _chain(book, component)
        layout.above[component] = chain
        layout.on[component] = set().union(*(direct.get(c, set()) for c in chain))
    return layout


def _chain(book: Book, component: str) -> tuple[str, ...]:
    chain: list[str] = []
    while component and component not in chain:
        chain.append(component)
        record = book.of("components").get(component)
        component = record.data.get("part_of", "") if record else ""
    return tuple(chain)
