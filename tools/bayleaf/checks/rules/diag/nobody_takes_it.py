"""DIAG-12: a reading that no procedure takes."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.rule import Example, Rule
from bayleaf.diagnosis.car.car import inputs_of, usable
from bayleaf.finding import Finding
from bayleaf.records import Book


def _taken(book: Book) -> set[str]:
    procedures = [r for r in book.of("procedures").values() if r.sound]
    return {
        step["takes"]["reading"] for r in procedures for step in r.data["steps"] if "reading" in step.get("takes", {})
    }


def find(context: Context) -> Iterator[Finding]:
    book = context.book
    taken = _taken(book)
    for id, record in book.of("readings").items():
        if not usable(record) or ("computed" in record.data and inputs_of(book, id)):
            continue  # the inputs of a computed reading are readings themselves, and each is asked here
        if id not in taken:
            yield RULE.at(record, f"no step of any procedure takes {id}", path=("title",))


RULE = Rule(
    code="DIAG-12",
    level="error",
    scope="book",
    title="Reading that nobody takes",
    what="Every reading that is not computed from others is taken in a step of some procedure.",
    why="A test that the book asks for and does not describe is done from memory, with whatever cautions memory has.",
    mend="Write the step that takes it, or leave the reading out.",
    excusable=True,
    example=Example(
        "procedures/look-into-regulator-hose.yaml",
        "when: engine-off, takes: {reading: fuel-in-regulator-hose}}",
        "when: engine-off}",
    ),
    find=find,
)
