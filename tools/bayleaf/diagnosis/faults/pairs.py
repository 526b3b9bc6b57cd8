"""Which faults leave which readings healthy by the graph, as lines that show a person what a change adds and drops.

`python -m bayleaf.diagnosis.faults.pairs > tests/diagnosis/healthy_by_graph.txt` renews the list that is committed. Every
line of it is a claim that a reading clears a fault, and no reading of the book proves it: read the difference.
"""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

from bayleaf.diagnosis.car.car import Car, offers, usable
from bayleaf.diagnosis.car.layout import Layout, layout_of
from bayleaf.diagnosis.faults.graph import graph_of
from bayleaf.diagnosis.faults.spared import Why, holds_in, why_of
from bayleaf.diagnosis.faults.stages import is_diagnosis
from bayleaf.records import Book, Record, listed, load

Groups = dict[str, list[Record]]  # what is observed, and what of the condition matters → the readings alike in both


def lines(book: Book) -> Iterator[str]:
    """First the groups of readings that the graph cannot tell apart, then each fault with the groups that it leaves healthy."""
    layout, groups = layout_of(book), groups_of(book)
    yield "# readings alike to the graph"
    for name, readings in groups.items():
        yield f"{name}: {' '.join(reading.id for reading in readings)}"
    for fault in book.of("faults").values():
        if usable(fault):
            yield f"# {fault.id}"
            for name, readings in groups.items():
                spared, others = _on(book, layout, fault, readings)
                if spared:
                    yield name + (f" (not on {', '.join(others)})" if others else "")


def groups_of(book: Book) -> Groups:
    """The readings for diagnosis by what they observe and by what matters of their condition."""
    symptoms = [symptom.data for symptom in book.of("symptoms").values()]
    matters = graph_of(book).conditions.union(*(listed(s.get(f)) for s in symptoms for f in ("prevents", "holds_back")))
    result: Groups = {}
    for reading in book.of("readings").values():
        if usable(reading) and is_diagnosis(reading):
            holds = sorted(matters & holds_in(book, reading))
            seen = " ".join(listed(reading.data.get("observes")))
            result.setdefault(f"{seen} [{' '.join(holds)}]" if holds else seen, []).append(reading)
    return dict(sorted(result.items()))


def _on(book: Book, layout: Layout, fault: Record, readings: list[Record]) -> tuple[list[str], list[str]]:
    """The cars with this fault on which these readings are healthy by the graph, and those on which they are not."""
    spared: list[str] = []
    others: list[str] = []
    for systems in _cars(book, layout, fault, readings):
        why = why_of(book, layout, systems, fault, readings[0])
        (spared if why is Why.SPARED else others).append("+".join(systems))
    return spared, others


def _cars(book: Book, layout: Layout, fault: Record, readings: list[Record]) -> Iterator[tuple[str, ...]]:
    """Each system of the fault, alone where it offers one of the readings, else beside each system of another family that does."""
    named = listed(fault.data.get("systems")) or sorted({s for s, _path in layout.paths(fault.data["part"])})
    systems = book.of("systems")
    for own in named:
        if _offered(book, layout, (own,), readings):
            yield (own,)
            continue
        for other, record in systems.items():
            if record.data["family"] != systems[own].data["family"] and _offered(book, layout, (own, other), readings):
                yield (own, other)


def _offered(book: Book, layout: Layout, systems: tuple[str, ...], readings: list[Record]) -> bool:
    return any(offers(book, layout, Car("", systems), reading.id) for reading in readings)


if __name__ == "__main__":
    print("\n".join(lines(load(Path.cwd()))))
