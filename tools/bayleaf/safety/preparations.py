"""The standing procedures that others inherit: which, and what they show."""

from __future__ import annotations

from bayleaf.records import Book


def preparations(book: Book, data: dict) -> list[str]:
    """The standing procedures that a procedure inherits, and those that they inherit, once each."""
    found = book.kept.get(("preparations", id(data)))
    if found is None:
        found = book.kept["preparations", id(data)] = list(data.get("inherits", []))
        for one in found:
            record = book.of("procedures").get(one)
            found += [p for p in record.data.get("inherits", []) if p not in found] if record and record.sound else []
    return found


def cautions_of(book: Book, procedures: list[str]) -> set[str]:
    """Every caution that these procedures show in their steps."""
    records = [r for p in procedures if (r := book.of("procedures").get(p)) and r.sound]
    return {c for r in records for step in r.data["steps"] for c in step.get("cautions", [])}
