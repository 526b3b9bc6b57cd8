"""Where a record says that its numbers and words come from."""

from __future__ import annotations


def bases_of(data: dict) -> list[tuple[tuple, dict]]:
    """Every basis in a record's data with its path."""
    found: list[tuple[tuple, dict]] = []
    _gather(data, (), found)
    return found


def _gather(data: dict | list, path: tuple, found: list[tuple[tuple, dict]]) -> None:
    for key, value in data.items() if data.__class__ is dict else enumerate(data):
        if value.__class__ is dict and key == "basis":
            found.append(((*path, key), value))
        elif value.__class__ is dict or value.__class__ is list:
            _gather(value, (*path, key), found)
