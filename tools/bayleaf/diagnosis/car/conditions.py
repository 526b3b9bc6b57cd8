"""What the condition of a reading brings with it, and what a complaint keeps from being reached."""

from __future__ import annotations

from bayleaf.records import Book, listed


def holds_in(book: Book, reading: str) -> frozenset[str]:
    """The acts and states that the condition of a reading brings with it."""
    condition = book.of("conditions").get(book.of("readings")[reading].data.get("when", ""))
    return frozenset(listed(condition.data.get("implies"))) if condition else frozenset()


def prevented_by(book: Book, felt: tuple[str, ...]) -> frozenset[str]:
    """The states that the complaint rules out: a no-start prevents running."""
    symptoms = (book.of("symptoms").get(symptom) for symptom in felt)
    return frozenset(state for symptom in symptoms if symptom for state in listed(symptom.data.get("prevents")))
