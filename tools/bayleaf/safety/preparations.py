"""The standing procedures that others inherit: which, and what they show."""

from __future__ import annotations

from typing import Any, cast

from bayleaf.records import Book


def preparations(book: Book, data: dict[str, Any]) -> list[str]:
    """The standing procedures that a procedure inherits, and those that they inherit, once each."""
    kept = cast("dict[int, list[str]]", book.kept.setdefault("preparations", {}))
    if id(data) not in kept:
        inherited = list(data.get("inherits", []))
        for one in inherited:
            record = book.of("procedures").get(one)
            more = record.data.get("inherits", []) if record and record.sound else []
            inherited += [p for p in more if p not in inherited]
        kept[id(data)] = inherited
    return kept[id(data)]


def cautions_of(book: Book, procedures: list[str]) -> set[str]:
    """Every caution that these procedures show in their steps."""
    records = [r for p in procedures if (r := book.of("procedures").get(p)) and r.sound]
    return {c for r in records for step in r.data["steps"] for c in step.get("cautions", [])}
