"""Where a record says that its numbers and words come from."""

from __future__ import annotations

from collections.abc import Iterator


def bases_of(data: object, path: tuple = ()) -> Iterator[tuple[tuple, dict]]:
    """Every basis in a record's data with its path."""
    if isinstance(data, dict):
        for key, value in data.items():
            if key == "basis" and isinstance(value, dict):
                yield (*path, key), value
            elif isinstance(value, dict | list):
                yield from bases_of(value, (*path, key))
    elif isinstance(data, list):
        for i, value in enumerate(data):
            if isinstance(value, dict | list):
                yield from bases_of(value, (*path, i))
